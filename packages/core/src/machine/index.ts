export { glanceWith } from './glance.js';
export type { PlayOptions } from './play.js';
export { simulateWith, type SimulateOptions } from './simulate.js';
export type { Account } from './account.js';
export { SimulatedRun } from './run.js';
export { GEAR } from './phase.js';
