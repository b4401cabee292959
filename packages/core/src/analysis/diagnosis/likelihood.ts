/**
 * How likely a sheet is under what a cause foretells. Figures scatter together (a warm day makes all
 * times short), so their deviations are judged by one multivariate normal distribution: reading
 * errors on the diagonal, the unknowns of the healthy aircraft as outer products of what each does.
 * One wrong entry must not sink the true cause: the likelihood is a mixture of 'all are right' and
 * 'this one is wrong' for each of them; a wrong one could be anything.
 *
 * Leaving one out of a normal distribution with precision matrix P (marginalisation; Rasmussen and
 * Williams, Gaussian Processes, 5.12, from memory): with q = P r, the quadratic form falls by
 * q_i^2 / P_ii, and the log determinant of the covariance by -log P_ii.
 */
import type { Evidences, FigureEntry } from './entry.js';
import type { Keys, Vector } from './keys.js';
import type { Foretold } from './profile.js';
import type { Cause } from './shapes.js';

/** An entry is wrong once in so many: one sheet in ten has one. */
const WRONG = 0.005;
/** Times noted of what cannot come, or facts of another swing: a mistake of another kind, once for each swing. */
const NEVER = 1e-3;
/** What the model itself is off, as a share of a time and of a pressure; a choice. */
const MODEL_SHARE = 0.015;

/** A wrong figure lies anywhere up to this beyond twice what was read: s, Pa, m3/s, strokes. */
const WIDTH = { time: 5, gauge: 5e6, flow: 2e-4, strokes: 20 } as const;
/** Probabilities of a fact nearer than this are the same. */
const SAME = 0.01;

const LOG_2PI = Math.log(2 * Math.PI);

/** What the unknowns do to each figure, one standard deviation of each: figures x unknowns. */
export type Scatter = readonly (readonly number[])[];

export class Likelihood {
  /** By which figures are foretold at all. */
  private readonly known = new Map<string, Precision>();
  /** Log density of a wrong entry: as good as anywhere. */
  private readonly anywhere: readonly number[];

  /** For every figure the place of its name. */
  private readonly places: readonly number[];

  constructor(
    readonly evidences: Evidences,
    private readonly scatter: Scatter,
    private readonly keys: Keys,
  ) {
    this.places = evidences.figures.map((f) => keys.place(f.key));
    this.anywhere = evidences.figures.map((f) => -Math.log(2 * Math.abs(f.value) + WIDTH[f.kind]));
  }

  /** Log likelihood under what is foretold for each setup, and the facts with it. */
  of(foretold: Foretold): number {
    return this.ofFigures(this.figuresIn(foretold)) + this.ofFacts(this.factsIn(foretold));
  }

  /**
   * The most that a cause could come to of which little is known: what is foretold of it may be off by `slack`, a
   * share of how far that is from what was played; `open` setups could come to anything.
   */
  atMost(
    played: Foretold,
    foretold: Foretold,
    slack: number,
    open: (setup: number) => boolean = () => false,
  ): number {
    const { figures, facts } = this.evidences;
    const before = this.figuresIn(played);
    const after = this.figuresIn(foretold).map((x, i) =>
      open(figures[i].setup) ? figures[i].value : x,
    );
    const off = after.map(
      (x, i) => slack * Math.abs(x - (Number.isNaN(before[i]) ? 0 : before[i])),
    );
    const seen = this.factsIn(played);
    // A fact that it changes may be seen for another severity.
    const sure = this.factsIn(foretold).map((p, i) =>
      open(facts[i].setup) || Math.abs(p - seen[i]) > SAME ? 1 : p,
    );
    return this.ofFigures(after, off) + this.ofFacts(sure);
  }

  /**
   * The most that something between two foretellings could come to, if every figure and fact goes its
   * own way from the one to the other; `open` setups could come to anything.
   */
  amid(a: Foretold, b: Foretold, open: (setup: number) => boolean): number {
    const { figures, facts } = this.evidences;
    const [va, vb] = [this.figuresIn(a), this.figuresIn(b)];
    const nearest = figures.map((f, i) => {
      const [low, high] = [Math.min(va[i], vb[i]), Math.max(va[i], vb[i])];
      if (open(f.setup)) return f.value;
      if (Number.isNaN(low)) return oneWay(f, va[i], vb[i]);
      return Math.min(Math.max(f.value, low), high);
    });
    const [pa, pb] = [this.factsIn(a), this.factsIn(b)];
    const seen = facts.map((f, i) => (open(f.setup) ? 1 : Math.max(pa[i], pb[i])));
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
    const both = va.map((v, i) => Number.isFinite(v) && Number.isFinite(vb[i]));
    let sum = va.reduce(
      (n, v, i) => n + (Number.isFinite(v) === Number.isFinite(vb[i]) ? 0 : -2 * Math.log(NEVER)),
      0,
    );
    const { places, matrix } = this.precision(both);
    const r = places.map((i) => va[i] - vb[i]);
    places.forEach((_, i) => places.forEach((__, j) => (sum += r[i] * matrix[i][j] * r[j])));
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
    if (facts.length === 0) return [];
    const named = foretold.map((v: Vector) => this.keys.named(v));
    return facts.map((fact) => fact.seen(named[fact.setup]));
  }

  /**
   * Facts of one swing hang together (a leg that stops short keeps its doors, and what comes after
   * them, waiting): they are as foretold, or all of them tell of a swing that was not understood.
   */
  private ofFacts(seen: readonly number[]): number {
    const { facts } = this.evidences;
    let log = 0;
    for (const swing of new Set(facts.map((f) => f.swing))) {
      const own = seen.filter((_, i) => facts[i].swing === swing);
      const together = own.reduce((product, p) => product * p, 1);
      log += Math.log((1 - NEVER) * together + NEVER * 0.5 ** own.length);
    }
    return log;
  }

  /** `off`: how far each may be off beside, which costs nothing. */
  private ofFigures(foretold: readonly number[], off?: readonly number[]): number {
    const { figures } = this.evidences;
    const there = foretold.map(Number.isFinite);
    const { places, logDeterminant, matrix: sharp } = this.precision(there);
    const matrix = off === undefined ? sharp : inverted(this.covariance(places, off)).matrix;
    const n = places.length;
    const r = places.map((i) => figures[i].value - foretold[i]);
    const q = matrix.map((row) => row.reduce((sum, p, j) => sum + p * r[j], 0));
    const quadratic = q.reduce((sum, x, i) => sum + x * r[i], 0);
    const whole = -0.5 * (quadratic + logDeterminant + n * LOG_2PI);
    const terms = [n * Math.log(1 - WRONG) + whole];
    for (let i = 0; i < n; i++) {
      const left = whole + 0.5 * (q[i] ** 2 / matrix[i][i] + LOG_2PI - Math.log(sharp[i][i]));
      terms.push(Math.log(WRONG) + (n - 1) * Math.log(1 - WRONG) + left + this.anywhere[places[i]]);
    }
    // A figure that is foretold never to come is as good as a wrong one, and worse.
    const missing = figures.reduce((sum, _, i) => sum + (there[i] ? 0 : this.anywhere[i]), 0);
    const misled = new Set(figures.flatMap(({ swing }, i) => (there[i] ? [] : [swing]))).size;
    return logSum(terms) + missing + misled * Math.log(NEVER);
  }

  private precision(there: readonly boolean[]): Precision {
    const key = there.map(Number).join('');
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const places = there.flatMap((is, i) => (is ? [i] : []));
    const made = { places, ...inverted(this.covariance(places)) };
    this.known.set(key, made);
    return made;
  }

  private covariance(places: readonly number[], off?: readonly number[]): number[][] {
    const { figures } = this.evidences;
    return places.map((i) =>
      places.map((j) => {
        const together = this.scatter[i].reduce((sum, s, u) => sum + s * this.scatter[j][u], 0);
        return together + (i === j ? ownVariance(figures[i]) + (off?.[i] ?? 0) ** 2 : 0);
      }),
    );
  }
}

interface Precision {
  readonly places: readonly number[];
  readonly matrix: readonly (readonly number[])[];
  readonly logDeterminant: number;
}

/** What comes nearest to a figure that one of two never comes to: for a time that is any later one. */
function oneWay({ kind, value }: FigureEntry, a: number, b: number): number {
  const known = Number.isNaN(a) ? b : a;
  if (Number.isNaN(known)) return NaN;
  return kind === 'time' ? Math.max(value, known) : value;
}

function ownVariance(f: FigureEntry): number {
  return f.spread ** 2 + (MODEL_SHARE * f.value) ** 2;
}

/** Inverse of a symmetric positive definite matrix by Cholesky's factors, with the log of its determinant. */
function inverted(a: readonly (readonly number[])[]): Omit<Precision, 'places'> {
  const n = a.length;
  const l = a.map(() => new Array<number>(n).fill(0));
  let logDeterminant = 0;
  for (let j = 0; j < n; j++) {
    for (let i = j; i < n; i++) {
      let sum = a[i][j];
      for (let k = 0; k < j; k++) sum -= l[i][k] * l[j][k];
      l[i][j] = i === j ? Math.sqrt(sum) : sum / l[j][j];
    }
    logDeterminant += 2 * Math.log(l[j][j]);
  }
  const matrix = a.map(() => new Array<number>(n).fill(0));
  for (let c = 0; c < n; c++) {
    const x = new Array<number>(n).fill(0);
    for (let i = 0; i < n; i++) {
      let sum = i === c ? 1 : 0;
      for (let k = 0; k < i; k++) sum -= l[i][k] * x[k];
      x[i] = sum / l[i][i];
    }
    for (let i = n - 1; i >= 0; i--) {
      let sum = x[i];
      for (let k = i + 1; k < n; k++) sum -= l[k][i] * x[k];
      x[i] = sum / l[i][i];
    }
    for (let i = 0; i < n; i++) matrix[i][c] = x[i];
  }
  return { matrix, logDeterminant };
}

/** Log of a sum of exponentials. */
export function logSum(logs: readonly number[]): number {
  const most = Math.max(...logs);
  if (most === -Infinity) return most;
  return most + Math.log(logs.reduce((sum, x) => sum + Math.exp(x - most), 0));
}
