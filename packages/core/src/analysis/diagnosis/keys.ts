/** The names of a signature's figures, numbered: what is foretold becomes an array, quick to work with. */
import type { Signature } from './shapes.js';

/** Figures by their place; NaN for what never comes. */
export type Vector = Float64Array;
/** Reads one figure. */
export type Reader = (v: Vector) => number;

/** What holds between two severities: a reading goes over straight, a time by its rate, a count or a fact not at all. */
type Rule = 'time' | 'reading' | 'count' | 'fact';

/** Of instruments of the supply these are times. */
const CLOCK = /\/cut-(?:in|out)$/;

function ruleOf(key: string): Rule {
  if (key.includes('/gauge/') || /\/(?:drift|window)$/.test(key)) return 'reading';
  if (key.includes('/supply/')) return CLOCK.test(key) ? 'time' : 'reading';
  if (key.endsWith('/pauses')) return 'count';
  return !key.includes('/') || key.endsWith('/moved') ? 'fact' : 'time';
}

export class Keys {
  private readonly places = new Map<string, number>();
  private readonly rules: Rule[] = [];
  /** For every figure the place that says whether its swing was made. */
  private readonly swings: number[] = [];

  /** Place of a name; a new one is given the next. */
  place(key: string): number {
    const known = this.places.get(key);
    if (known !== undefined) return known;
    const place = this.rules.push(ruleOf(key)) - 1;
    this.places.set(key, place);
    const slash = key.indexOf('/');
    this.swings[place] = slash < 0 ? place : this.place(key.slice(0, slash));
    return place;
  }

  vector(signature: Signature): Vector {
    const entries = Object.entries(signature).map(([key, v]) => [this.place(key), v] as const);
    const out = new Float64Array(this.rules.length).fill(NaN);
    for (const [place, v] of entries) out[place] = v;
    return out;
  }

  /** How to read a figure of this name; one that no signature has had yet never comes. */
  reader(key: string): Reader {
    const place = this.place(key);
    return (v) => v[place] ?? NaN;
  }

  /** Whether the same comes, and is moved, in two of them, be it sooner or later. */
  sameComes(a: Vector, b: Vector): boolean {
    for (const [i, rule] of this.rules.entries()) {
      const x = a[i] ?? NaN;
      const y = b[i] ?? NaN;
      if (rule === 'fact' ? !Object.is(x, y) : Number.isNaN(x) !== Number.isNaN(y)) return false;
    }
    return true;
  }

  /** A vector to be read by names. */
  named(v: Vector): Signature {
    return new Proxy<Signature>(NO_FIGURES, {
      get: (_, key) => {
        const value = v[this.places.get(key as string) ?? -1];
        return Number.isNaN(value) ? undefined : value;
      },
    });
  }

  /**
   * Between two severities, and on beyond the second. Of times it is the rate that goes straight, as it is
   * what a restriction or a load takes away: to nothing where only one of the two ever comes. A swing
   * that only one of them came to is as it was there: not to have made it says nothing of its times.
   */
  between(a: Vector, b: Vector, share: number): Vector {
    const near = share < 0.5 ? a : b;
    const size = Math.max(a.length, b.length);
    const out = new Float64Array(size);
    for (let i = 0; i < size; i++) {
      const x = a[i] ?? NaN;
      const y = b[i] ?? NaN;
      const rule = this.rules[i];
      const made = !Number.isNaN(a[this.swings[i]] ?? NaN);
      if (made === Number.isNaN(b[this.swings[i]] ?? NaN)) out[i] = made ? x : y;
      else if (rule === 'fact' || rule === 'count') out[i] = near[i] ?? NaN;
      else if (rule === 'reading')
        out[i] = Number.isNaN(x + y) ? (near[i] ?? NaN) : x + share * (y - x);
      else {
        const r = rate(x) + share * (rate(y) - rate(x));
        out[i] = r > 0 ? 1 / r : NaN;
      }
    }
    return out;
  }

  /** What two changes of the first come to together, if each does what it does alone. */
  added(healthy: Vector, a: Vector, b: Vector): Vector {
    return healthy.map((h, i) => {
      const [x, y] = [a[i] ?? NaN, b[i] ?? NaN];
      return this.rules[i] === 'fact' ? Math.min(x, y) : x + y - h;
    });
  }
}

/** Of a time, 1/s; of what never comes, nothing. No time is so short that others do not matter beside it. */
const rate = (t: number): number => (Number.isNaN(t) ? 0 : 1 / Math.max(t, 1e-3));

const NO_FIGURES: Signature = {};
