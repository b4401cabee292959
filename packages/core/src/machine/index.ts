export { simulateWith, type SimulateOptions } from './simulate.js';
export { SimulatedRun } from './run.js';
export { GEAR } from './phase.js';
