/**
 * Left and right: what a fault does on one side, its like does on the other, nearly. Good enough to rule
 * out what cannot be it without playing both.
 */
import type { Scenario } from '../../define/index.js';
import type { Cause, Hypothesis, Signature } from './shapes.js';

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

/** The hypotheses to be played, and for each of the others the one it borrows from. */
export function sides(
  scenario: Scenario,
  hypotheses: readonly Hypothesis[],
): { readonly own: readonly Hypothesis[]; readonly lenders: ReadonlyMap<Hypothesis, Hypothesis> } {
  const name = ({ fault, on }: Cause): string => `${fault} ${on}`;
  const known = new Map<string, Hypothesis>();
  const lenders = new Map<Hypothesis, Hypothesis>();
  for (const h of hypotheses) {
    const [cause] = h.causes;
    const other = mirrored(scenario, cause);
    const lender = other && known.get(name(other));
    if (lender === undefined) known.set(name(cause), h);
    else lenders.set(h, lender);
  }
  return { own: hypotheses.filter((h) => !lenders.has(h)), lenders };
}
