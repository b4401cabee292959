import type { Flag, RuleDefinition } from '../../define/index.js';
import { raise, seconds } from './flag.js';
import type { Approach } from './sweep.js';

/** A flag on how near two parts come: smallest distance less what is asked, m. */
export function nearness(
  rule: RuleDefinition,
  near: Approach,
  asked: number,
  devices: readonly string[],
  one: string,
  other: string,
  touch: boolean,
): Flag {
  const { distance, from, to, t } = near;
  return raise(
    rule,
    { margin: distance - asked, quantity: 'length', from, to },
    {
      devices,
      severity: 'fail',
      bad: touch
        ? `${other} and ${one} ran into each other at ${seconds(t)}.`
        : `${one} and ${other} came nearer than the clearance limit at ${seconds(t)}.`,
      good: `${one} and ${other} came nearest at ${seconds(t)} and stayed clear.`,
      suggestion:
        'Look at the order of leg and doors around that time, then at rigging and strut length. Never rely on this drawing for a gap: measure it, slowly, by hand pump.',
    },
  );
}
