import type { Catalogues, NumberParameter, Scenario } from '../../define/index.js';
import { blowDownCard, bottleOf } from './card.js';
import { playCell } from './cell.js';
import type { BlowDownCell, MinimumCharge } from './shapes.js';

/** To which share of it the least charge is found: what a good gauge shows (EN 837-1 class 1.0, from memory). */
const CLOSE = 1e-2;

/**
 * The least charge with which every leg still locks, by bisection between the ends of the bottle's
 * range: whether a leg locks is yes or no. Assumes that more gas never does worse, which is checked
 * at the ends.
 *
 * @throws RangeError when the scenario has no bottle or card for it.
 */
export function minimumCharge(
  catalogues: Catalogues,
  scenario: Scenario,
  options: { readonly card?: string; readonly temperature?: number } = {},
): MinimumCharge {
  const card = blowDownCard(scenario, catalogues, options.card);
  const bottle = bottleOf(scenario, catalogues);
  const { is, parameters } = scenario.components[bottle];
  const temperature =
    options.temperature ?? scenario.cards[card].temperature ?? scenario.fluid.temperature;
  const declared = catalogues.components[is].parameters.charge as NumberParameter;
  const own = parameters.charge as number;
  let runs = 0;
  const play = (charge: number): BlowDownCell => {
    runs++;
    return playCell(catalogues, scenario, card, { charge, temperature });
  };
  const locks = (cell: BlowDownCell): boolean => cell.verdict === 'locked';
  // Its own charge first: one end of the bracket, and the usual answer to which side to look.
  const now = play(own);
  let low = locks(now) ? 0 : own;
  let high = locks(now) ? own : Math.min(4 * own, declared.range[1]);
  let best = now;
  if (!locks(now)) {
    best = play(high);
    if (!locks(best)) return { card, charge: NaN, kind: 'never', runs, cell: best };
  } else {
    const none = play(0);
    if (locks(none)) return { card, charge: 0, kind: 'always', runs, cell: none };
  }
  while (high - low > CLOSE * high) {
    const middle = 0.5 * (low + high);
    const cell = play(middle);
    if (locks(cell)) {
      high = middle;
      best = cell;
    } else low = middle;
  }
  return { card, charge: high, kind: 'found', runs, cell: best };
}
