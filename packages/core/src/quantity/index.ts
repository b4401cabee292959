export { displayUnit, toDisplay, type Display, type DisplaySystem } from './display.js';
export { compileExpression, sampleExpression } from './expression.js';
export { didYouMean, nearestName } from './nearest-name.js';
export {
  inUnit,
  parseAnyQuantity,
  parseQuantity,
  type Problem,
  type ReadQuantity,
} from './parse-quantity.js';
export { QUANTITY_WORDS, quantityOfDimension, usualUnit } from './words.js';
