import type { RuleDefinition } from '../define/index.js';
import { never } from './kind/index.js';
import { raise, seconds } from './reading/flag.js';
import { devicesOf } from './reading/line.js';
import { endOf, inMode } from './reading/span.js';

/** What a coupling of two doors that meet says of them. */
const WORDS: readonly string[] = ['clear', 'overlapped', 'clashed'];

/** Doors that lap each other, closed in the wrong order. */
export const doorsClash: RuleDefinition = {
  name: 'doors-clash',
  title: 'Doors that lap meet in their order',
  summary:
    'Of two doors that lap, the one whose edge lies under the other closes first and opens last: ' +
    'their edges never clash. Margin: minus the time they were clashed, or the time watched, s.',
  source: 'Order of lapped doors; common practice, no source.',
  kind: 'never',
  limits: [],
  judge: (e) =>
    devicesOf(e, 'coupling').flatMap((device) => {
      const words = e.log.filter((x) => x.device === device && x.kind === 'mode');
      if (!words.some((x) => WORDS.includes(x.to))) return [];
      const end = endOf(e);
      const found = never(inMode(e, device, 'clashed') ?? [], [{ from: 0, to: end }], end);
      const doors = Object.values(e.scenario.components[device].links).map((l) => l.to);
      const both = doors.join(' and ');
      return [
        raise(doorsClash, found, {
          devices: [device, ...doors],
          severity: 'fail',
          bad: `The edges of ${both} clashed at ${seconds(found.from)}, for ${seconds(-found.margin)} in all: the door that belongs underneath came last. Edges that meet so bend each other.`,
          good: `The edges of ${both} did not clash.`,
          suggestion:
            'Look at which door goes first and why: their restrictors, their loads, slack in a chain, the order of their valves. Find it with little flow and a hand on the stop.',
        }),
      ];
    }),
};
