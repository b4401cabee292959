import type { RuleDefinition, UnitEntry } from '../define/index.js';
import { together } from './kind/index.js';
import { raise, seconds } from './reading/flag.js';
import { moves, units } from './reading/motion.js';
import { timings } from './timings.js';

/** Left and right not finishing together. */
export const spread: RuleDefinition = {
  name: 'spread',
  title: 'Left and right together',
  summary:
    'Left and right units finish a move within the spread limit of each other. Margin: the limit ' +
    'less the difference of their total times, s.',
  source: 'Usually by judgement unless a number is given; common practice, no source.',
  kind: 'together',
  limits: ['spread'],
  judge: (e) => {
    const limit = e.scenario.limits.spread;
    if (limit === undefined) return [];
    const all = timings(e);
    const named = units(e);
    const side = (s: UnitEntry['side']) => named.filter(({ unit }) => unit.side === s);
    const swings = moves(e).filter(({ by }) => by === 'oil');
    return swings.flatMap((move) =>
      side('left').flatMap((left) =>
        side('right').flatMap((right) => {
          const done = (unit: string): number | undefined => {
            const total = all.find((t) => t.unit === unit && t.start === move.start)?.total;
            return total === undefined || Number.isNaN(total) ? undefined : move.start + total;
          };
          const l = done(left.name);
          const r = done(right.name);
          const found = together(l, r, limit, move.end);
          if (found === undefined) return [];
          const late = r === undefined || (l !== undefined && r > l) ? right : left;
          const apart = seconds(found.to - found.from);
          return [
            raise(spread, found, {
              devices: [left.unit.leg, right.unit.leg],
              severity: 'caution',
              bad:
                l === undefined || r === undefined
                  ? `${late.name} did not finish going ${move.direction}; the other side had finished ${apart} before.`
                  : `${late.name} finished going ${move.direction} ${apart} after the other side. The two share one supply, so the easier side goes first; a leak makes both slower.`,
              good: `Both sides finished going ${move.direction} within ${apart} of each other.`,
              suggestion: `Compare ${late.name} with the other side: friction, restrictor, seals, lock, rigging.`,
            }),
          ];
        }),
      ),
    );
  },
};
