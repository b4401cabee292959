/**
 * Left and right: what a fault does on one side, its like does on the other, nearly. Good enough to rule
 * out what cannot be it without playing both.
 */
import type { Scenario } from '../../define/index.js';
import type { Likelihood } from './likelihood.js';
import type { Foretold } from './profile.js';
import type { Cause, Signature } from './shapes.js';

const swapped = (name: string): string =>
  name.replace(/left|right/g, (side) => (side === 'left' ? 'right' : 'left'));

/**
 * The same fault on the other side; undefined for what has no other side. Left and right of one unit in the
 * middle (nose doors that lap) move in an order of their own and are not each other's like.
 */
export function mirrored(
  { components, mechanisms, units }: Scenario,
  cause: Cause,
): Cause | undefined {
  const on = swapped(cause.on);
  const middle = Object.keys(units).filter((unit) => swapped(unit) === unit);
  if (middle.some((unit) => on.startsWith(`${unit}-`))) return undefined;
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

/** So far off, in squared standard deviations, a figure says no more. */
const FAR = 25;

/** The side that is further from healthy on the sheet: what befalls that one is better played than borrowed. */
export function oddSide(likelihood: Likelihood, healthy: Foretold): 'left' | 'right' {
  const { figures, facts } = likelihood.evidences;
  const foretold = likelihood.figuresIn(healthy);
  const seen = likelihood.factsIn(healthy);
  const off = (side: string): number => {
    const of = ({ label }: { readonly label: string }): boolean => label.includes(side);
    return (
      figures.reduce((sum, f, i) => {
        const z = (f.value - foretold[i]) / f.spread;
        return sum + (of(f) ? (Number.isNaN(z) ? FAR : Math.min(FAR, z * z)) : 0);
      }, 0) +
      facts.reduce((sum, f, i) => sum + (of(f) ? Math.min(FAR, -2 * Math.log(seen[i])) : 0), 0)
    );
  };
  return off('right') > off('left') ? 'right' : 'left';
}
