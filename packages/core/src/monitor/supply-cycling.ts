import type { Evidence, RuleDefinition } from '../define/index.js';
import { limitValue } from './kind/index.js';
import { raise, seconds, tightest } from './reading/flag.js';
import { travelling, units } from './reading/motion.js';
import { overlap, union } from './reading/span.js';

/** Shortest time between two starts while nothing moves, s, where the scenario has no limit; own choice. */
const SHORTEST = 10;

/** A supply that cuts in again and again though nothing uses oil. */
export const supplyCycling: RuleDefinition = {
  name: 'supply-cycling',
  title: 'Supply rests while nothing moves',
  summary:
    'While no leg or door travels, an unloader does not load its pump again, and a pressure switch ' +
    'does not start its motor again, sooner than the limit cycleTime (10 s without one) after the ' +
    'time before. Margin: shortest time between two starts less the limit, s.',
  source:
    'Time between cut-out and cut-in tells leaks and lost precharge: NAVEDTRA 14329 (from memory); the 10 s are our own choice.',
  kind: 'limit',
  limits: ['cycleTime'],
  judge: (e) => {
    const low = e.scenario.limits.cycleTime ?? SHORTEST;
    const parts = units(e).flatMap(({ unit }) => [unit.leg, ...unit.doors]);
    const travel = union(travelling(e, parts));
    return Object.keys(e.scenario.components).flatMap((device) => {
      const starts = startsOf(e, device);
      const flags = starts.slice(1).flatMap((to, i) => {
        const from = starts[i];
        if (overlap(travel, [{ from, to }]).length > 0) return [];
        const found = { ...limitValue(to - from, { low }, 'time', to), from, to };
        return [
          raise(supplyCycling, found, {
            devices: [device],
            severity: 'caution',
            bad: `${device} cut in again at ${seconds(to)}, ${seconds(to - from)} after the time before, and nothing had moved. Something leaks, or nothing stores oil.`,
            good: `${device} cut in again at ${seconds(to)}, ${seconds(to - from)} after the time before.`,
            suggestion:
              'Time cut-out and cut-in: a long way to cut-out speaks of a leak past the dump valve, an early cut-in of a leaking check valve or a leak in the system. Read the accumulator precharge with no oil pressure.',
          }),
        ];
      });
      // One word for each device, on its shortest rest.
      return tightest(flags).reduce<typeof flags>(
        (worst, f) => (worst.length === 0 || f.margin < worst[0].margin ? [f] : worst),
        [],
      );
    });
  },
};

/** Times at which a device loads again, s: from unloaded, or from held by its pressure switch. */
function startsOf(e: Evidence, device: string): readonly number[] {
  return e.log
    .filter((x) => x.device === device && x.kind === 'mode')
    .filter(({ from, to }) =>
      from === 'unloaded' ? to === 'loading' : from !== '' && from === `${to} held`,
    )
    .map((x) => x.t);
}
