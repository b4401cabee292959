/**
 * Two faults at once. Playing every pair would take an hour: they are foretold from what each
 * does alone, and those that come out likely that way are played before they are believed.
 */
import { playAcross } from './across.js';
import { faultsAt, keyOf, priorOfBoth } from './hypothesis.js';
import type { Likelihood } from './likelihood.js';
import { bestFit, climb, narrowness, type ForetoldAt, type Severities } from './pair-fit.js';
import { likeliestTwos, type Two } from './pair-sift.js';
import type { Belief } from './posterior.js';
import { LEAST, WORST, type Foretold, type Profile } from './profile.js';
import type { Play, Search } from './search.js';
import type { Cause, FittedSeverity } from './shapes.js';
import type { Weighing } from './weighing.js';

/**
 * How many places in all pairs are looked at by their likelihood, for how many pairs of these it is looked for where
 * they fit best, and how many stay.
 */
const LOOKED_AT = 500;
const FITTED = 60;
const CLOSER = 24;
/** What a second fault must add to the log likelihood: one that explains nothing is not one. */
const GAIN = 2;
/** How often the likeliest that were only foretold are played, how many, and from which share of all that is known. */
const ROUNDS = 3;
const PLAYED = 6;
const WORTH = 0.01;
/** What fits this near to where it was played need not be played again. */
const NEAR = 0.06;
/** Standard deviations on both sides of the middle 90 %. */
const MIDDLE_90 = 1.645;

/** A pair, and at which severities of the two it fits best. */
interface Paired extends Belief {
  readonly severities: Severities;
}

/** What a pair came to when it was played at these severities. */
interface Shown {
  readonly severities: Severities;
  readonly foretold: Foretold;
}

interface Likely {
  readonly probability: number;
}

export class Pairs {
  private readonly shown = new Map<string, readonly Shown[]>();
  private found: readonly Two[] = [];
  private readonly weighed = new Map<string, { readonly of: string; readonly pair?: Paired }>();

  constructor(
    private readonly search: Search,
    /** How many setups the sheet has. */
    private readonly own: number,
  ) {}

  /** The likeliest pairs, of those that were looked for. */
  beliefs(weighing: Weighing): readonly Paired[] {
    return this.found.flatMap((two) => this.belief(weighing, two) ?? []);
  }

  /**
   * Looks for pairs where no single cause explains the sheet well, and plays those that are likely as long as they
   * are only foretold: two faults seldom do just what each does alone.
   *
   * @param ranked the pairs with their probabilities as they stand
   */
  async prove(
    weighing: Weighing,
    play: Play,
    ranked: () => readonly (Belief & Likely)[],
  ): Promise<void> {
    const { search, own } = this;
    if (!weighing.fitsNoBetter('well', search.profiles)) return;
    this.found = this.likeliest(weighing.likelihood);
    for (let round = 0; round < ROUNDS; round++) {
      const open = this.unproved(weighing.likelihood, ranked());
      if (open.length === 0) return;
      const swings = open.map(({ hypothesis, severities }) => ({
        faults: faultsAt(hypothesis.causes, severities),
      }));
      const played = await playAcross(swings, own, search.keys, play);
      played.forEach((foretold, i) => {
        if (foretold !== undefined) this.show(open[i], foretold);
      });
    }
  }

  /** Of all pairs, at the severities that fit best. */
  private likeliest(likelihood: Likelihood): readonly Two[] {
    const sifted = likeliestTwos(likelihood, [...this.search.all.values()], LOOKED_AT);
    const looked = sifted.map(({ profiles, severities }) => {
      const two = { profiles, severities };
      return { two, fit: likelihood.of(this.foretelling(two)(severities)) };
    });
    const fitted = distinct(sorted(likelihood, looked))
      .slice(0, FITTED)
      .map(({ profiles, severities: from }) => {
        const at = this.foretelling({ profiles, severities: from });
        const { severities, log } = bestFit(likelihood, at, from);
        return { two: { profiles, severities }, fit: log };
      });
    return sorted(likelihood, fitted).slice(0, CLOSER);
  }

  /**
   * Pairs that were not played where they fit: those that are likely, of all that is known; the likeliest, however
   * unlikely, where what is likeliest does not fit well, for what is foretold of two may be far off.
   */
  private unproved(
    likelihood: Likelihood,
    ranked: readonly (Belief & Likely)[],
  ): readonly Paired[] {
    const known = ranked.reduce((sum, { probability }) => sum + probability, 0);
    const best = ranked.reduce((a, b) => (b.log > a.log ? b : a));
    const least = likelihood.fitsNoBetter('well', best.at(best.peak)) ? 0 : WORTH * known;
    return ranked
      .filter((b): b is Paired & Likely => 'severities' in b && b.probability >= least)
      .filter((b) => !this.isShown(b))
      .sort((a, b) => b.log - a.log)
      .slice(0, PLAYED);
  }

  private show({ hypothesis, severities }: Paired, foretold: Foretold): void {
    const key = keyOf(hypothesis.causes);
    this.shown.set(key, [...(this.shown.get(key) ?? []), { severities, foretold }]);
  }

  private isShown({ hypothesis, severities }: Paired): boolean {
    const shown = this.shown.get(keyOf(hypothesis.causes)) ?? [];
    return shown.some((s) => away(s.severities, severities) <= NEAR);
  }

  /** What it comes to; worked out anew only when it was played. */
  private belief(weighing: Weighing, two: Two): Paired | undefined {
    const key = keyOf(causesOf(two));
    const played = this.shown.get(key)?.length ?? 0;
    const of = [played, ...two.profiles.map((p) => p.revision)].join(' ');
    const known = this.weighed.get(key);
    if (known?.of === of) return known.pair;
    const pair = this.weigh(weighing, two);
    this.weighed.set(key, { of, ...(pair && { pair }) });
    return pair;
  }

  private weigh({ likelihood, quick }: Weighing, two: Two): Paired | undefined {
    const at = this.foretelling(two);
    const from = { severities: two.severities, log: likelihood.of(at(two.severities)) };
    const { severities, log } = climb(likelihood, at, from);
    const causes = causesOf(two);
    const looks = likelihood.ofLooks(causes);
    const alone = two.profiles.map((p) => {
      const single = quick(p);
      return likelihood.of(single.at(single.peak)) + likelihood.ofLooks(single.hypothesis.causes);
    });
    if (log + looks < Math.max(...alone) + GAIN) return undefined;
    const prior = priorOf(two);
    const narrow = narrowness(likelihood, at, severities);
    const [first, second] = severities.map((s, i) => fittedAt(s, narrow.spreads[i]));
    return {
      hypothesis: { causes, prior },
      log: Math.log(prior) + looks + log + narrow.log,
      first,
      severity: second.at,
      peak: second.at,
      narrowness: narrow.log,
      severityRange: second.range,
      foretold: at(severities),
      at: (s) => at([first.at, s]),
      severities,
    };
  }

  /** What the pair comes to by its severities: from what each does, and by how far that was off where it was played. */
  private foretelling(two: Two): ForetoldAt {
    const { keys, healthy } = this.search;
    const [first, second] = two.profiles;
    const alone: ForetoldAt = ([a, b]) => {
      const [x, y] = [first.at(a), second.at(b)];
      return healthy.map((h, i) => keys.together(h, x[i], y[i]));
    };
    const shown = this.shown.get(keyOf(causesOf(two)));
    if (shown === undefined) return alone;
    const places = shown.map((s) => ({ ...s, from: alone(s.severities) }));
    return (s) => {
      const { foretold, from } = places.reduce((a, b) =>
        away(b.severities, s) < away(a.severities, s) ? b : a,
      );
      return alone(s).map((v, i) => keys.moved(foretold[i], from[i], v));
    };
  }
}

const causesOf = ({ profiles }: Two): readonly Cause[] =>
  profiles.flatMap((p: Profile) => p.hypothesis.causes);

function priorOf({ profiles: [first, second] }: Two): number {
  return priorOfBoth(first.hypothesis, second.hypothesis);
}

/** The likeliest first, by their log likelihood and what is known without a swing. */
function sorted(
  likelihood: Likelihood,
  twos: readonly { readonly two: Two; readonly fit: number }[],
): readonly Two[] {
  return twos
    .map(({ two, fit }) => {
      const looks = likelihood.ofLooks(causesOf(two));
      return { two, log: Math.log(priorOf(two)) + looks + fit };
    })
    .sort((a, b) => b.log - a.log)
    .map(({ two }) => two);
}

/** The first of each pair: it may fit at several severities. */
function distinct(twos: readonly Two[]): readonly Two[] {
  const seen = new Set<string>();
  return twos.filter((two) => {
    const key = keyOf(causesOf(two));
    return seen.has(key) ? false : seen.add(key);
  });
}

function fittedAt(at: number, spread: number): FittedSeverity {
  const to90 = MIDDLE_90 * spread;
  return { at, range: [Math.max(LEAST, at - to90), Math.min(WORST, at + to90)] };
}

const away = (a: Severities, b: Severities): number =>
  Math.max(Math.abs(a[0] - b[0]), Math.abs(a[1] - b[1]));
