/**
 * wheelwell: aircraft hydraulic landing gear, simulated. The public door of the core.
 */
import { components } from './component/index.js';
import type { Catalogues, Run, Scenario } from './define/index.js';
import { faults } from './fault/index.js';
import { simulateWith, type SimulateOptions } from './machine/index.js';
import { mechanisms } from './mechanism/index.js';
import { fluids } from './medium/index.js';
import { rules } from './monitor/index.js';

/** Everything a scenario may name. */
export const catalogues: Catalogues = { components, mechanisms, fluids, faults, rules };

/**
 * Plays a test card of a scenario.
 *
 * @throws RangeError when `options.card` names no card or `options.tick` is out of range.
 */
export function simulate(scenario: Scenario, options: SimulateOptions = {}): Run {
  return simulateWith(catalogues, scenario, options);
}
