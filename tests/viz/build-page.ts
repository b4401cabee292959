/** Before any test of the page: builds it once, so that files that run side by side find it there. */
import { build } from './browser.js';

export default build;
