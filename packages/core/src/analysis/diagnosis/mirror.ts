/**
 * Left and right: what a fault does on one side, its like does on the other, nearly. Good enough to rule
 * out what cannot be it without playing both.
 */
import type { Scenario } from '../../define/index.js';
import type { Cause, Signature } from './shapes.js';

const swapped = (name: string): string =>
  name.replace(/left|right/g, (side) => (side === 'left' ? 'right' : 'left'));

/** The same fault on the other side; undefined for what has no other side. */
export function mirrored({ components, mechanisms }: Scenario, cause: Cause): Cause | undefined {
  const on = swapped(cause.on);
  const kind = (name: string): string | undefined => (components[name] ?? mechanisms[name])?.is;
  return on !== cause.on && kind(on) !== undefined && kind(on) === kind(cause.on)
    ? { ...cause, on }
    : undefined;
}

/** What a fault does on one side, from what its like does on the other. */
export function lent(healthy: Signature, other: Signature): Signature {
  return Object.fromEntries(
    Object.entries(other).map(([key, value]) => {
      const own = swapped(key);
      const [before, here] = [healthy[key], healthy[own]];
      return [own, before === undefined || here === undefined ? value : here + (value - before)];
    }),
  );
}
