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
    const { rules } = this;
    for (let i = 0; i < rules.length; i++) {
      const x = a[i] ?? NaN;
      const y = b[i] ?? NaN;
      if (rules[i] === 'fact' ? !Object.is(x, y) : Number.isNaN(x) !== Number.isNaN(y))
        return false;
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
   * what a restriction or a load takes away: to nothing where only one of the two ever comes. A swing that
   * only one of them came to is as it was there: not to have made it says nothing of its times.
   *
   * Where a time runs away it is the delay over a `sound` gear's that does so: what waits for one thing is late
   * by as much as that; all else of that swing is as it was while it still came.
   */
  between(a: Vector, b: Vector, share: number, sound?: Vector): Vector {
    const close = share < 0.5 ? a : b;
    const size = Math.max(a.length, b.length);
    const out = new Float64Array(size);
    const away = sound && this.runsAway(a, b, sound);
    for (let i = 0; i < size; i++) {
      const x = a[i] ?? NaN;
      const y = b[i] ?? NaN;
      const rule = this.rules[i];
      const comes = away?.get(this.swings[i]);
      const made = !Number.isNaN(a[this.swings[i]] ?? NaN);
      if (made === Number.isNaN(b[this.swings[i]] ?? NaN)) out[i] = made ? x : y;
      else if (rule === 'time') {
        const from = comes === undefined ? 0 : soundest(x, y, sound?.[i]);
        const r = rate(x - from) + share * (rate(y - from) - rate(x - from));
        out[i] = r > 0 ? from + 1 / r : NaN;
      } else if (rule === 'reading' && comes === undefined && !Number.isNaN(x + y))
        out[i] = x + share * (y - x);
      else out[i] = (comes ?? close)[i] ?? NaN;
    }
    return out;
  }

  /** Swings in which a time is late under one of two severities and never comes under the other, with the one. */
  runsAway(a: Vector, b: Vector, sound: Vector): ReadonlyMap<number, Vector> | undefined {
    let found: Map<number, Vector> | undefined;
    const { rules } = this;
    for (let i = 0; i < rules.length; i++) {
      if (rules[i] !== 'time' || Number.isNaN(a[i] ?? NaN) === Number.isNaN(b[i] ?? NaN)) continue;
      const comes = Number.isNaN(b[i] ?? NaN) ? a : b;
      if (comes[i] - sound[i] > LATE * sound[i])
        (found ??= new Map<number, Vector>()).set(this.swings[i], comes);
    }
    return found;
  }

  /** What was played, moved as far as what is foretold moves from where it was played to elsewhere. */
  moved(played: Vector, from: Vector, to: Vector): Vector {
    const size = Math.max(played.length, from.length, to.length);
    return Float64Array.from({ length: size }, (_, i) => {
      const [x, a, b] = [played[i] ?? NaN, from[i] ?? NaN, to[i] ?? NaN];
      if (Object.is(a, b)) return x;
      return this.rules[i] === 'fact' || Number.isNaN(x + a) ? b : x + b - a;
    });
  }

  /**
   * What two causes come to together: a time is as many times as long as each makes it, a reading is that of the one
   * that changes it more. (400 pairs simulated on the three demo aircraft: that is off by 3 % of a time in the median,
   * and by a tenth in one of five, half as much as adding; readings are pushed by what stalls most.)
   */
  together(healthy: Vector, a: Vector, b: Vector): Vector {
    const size = Math.max(healthy.length, a.length, b.length);
    return Float64Array.from({ length: size }, (_, i) => {
      const [h, x, y] = [healthy[i] ?? NaN, a[i] ?? NaN, b[i] ?? NaN];
      if (this.rules[i] === 'fact') return Math.min(x, y);
      // What one of them brings about.
      if (Number.isNaN(h)) return Number.isNaN(x) ? y : x;
      if (this.rules[i] === 'time') return (x * y) / h;
      return Math.abs(x - h) > Math.abs(y - h) || Number.isNaN(y) ? x : y;
    });
  }
}

/** Later than a sound gear's by this share, a time has begun to run away. */
const LATE = 0.1;

/** Of a time, 1/s; of what never comes, nothing. No time is so short that others do not matter beside it. */
const rate = (t: number): number => (Number.isNaN(t) ? 0 : 1 / Math.max(t, 1e-3));

/** What of a time that one of two never comes to is not delay; nothing where both come to it. */
const soundest = (x: number, y: number, sound = NaN): number => {
  if (Number.isNaN(x) === Number.isNaN(y) || Number.isNaN(sound)) return 0;
  return Math.min(Number.isNaN(x) ? y : x, sound);
};

const NO_FIGURES: Signature = {};
