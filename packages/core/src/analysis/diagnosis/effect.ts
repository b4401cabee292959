/**
 * What a fault changes of its part, so that a swing that was played for one cause counts for every other that
 * does the same: a weeping union and a pinhole are both a hole, a piston fitted the wrong way round is
 * one at any severity.
 */
import type { Catalogues, ParameterValue, Scenario } from '../../define/index.js';
import { changeOf, type PartChange } from '../../scenario/index.js';
import type { Cause } from './shapes.js';

/** Severities that tell whether a fault is graded at all. */
const SLIGHT = 0.06;
const WORST = 1;
/** Halvings to a severity that does the same, and how alike figures are then, as a share. */
const HALVINGS = 40;
const ALIKE = 1e-6;

export class Effects {
  constructor(
    private readonly catalogues: Catalogues,
    private readonly scenario: Scenario,
  ) {}

  /** Whether it is as bad at any severity. */
  abrupt(cause: Cause): boolean {
    return same(this.of(cause, SLIGHT), this.of(cause, WORST));
  }

  /** The severity at which `other` does to its part what `cause` does at `severity`; undefined where it never does. */
  alike(cause: Cause, severity: number, other: Cause): number | undefined {
    if (cause.on !== other.on) return undefined;
    const wanted = this.of(cause, severity);
    const worst = this.of(other, WORST);
    if (same(wanted, worst)) return WORST;
    // What is graded goes one way with severity: the first figure that does is followed.
    const least = this.of(other, SLIGHT).changed;
    const graded = Object.keys(least).find((key) => least[key] !== worst.changed[key]);
    if (graded === undefined) return undefined;
    const [from, to, aim] = [least, worst.changed, wanted.changed].map((c) => Number(c[graded]));
    let [low, high] = [0, WORST];
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (low + high) / 2;
      const value = Number(this.of(other, middle).changed[graded]);
      if (value < aim === to > from) low = middle;
      else high = middle;
    }
    const found = Math.round(high / ALIKE) * ALIKE;
    return found > 0 && same(wanted, this.of(other, high)) ? found : undefined;
  }

  /** Those of one name may do the same, at severities of their own. */
  family(cause: Cause): string {
    const change = this.of(cause, WORST);
    return [cause.on, ...Object.keys(change.changed).sort(), joined(change)].join(' ');
  }

  private of(cause: Cause, severity: number): PartChange {
    return changeOf(this.scenario, { ...cause, severity }, this.catalogues);
  }
}

function same(a: PartChange, b: PartChange): boolean {
  const keys = Object.keys(a.changed);
  return (
    joined(a) === joined(b) &&
    keys.length === Object.keys(b.changed).length &&
    keys.every((key) => close(a.changed[key], b.changed[key]))
  );
}

function close(a: ParameterValue | undefined, b: ParameterValue | undefined): boolean {
  if (typeof a !== 'number' || typeof b !== 'number')
    return a !== undefined && JSON.stringify(a) === JSON.stringify(b);
  return Math.abs(a - b) <= ALIKE * Math.max(Math.abs(a), Math.abs(b));
}

const joined = ({ ports }: PartChange): string => JSON.stringify(ports ?? {});
