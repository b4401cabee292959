/** Conditions of a swing, with the catalogues that come with core. */
import * as analysis from '../analysis/index.js';
import type { Scenario } from '../define/index.js';
import type { ObservationConditions } from '../observation/index.js';
import { catalogues } from './catalogues.js';

/** The scenario with a card under a sheet's conditions; what they do not name stays. @throws RangeError for an unknown oil */
export function underConditions(
  scenario: Scenario,
  card: string,
  conditions: ObservationConditions,
): Scenario {
  return analysis.underConditions(catalogues, scenario, card, conditions);
}
