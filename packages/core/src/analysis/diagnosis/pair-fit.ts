/** At which severities two faults explain a sheet best, and how much of all severities does. */
import type { Likelihood } from './likelihood.js';
import { LEAST, WORST, type Foretold } from './profile.js';

export type Severities = readonly [number, number];

/** What is foretold at the severities of two faults. */
export type ForetoldAt = (severities: Severities) => Foretold;

/** Where they fit is looked for from the best of these on, in steps that are halved down to the last. */
const ROUGHLY = [0.15, 0.4, 0.7, 1] as const;
const STEPS = { first: 0.1, last: 0.02 } as const;
/** Severity by which what a little more of a fault does is measured. */
const LITTLE = 0.05;
const TAU = 2 * Math.PI;
const SIDES = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;

export interface Fit {
  readonly severities: Severities;
  /** Log likelihood there. */
  readonly log: number;
}

const fitAt = (likelihood: Likelihood, at: ForetoldAt, severities: Severities): Fit => ({
  severities,
  log: likelihood.of(at(severities)),
});

/** The best to be found from a place, or from any: there may be more than one hill. */
export function bestFit(likelihood: Likelihood, at: ForetoldAt, from: Severities): Fit {
  const anywhere = ROUGHLY.flatMap((a) => ROUGHLY.map((b) => [a, b] as const));
  const starts = [from, ...anywhere].map((s) => fitAt(likelihood, at, s));
  const start = starts.reduce((a, b) => (b.log > a.log ? b : a));
  return climb(likelihood, at, start);
}

/** A step to any side as long as that is better, then half of it. */
export function climb(likelihood: Likelihood, at: ForetoldAt, from: Fit): Fit {
  let best = from;
  for (let step: number = STEPS.first; step > STEPS.last; step /= 2) {
    for (let before: Fit | undefined; before !== best;) {
      before = best;
      for (const [x, y] of SIDES) {
        const [a, b] = best.severities;
        const next = fitAt(likelihood, at, [within(a + x * step), within(b + y * step)]);
        if (next.log > best.log) best = next;
      }
    }
  }
  return best;
}

/**
 * What it costs that only so much of the severities of both fits, a log, and how sharply each is known: as if
 * the likelihood were normal about its peak (Laplace's method; MacKay, Information Theory, Inference and Learning
 * Algorithms, chapter 27, from memory), and the severities anything between nothing and the worst.
 */
export function narrowness(
  likelihood: Likelihood,
  at: ForetoldAt,
  [a, b]: Severities,
): { readonly log: number; readonly spreads: Severities } {
  const here = at([a, b]);
  const [x, y] = [aside(a), aside(b)];
  const [first, second, both] = [at([x, b]), at([a, y]), at([x, y])].map(
    (there) => likelihood.distance(here, there) / (LITTLE * LITTLE),
  );
  // The information matrix over that of a normal distribution as wide as all severities.
  const [p, q] = [1 + first / TAU, 1 + second / TAU];
  const across = (both - first - second) / (2 * TAU);
  const determinant = Math.max(p * q - across * across, 1);
  const spread = (other: number): number => Math.sqrt(other / (TAU * determinant));
  return { log: -0.5 * Math.log(determinant), spreads: [spread(q), spread(p)] };
}

const within = (severity: number): number => Math.min(Math.max(severity, LEAST), WORST);
const aside = (severity: number): number =>
  severity + LITTLE > WORST ? severity - LITTLE : severity + LITTLE;
