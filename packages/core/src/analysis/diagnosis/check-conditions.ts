/** How the aircraft stands for a swing that a check asks for, as an observation sheet notes it. */
import { checks } from '../../check/index.js';
import type { Catalogues, Scenario } from '../../define/index.js';
import type { ObservationConditions, ObservationSheet } from '../../observation/index.js';
import { namesOf } from '../blow-down/card.js';

/** Figures as near as this are the same conditions: a share of them (of a temperature, some 6 K). */
const SAME = 0.02;

/** What is other than in the sheet's first swing; undefined for a check that is no swing. */
export function checkConditions(
  catalogues: Catalogues,
  scenario: Scenario,
  sheet: ObservationSheet,
  check: string,
): ObservationConditions | undefined {
  const change = checks[check]?.swing;
  if (change === undefined) return undefined;
  const first = sheet.swings.find((s) => s.direction !== 'blow-down');
  const own = { ...sheet.conditions, ...first?.conditions };
  const { flowShare, warmer, doors } = change;
  const [flow] = namesOf(scenario, catalogues, 'supply')
    .map((name) => scenario.components[name].parameters.flow)
    .filter((value) => typeof value === 'number');
  const supplied = own.supplyFlow ?? flow;
  const card = Object.hasOwn(scenario.cards, sheet.card) ? scenario.cards[sheet.card] : undefined;
  const temperature = own.temperature ?? card?.temperature ?? scenario.fluid.temperature;
  return {
    ...first?.conditions,
    ...(flowShare !== undefined && supplied !== undefined && { supplyFlow: supplied * flowShare }),
    ...(warmer !== undefined && { temperature: temperature + warmer }),
    ...(doors !== undefined && { doors }),
  };
}

/** Whether the sheet has a swing under the conditions that a check asks for. */
export function checkMade(
  catalogues: Catalogues,
  scenario: Scenario,
  sheet: ObservationSheet,
  check: string,
): boolean {
  const asked = checkConditions(catalogues, scenario, sheet, check);
  if (asked === undefined) return false;
  return sheet.swings.some((swing) => {
    const under: ObservationConditions = { ...sheet.conditions, ...swing.conditions };
    return Object.entries(asked).every(([name, wanted]) => {
      const is = under[name as keyof ObservationConditions];
      return typeof wanted === 'number' && typeof is === 'number'
        ? Math.abs(is - wanted) <= SAME * Math.abs(wanted)
        : is === wanted;
    });
  });
}
