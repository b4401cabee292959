/**
 * How likely a sheet is under what a cause foretells. Figures scatter together (a warm day makes all
 * times short), so their deviations are judged by one multivariate normal distribution: reading
 * errors on the diagonal, the unknowns of the healthy aircraft as outer products of what each does.
 * One wrong entry must not sink the true cause: the likelihood is a mixture of 'all are right' and
 * 'this one is wrong' for each of them; a wrong one could be anything.
 *
 * Leaving one out of a normal distribution with precision matrix P: with q = P r, the quadratic form
 * falls by q_i^2 / P_ii, and the log determinant of the covariance by -log P_ii (see gaussian.ts).
 */
import type { Evidences, FigureEntry } from './entry.js';
import { Room, type Gaussian } from './gaussian.js';
import type { Keys, Reader, Vector } from './keys.js';
import type { Foretold } from './profile.js';
import { Scattering, type Scatter, type Slowness } from './scatter.js';
import type { Cause } from './shapes.js';

/** An entry is wrong once in so many: one sheet in ten has one. */
const WRONG = 0.005;
const ONE_WRONG = Math.log(WRONG);
const RIGHT = Math.log(1 - WRONG);
/** Times noted of what cannot come, or facts of another swing: a mistake of another kind, once for each swing. */
const NEVER = 1e-3;
/** Where a swing goes as a sound one does nobody mistakes what happens: what never came is not said of what came. */
const PLAIN = 1e-5;
/** A time longer or shorter by this share makes a swing another than a sound one. */
const OTHER = 0.25;
/** So many spreads beyond the mean, or a fact less likely than this, is a bad fit, or not a good one. */
const BADLY = { spreads: { bad: 3, fair: 2, well: 1 }, fact: 0.01 } as const;
/** A wrong figure lies anywhere up to this beyond twice what was read: s, Pa, m3/s, strokes. */
const WIDTH = { time: 5, gauge: 5e6, flow: 2e-4, strokes: 20 } as const;
/** Shorter times are all one, s. */
const SOON = 0.05;
/** Probabilities of a fact nearer than this are the same. */
const SAME = 0.01;
const LOG_2PI = Math.log(2 * Math.PI);

export class Likelihood {
  /** For what is asked once, by how many figures it has. */
  private readonly rooms: Room[] = [];
  private readonly deviations: Float64Array;
  private readonly pulls: Float64Array;
  /** By which figures are foretold at all. */
  private readonly patterns = new Map<string, Known>();
  private readonly scattering: Scattering;
  /** What a sound gear does, and what is foretold of it for every figure. */
  private readonly sound: Foretold;
  private readonly healthy: readonly number[];
  /** Log density of a wrong entry: as good as anywhere. */
  private readonly anywhere: readonly number[];

  /** For every figure the place of its name. */
  private readonly places: readonly number[];
  /** For every fact how likely it is under what is foretold. */
  private readonly seen: readonly Reader[];

  constructor(
    readonly evidences: Evidences,
    scatter: Scatter,
    healthy: Foretold,
    private readonly keys: Keys,
  ) {
    this.places = evidences.figures.map((f) => keys.place(f.key));
    this.seen = evidences.facts.map((f) => f.seen((key) => keys.reader(key)));
    this.sound = healthy;
    this.healthy = this.figuresIn(healthy);
    this.scattering = new Scattering(evidences.figures, scatter, this.healthy);
    this.anywhere = evidences.figures.map(anywhere);
    this.deviations = new Float64Array(evidences.figures.length);
    this.pulls = new Float64Array(evidences.figures.length);
  }

  /** Log likelihood under what is foretold for each setup, and the facts with it. */
  of(foretold: Foretold): number {
    const figures = this.figuresIn(foretold);
    const { facts } = this.evidences;
    if (facts.length === 0) return this.ofFigures(figures);
    const plain = foretold.map((v, setup) => this.goesAsSound(v, setup, figures));
    return this.ofFigures(figures) + this.ofFacts(this.factsIn(foretold), plain);
  }

  /** Whether it is further off than the errors of reading would have it once in some hundred sheets, or in some thirty. */
  fitsNoBetter(than: keyof typeof BADLY.spreads, foretold: Foretold): boolean {
    const { figures } = this.evidences;
    const noted = figures.map((f) => f.value);
    const short = this.ofFigures(noted) - this.ofFigures(this.figuresIn(foretold));
    // Half of chi squared: its mean is half of how many they are, its spread the root of that.
    const half = figures.length / 2;
    return (
      short > half + BADLY.spreads[than] * Math.sqrt(half) ||
      this.factsIn(foretold).some((p) => p < BADLY.fact)
    );
  }

  /** Whether a swing goes as a sound gear's does, but for how long it takes, within a share. */
  private goesAsSound(v: Vector, setup: number, foretold: readonly number[]): boolean {
    const { figures } = this.evidences;
    const sound = this.sound[setup];
    if (sound === undefined || !this.keys.sameComes(v, sound)) return false;
    return figures.every(
      (f, i) =>
        f.kind !== 'time' ||
        f.setup !== setup ||
        !(Math.abs(foretold[i] - this.healthy[i]) > OTHER * this.healthy[i]),
    );
  }

  /**
   * The most that a cause could come to of which little is known: what is foretold of it may be off to either side by
   * `slack`, a share of how far that is from what was played; `open` setups could come to anything.
   */
  atMost(
    played: Foretold,
    foretold: Foretold,
    slack: number,
    open: (setup: number) => boolean = () => false,
  ): number {
    const { figures, facts } = this.evidences;
    const before = this.figuresIn(played);
    const nearest = this.figuresIn(foretold).map((x, i) => {
      const { setup, value } = figures[i];
      if (open(setup)) return value;
      const off = slack * Math.abs(x - (Number.isNaN(before[i]) ? 0 : before[i]));
      return Math.min(Math.max(value, x - off), x + off);
    });
    const seen = this.factsIn(played);
    // A fact that it changes may be seen for another severity.
    const sure = this.factsIn(foretold).map((p, i) =>
      open(facts[i].setup) || Math.abs(p - seen[i]) > SAME ? 1 : p,
    );
    return this.ofFigures(nearest) + this.ofFacts(sure);
  }

  /**
   * The most that something between two foretellings could come to, if every figure and fact goes its
   * own way from the one to the other; `open` setups could come to anything.
   */
  amid(a: Foretold, b: Foretold, open: (setup: number) => boolean): number {
    const { figures, facts } = this.evidences;
    const [va, vb] = [this.figuresIn(a), this.figuresIn(b)];
    // Where one time runs away, others of its swing may wait for it: as late as it is. The gauge climbs as what
    // it pushes slows, and shows another thing again once that stands.
    const away = new Set(
      figures.flatMap((f, i) => (Number.isNaN(va[i]) !== Number.isNaN(vb[i]) ? [f.swing] : [])),
    );
    const nearest = figures.map((f, i) => {
      const [low, high] = [Math.min(va[i], vb[i]), Math.max(va[i], vb[i])];
      if (open(f.setup)) return f.value;
      if (Number.isNaN(low)) return oneWay(f, va[i], vb[i]);
      const climbs = f.kind === 'time' || f.key.endsWith('/moving');
      const most = climbs && away.has(f.swing) ? Infinity : high;
      return Math.min(Math.max(f.value, low), most);
    });
    const [pa, pb] = [this.factsIn(a), this.factsIn(b)];
    // What stops short lies between what comes home and what does not move: it shows in neither.
    const changes = a.map((v, setup) => open(setup) || !this.keys.sameComes(v, b[setup]));
    const seen = facts.map((f, i) => (changes[f.setup] ? 1 : Math.max(pa[i], pb[i])));
    return this.ofFigures(nearest) + this.ofFacts(seen);
  }

  /** Log likelihood of what looks at parts have shown. */
  ofLooks(causes: readonly Cause[]): number {
    return this.evidences.looks.reduce((sum, look) => sum + Math.log(look.seen(causes)), 0);
  }

  /** How far two causes lie apart by what looks have shown, on the scale of {@link distance}. */
  looksApart(a: readonly Cause[], b: readonly Cause[]): number {
    return this.evidences.looks.reduce((sum, { seen }) => {
      const [p, q] = [seen(a), seen(b)];
      return sum + 2 * (p - q) * Math.log(p / q);
    }, 0);
  }

  /** Squared distance of two foretellings in units of what these observations can tell apart. */
  distance(a: Foretold, b: Foretold): number {
    const va = this.figuresIn(a);
    const vb = this.figuresIn(b);
    const { figures } = this.evidences;
    const one = figures.filter((_, i) => Number.isNaN(va[i]) !== Number.isNaN(vb[i]));
    const swings = new Set(one.map(({ swing }) => swing)).size;
    const apart = va.map((v, i) => v - vb[i]);
    const { places, gaussian } = this.known(apart, this.scattering.slownessOf(va));
    const sum = gaussian.squared(places.map((i) => apart[i])) - 2 * swings * Math.log(NEVER);
    const pb = this.factsIn(b);
    return this.factsIn(a).reduce((all, p, i) => all + 2 * (p - pb[i]) * Math.log(p / pb[i]), sum);
  }

  /** For every figure of the sheet what is foretold; NaN for what never comes. */
  figuresIn(foretold: Foretold): number[] {
    return this.evidences.figures.map((f, i) => foretold[f.setup][this.places[i]] ?? NaN);
  }

  /** How likely every fact of the sheet is. */
  factsIn(foretold: Foretold): number[] {
    const { facts } = this.evidences;
    return this.seen.map((seen, i) => seen(foretold[facts[i].setup]));
  }

  /** The figures as vectors of which each place scatters by one, and by itself. */
  straight(): Straight {
    const { healthy, scattering } = this;
    const { figures } = this.evidences;
    const noted = figures.map(({ value }) => value);
    const sound = this.factsIn(this.sound);
    const slowness = scattering.slownessOf(noted);
    const there = healthy.flatMap((x, i) => (Number.isNaN(x) ? [] : [i]));
    const isTime = (i: number): boolean => figures[i].kind === 'time';
    const [times, readings] = [there.filter(isTime), there.filter((i) => !isTime(i))];
    const gaussian = scattering.gaussian(times, slowness);
    const spreads = readings.map((i) =>
      Math.sqrt(1 / scattering.gaussian([i], slowness).precision[0]),
    );
    const off = (x: readonly number[]): Off => {
      const multiplied = new Float64Array(times.length);
      const logs = times.map((i) => noted[i] * Math.log(Math.max(x[i], SOON) / healthy[i]));
      gaussian.whiten(logs, multiplied);
      const changed = Float64Array.from(readings, (i, k) => (x[i] - healthy[i]) / spreads[k]);
      return { multiplied, changed };
    };
    return {
      noted: off(noted),
      of: (foretold) => {
        const x = this.figuresIn(foretold);
        return there.some((i) => Number.isNaN(x[i])) ? undefined : off(x);
      },
      gained: (foretold) => this.factsIn(foretold).map((p, i) => Math.log(p / sound[i])),
    };
  }

  /**
   * Facts of one swing hang together (a leg that stops short keeps its doors, and what comes after
   * them, waiting): they are as foretold, or all of them tell of a swing that was not understood.
   */
  private ofFacts(seen: readonly number[], plain: readonly boolean[] = []): number {
    const { facts } = this.evidences;
    let log = 0;
    for (const swing of new Set(facts.map((f) => f.swing))) {
      const own = seen.filter((_, i) => facts[i].swing === swing);
      const together = own.reduce((product, p) => product * p, 1);
      const { setup = -1 } = facts.find((f) => f.swing === swing) ?? {};
      const lapse = plain[setup] ? PLAIN : NEVER;
      log += Math.log((1 - lapse) * together + lapse * 0.5 ** own.length);
    }
    return log;
  }

  private ofFigures(foretold: readonly number[]): number {
    const { figures } = this.evidences;
    const slowness = this.scattering.slownessOf(foretold);
    const { places, gaussian, right, wrong, missing } = this.known(foretold, slowness);
    const n = places.length;
    const { deviations: r, pulls } = this;
    for (let i = 0; i < n; i++) r[i] = figures[places[i]].value - foretold[places[i]];
    const whole = -0.5 * gaussian.squared(r, pulls);
    const terms = new Array<number>(n + 1);
    terms[n] = right;
    for (let i = 0; i < n; i++)
      terms[i] = wrong[i] + (0.5 * pulls[i] * pulls[i]) / gaussian.precision[i];
    return whole + logSum(terms) + missing;
  }

  private known(foretold: readonly number[], slowness?: Slowness): Known {
    if (slowness !== undefined)
      return this.knownOf(
        foretold.map((x) => Number.isFinite(x)),
        slowness,
      );
    let key = '';
    for (const x of foretold) key += Number.isFinite(x) ? '1' : '0';
    const known = this.patterns.get(key);
    if (known !== undefined) return known;
    const made = this.knownOf(foretold.map((x) => Number.isFinite(x)));
    this.patterns.set(key, made);
    return made;
  }

  private knownOf(there: readonly boolean[], slowness?: Slowness): Known {
    const { figures } = this.evidences;
    const places = there.flatMap((is, i) => (is ? [i] : []));
    const n = places.length;
    // What scatters as a sound gear does is kept; the rest is another for each.
    const room = slowness && (this.rooms[n] ??= new Room(n));
    const gaussian = this.scattering.gaussian(places, slowness, room);
    const density = -0.5 * (gaussian.logDeterminant + n * LOG_2PI);
    // Left out, a figure takes its own part of the density with it.
    const wrong = places.map(
      (place, i) =>
        density +
        0.5 * (LOG_2PI - Math.log(gaussian.precision[i])) +
        ONE_WRONG +
        (n - 1) * RIGHT +
        this.anywhere[place],
    );
    // A figure that is foretold never to come is as good as a wrong one, and worse.
    const missing = figures.filter((_, i) => !there[i]);
    const misled = new Set(missing.map(({ swing }) => swing)).size;
    return {
      places,
      gaussian,
      right: density + n * RIGHT,
      wrong,
      missing:
        there.reduce((sum, is, i) => sum + (is ? 0 : this.anywhere[i]), 0) +
        misled * Math.log(NEVER),
    };
  }
}

/** How far figures are off a sound gear's, in standard deviations about what was noted. */
export interface Off {
  /** Of times, as logs: two causes both multiply a time, so that these add. */
  readonly multiplied: Float64Array;
  /** Of readings: of two causes the one that changes it more counts (see {@link Keys.together}). */
  readonly changed: Float64Array;
}

export interface Straight {
  readonly noted: Off;
  /** Undefined where one never comes. */
  readonly of: (foretold: Foretold) => Off | undefined;
  /** By how much likelier every fact is made than a sound gear makes it, a log. */
  readonly gained: (foretold: Foretold) => number[];
}

/** How the figures scatter that are foretold to come, and logs that do not depend on how far off they are. */
interface Known {
  readonly places: readonly number[];
  readonly gaussian: Gaussian;
  /** Where all are right; where this one is wrong. */
  readonly right: number;
  readonly wrong: readonly number[];
  /** Of those that are foretold never to come. */
  readonly missing: number;
}

/** Log density of a figure that could have been anything. */
export const anywhere = ({ kind, value }: Pick<FigureEntry, 'kind' | 'value'>): number =>
  -Math.log(2 * Math.abs(value) + WIDTH[kind]);

/** What comes nearest to a figure that one of two never comes to: for a time that is any later one. */
function oneWay({ kind, value }: FigureEntry, a: number, b: number): number {
  const known = Number.isNaN(a) ? b : a;
  if (Number.isNaN(known)) return NaN;
  return kind === 'time' ? Math.max(value, known) : value;
}

/** Log of a sum of exponentials. */
export function logSum(logs: readonly number[]): number {
  let most = -Infinity;
  for (const x of logs) if (x > most) most = x;
  if (most === -Infinity) return most;
  let sum = 0;
  for (const x of logs) sum += Math.exp(x - most);
  return most + Math.log(sum);
}
