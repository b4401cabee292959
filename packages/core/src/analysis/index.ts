/** What is built of many runs. */
export { blowDownCard, blowDownCards, bottleOf, under } from './blow-down/card.js';
export { judgeRun, playCell } from './blow-down/cell.js';
export { blowDownMargin } from './blow-down/map.js';
export { minimumCharge } from './blow-down/minimum.js';
export { momentCurve, momentCurves, worstPoint } from './blow-down/moments.js';
export { followUp, followUpSwing, gasLeft, rampCases, serviceSteps } from './blow-down/service.js';
export { chargeTable, TABLE_TEMPERATURES } from './blow-down/table.js';
export type * from './blow-down/shapes.js';
export { playAhead, type AheadOptions } from './diagnosis/ahead.js';
export { checkConditions } from './diagnosis/check-conditions.js';
export { diagnose } from './diagnosis/diagnose.js';
export { signaturePlayer, taskSender } from './diagnosis/task.js';
export { underConditions } from './diagnosis/under.js';
export type * from './diagnosis/shapes.js';
