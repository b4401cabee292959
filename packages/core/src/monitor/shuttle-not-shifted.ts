import type { Evidence, RuleDefinition, Series } from '../define/index.js';
import { within } from './kind/index.js';
import { blowDown } from './reading/blow-down.js';
import { raise, seconds } from './reading/flag.js';
import { devicesOf } from './reading/line.js';
import { above, inMode, trace, valueAt } from './reading/span.js';

/** By how much gas must stand above the normal side before a shuttle is judged, Pa. */
const GAS_CAME = 5e5;
/** Time it may take once gas is there, s. */
const LIMIT = 1;

/** A shuttle that stays on its normal side. */
export const shuttleNotShifted: RuleDefinition = {
  name: 'shuttle-not-shifted',
  title: 'Shuttles shifted',
  summary:
    'In a blow-down every shuttle where gas stands above the oil goes to its emergency side within 1 s. Margin: ' +
    '1 s less the time it took, or minus the time it has not.',
  source:
    'One seized shuttle defeats the blow-down for one leg, and no normal swing shows it: field reports; common practice, no source.',
  kind: 'within',
  limits: [],
  judge: (e) => {
    const move = blowDown(e);
    if (move === undefined) return [];
    return devicesOf(e, 'shuttle').flatMap((name) => {
      const gas = gasAbove(e, name);
      if (gas === undefined) return [];
      const span = above(gas, GAS_CAME).find(({ to }) => to > move.start);
      if (span === undefined || span.from >= move.end) return [];
      const came = Math.max(span.from, move.start);
      // It may have shifted before the gas stood that high, or stand there from the test before.
      const shifted = inMode(e, name, 'emergency')?.find(({ to }) => to > came);
      const done = shifted === undefined ? undefined : Math.max(shifted.from, came);
      const found = within(came, done, LIMIT, move.end);
      if (found === undefined) return [];
      return [
        raise(shuttleNotShifted, found, {
          devices: [name],
          severity: 'fail',
          bad:
            done === undefined
              ? `Gas stood at ${name} and it did not shift: what it feeds gets none.`
              : `${name} shifted ${seconds(found.to - found.from)} after the gas had come.`,
          good: `${name} shifted ${seconds(found.to - found.from)} after the gas had come.`,
          suggestion:
            'Strip the shuttle; look for water and corrosion. Vent the gas first and keep clear of the leg: it may go at any moment.',
        }),
      ];
    });
  },
};

/** Gas pressure at a shuttle above its normal side, or above ambient where that is not known, Pa. */
function gasAbove(e: Evidence, shuttle: string): Series | undefined {
  const { emergency, normal } = e.scenario.components[shuttle].ports;
  const gas = trace(e, `${emergency}.pressure`);
  if (gas === undefined) return undefined;
  const oil = trace(e, `${normal}.pressure`);
  const { ambient } = e.scenario;
  return {
    t: gas.t,
    v: gas.v.map((p, i) => p - (oil === undefined ? ambient : valueAt(oil, gas.t[i]))),
  };
}
