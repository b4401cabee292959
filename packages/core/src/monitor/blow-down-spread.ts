import type { RuleDefinition, UnitEntry } from '../define/index.js';
import { together } from './kind/index.js';
import { blowDown, lockedDown } from './reading/blow-down.js';
import { raise, seconds } from './reading/flag.js';

/** Left and right not coming down together on gas. */
export const blowDownSpread: RuleDefinition = {
  name: 'blow-down-spread',
  title: 'Left and right together on gas',
  summary:
    'Left and right legs lock down within the spread limit of each other after the blow-down handle. ' +
    'Margin: the limit less the difference, s.',
  source: 'By judgement unless a number is given; common practice, no source.',
  kind: 'together',
  limits: ['blowDownSpread'],
  judge: (e) => {
    const limit = e.scenario.limits.blowDownSpread;
    const move = blowDown(e);
    if (limit === undefined || move === undefined) return [];
    const all = lockedDown(e, move);
    const side = (s: UnitEntry['side']) => all.filter(({ unit }) => unit.side === s);
    return side('left').flatMap((left) =>
      side('right').flatMap((right) => {
        const found = together(left.at, right.at, limit, move.end);
        if (found === undefined) return [];
        const late = (right.at ?? Infinity) > (left.at ?? Infinity) ? right : left;
        const apart = seconds(found.to - found.from);
        return [
          raise(blowDownSpread, found, {
            devices: [left.unit.leg, right.unit.leg],
            severity: 'caution',
            bad:
              late.at === undefined
                ? `${late.name} did not lock; the other side had, ${apart} before the end. One leg down is worse than none.`
                : `${late.name} locked ${apart} after the other side. Gas goes where it is easiest, and the bottle is smaller then.`,
            good: `Both sides locked within ${apart} of each other.`,
            suggestion: `Compare ${late.name} with the other side: shuttle, friction, the way out of its up side.`,
          }),
        ];
      }),
    );
  },
};
