/** What of core the libraries are needed for, to be built as the page is. */
export { parseAnyQuantity } from '../../packages/core/src/quantity/index.js';
export { parseText } from '../../packages/core/src/scenario/parse.js';
