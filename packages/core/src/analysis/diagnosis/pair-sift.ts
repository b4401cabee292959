/**
 * Which two causes could explain a sheet together, of all the pairs there are (some ten thousand). What a cause does
 * to the times at one severity is a vector of logs, in standard deviations about what was noted; that of two is the
 * sum, and how far that is from the sheet follows from products of each two:
 * |d - a - b|^2 = |d|^2 + (|a|^2 - 2 d.a) + (|b|^2 - 2 d.b) + 2 a.b.
 * Of a reading, and of a fact, what the one does counts that changes it more.
 */
import type { Likelihood, Off, Straight } from './likelihood.js';
import type { Profile } from './profile.js';

/** Severities at which each of the two is tried. */
const TRIED: readonly number[] = [0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 1];

/** What a second one must add to the log likelihood at least, roughly as this is known here. */
const GAIN = 0.2;

/** Two causes, and how bad they are. */
export interface Two {
  readonly profiles: readonly [Profile, Profile];
  readonly severities: readonly [number, number];
}

/** At severities that explain the sheet better than those beside. */
export interface SiftedTwo extends Two {
  /** Log of prior times likelihood, but for what is the same for all of them. */
  readonly log: number;
}

interface Effect {
  readonly severity: number;
  readonly times: Float64Array;
  /** Half of |a|^2 - 2 d.a of these. */
  readonly half: number;
  readonly readings: Float64Array;
  /** By how much it makes each fact likelier than on a sound gear, a log. */
  readonly facts: readonly number[];
}

interface Alone {
  readonly profile: Profile;
  readonly log: number;
  /** How well it explains the sheet by itself, where that is best, with what looks have shown. */
  readonly height: number;
  readonly effects: readonly Effect[];
}

/** The most likely ones, so many at most, the likeliest first. */
export function likeliestTwos(
  likelihood: Likelihood,
  profiles: readonly Profile[],
  most: number,
): readonly SiftedTwo[] {
  const straight = likelihood.straight();
  const { noted } = straight;
  const all = aloneOf(likelihood, profiles, straight);
  const found = all.flatMap((a, i) =>
    all.slice(i + 1).flatMap((b) => together(likelihood, noted, a, b)),
  );
  return found.sort((a, b) => b.log - a.log).slice(0, most);
}

function aloneOf(
  likelihood: Likelihood,
  profiles: readonly Profile[],
  { noted, of, gained }: Straight,
): readonly Alone[] {
  return profiles.map((profile) => {
    const effects = TRIED.flatMap((severity): Effect | readonly [] => {
      const foretold = profile.at(severity);
      const off = of(foretold);
      if (off === undefined) return [];
      const { multiplied: times, changed: readings } = off;
      const half = 0.5 * dot(times, times) - dot(noted.multiplied, times);
      return { severity, times, half, readings, facts: gained(foretold) };
    });
    const { causes, prior } = profile.hypothesis;
    const highest = Math.max(...effects.map((e) => heightOf(noted, e)));
    return { profile, log: Math.log(prior), height: highest + likelihood.ofLooks(causes), effects };
  });
}

/** Where two causes explain it best: better than at the severities beside; none where they are on one part. */
function together(likelihood: Likelihood, noted: Off, a: Alone, b: Alone): readonly SiftedTwo[] {
  const causes = [...a.profile.hypothesis.causes, ...b.profile.hypothesis.causes];
  if (causes[0].on === causes[1].on) return [];
  const heights = a.effects.map((x) => b.effects.map((y) => heightOf(noted, x, y)));
  const looks = likelihood.ofLooks(causes);
  const least = Math.max(a.height, b.height) + GAIN - looks;
  return heights.flatMap((row, i) =>
    row.flatMap((height, j): SiftedTwo | readonly [] => {
      if (height < least) return [];
      if (BESIDE.some(([x, y]) => (heights[i + x]?.[j + y] ?? -Infinity) > height)) return [];
      return {
        profiles: [a.profile, b.profile],
        severities: [a.effects[i].severity, b.effects[j].severity],
        log: a.log + b.log + looks + height,
      };
    }),
  );
}

const BESIDE = [-1, 0, 1]
  .flatMap((x) => [-1, 0, 1].map((y) => [x, y] as const))
  .filter(([x, y]) => x !== 0 || y !== 0);

/** Log likelihood of one cause or two, but for what is the same for all of them. */
function heightOf({ changed }: Off, x: Effect, y?: Effect): number {
  let log = -x.half;
  if (y !== undefined) log -= y.half + dot(x.times, y.times);
  for (let r = 0; r < changed.length; r++) {
    const miss = changed[r] - further(x.readings[r], y?.readings[r]);
    log -= 0.5 * miss * miss;
  }
  for (let f = 0; f < x.facts.length; f++) log += further(x.facts[f], y?.facts[f]);
  return log;
}

const further = (a: number, b = 0): number => (Math.abs(a) > Math.abs(b) ? a : b);

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}
