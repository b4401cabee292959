/**
 * Which causes to play next: what befalls the device, or the unit, where others have come nearest to the sheet. All of
 * them are played in the end; the true one is on show the sooner.
 */
import type { Scenario } from '../../define/index.js';
import { partsOf } from '../../scenario/index.js';
import type { Promising } from './promise.js';
import type { Hypothesis } from './shapes.js';

/** By how much, as a log, what is promised of another device of the unit counts for less than of the same one. */
const OTHER_DEVICE = 2;
/** Further behind the best than this, as a log, says no more; and this share of it counts beside how common a cause is. */
const FAR = 20;
const COUNTS = 0.3;

/**
 * The most promising first; of which nothing is known, the most common first.
 *
 * @param tried what others could come to, of which something was played
 */
export function inTurn(
  { units }: Pick<Scenario, 'units'>,
  hypotheses: readonly Hypothesis[],
  tried: readonly Promising[],
): readonly Hypothesis[] {
  const best = new Map<string, number>();
  const unit = (on: string): string => `unit ${unitOf(units, on) ?? ''}`;
  for (const { profile, most } of tried) {
    const [{ on }] = profile.hypothesis.causes;
    for (const place of [on, unit(on)])
      best.set(place, Math.max(most, best.get(place) ?? -Infinity));
  }
  const top = Math.max(...best.values());
  const behind = (place: string): number => {
    const at = best.get(place);
    return at === undefined ? -Infinity : at - top;
  };
  const promised = ({ causes: [{ on }], prior }: Hypothesis): number =>
    Math.log(prior) + COUNTS * Math.max(-FAR, behind(on), behind(unit(on)) - OTHER_DEVICE);
  const all = hypotheses.map((h) => ({ h, log: promised(h) }));
  return all.sort((a, b) => b.log - a.log).map(({ h }) => h);
}

/** The unit a device belongs to, by what the unit names or by its own name; undefined for what serves all. */
function unitOf(units: Scenario['units'], on: string): string | undefined {
  return Object.entries(units).find(
    ([name, unit]) => on.startsWith(`${name}-`) || partsOf(unit).includes(on),
  )?.[0];
}
