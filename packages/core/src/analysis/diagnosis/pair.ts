/**
 * Two faults at once. Playing every pair would take an hour: they are foretold by adding what each
 * does, and those that come out likely that way are played before they are believed.
 */
import { playAcross } from './across.js';
import { keyOf, priorOfBoth } from './hypothesis.js';
import { logSum, type Likelihood } from './likelihood.js';
import type { Belief } from './posterior.js';
import type { Foretold, Profile } from './profile.js';
import type { Play, Search } from './search.js';

/** Severities of the second fault that are tried. */
const TRIED: readonly number[] = [0.15, 0.35, 0.6, 0.9];
/** What a second fault must add to the log likelihood. */
const GAIN = 2;
/** Firsts of pairs, and how many pairs are kept. */
const FIRSTS = 3;
const MOST = 12;
/** How often the likeliest that were only added up are played, how many, and from which probability. */
const ROUNDS = 3;
const PLAYED = 6;
const WORTH = 0.01;

/** A pair, and at which severities of the two it was, or would be, played. */
interface Paired extends Belief {
  readonly severities: readonly [number, number];
}

/** What a pair came to when it was played with this severity of the second. */
interface Shown {
  readonly severity: number;
  readonly foretold: Foretold;
}

export class Pairs {
  private readonly shown = new Map<string, Shown>();

  constructor(
    private readonly search: Search,
    /** How many setups the sheet has. */
    private readonly own: number,
  ) {}

  /** Second faults beside the likeliest first ones. */
  beliefs(likelihood: Likelihood, singles: readonly Belief[]): readonly Paired[] {
    const { alive, likely, profiles } = this.search;
    if (likely.size === 0) return [];
    const firsts = singles
      .filter((b) => b.hypothesis.causes.length > 0)
      .sort((a, b) => b.log - a.log)
      .slice(0, FIRSTS);
    // What changes no figure may be what a look has shown.
    const nothing = likelihood.ofLooks([]);
    const seconds = profiles.filter(
      (p) => alive.has(p) || likelihood.ofLooks(p.hypothesis.causes) > nothing,
    );
    const pairs = firsts.flatMap((first) =>
      seconds
        .filter((p) => p.hypothesis.causes[0].on !== first.hypothesis.causes[0].on)
        .flatMap((second) => this.belief(likelihood, first, second) ?? []),
    );
    return distinct(pairs.sort((a, b) => b.log - a.log)).slice(0, MOST);
  }

  /**
   * Plays the pairs that are likely as long as they are only added up: effects seldom just add.
   *
   * @param ranked the pairs with their probabilities as they stand
   */
  async prove(play: Play, ranked: () => readonly (Belief & Likely)[]): Promise<void> {
    for (let round = 0; round < ROUNDS; round++) {
      const open = ranked()
        .filter((b): b is Paired & Likely => 'severities' in b && b.probability > WORTH)
        .filter((b) => !this.shown.has(keyOf(b.hypothesis.causes)))
        .sort((a, b) => b.probability - a.probability)
        .slice(0, PLAYED);
      if (open.length === 0) return;
      const swings = open.map(({ hypothesis, severities }) => ({
        faults: hypothesis.causes.map((c, i) => ({ ...c, severity: severities[i] })),
      }));
      const found = await playAcross(swings, this.own, this.search.keys, play);
      found.forEach((foretold, i) => {
        const { hypothesis, severities } = open[i];
        if (foretold !== undefined)
          this.shown.set(keyOf(hypothesis.causes), { severity: severities[1], foretold });
      });
    }
  }

  private belief(likelihood: Likelihood, first: Belief, second: Profile): Paired | undefined {
    const causes = [...first.hypothesis.causes, ...second.hypothesis.causes];
    const at = this.foretelling(first, second, this.shown.get(keyOf(causes)));
    const logs = TRIED.map((s) => likelihood.of(at(s)));
    const looks = likelihood.ofLooks(causes);
    // A second fault that explains nothing is not one.
    const alone = likelihood.of(first.foretold) + likelihood.ofLooks(first.hypothesis.causes);
    const most = Math.max(...logs);
    if (most + looks < alone + GAIN) return undefined;
    const sum = logSum(logs);
    const severity = TRIED.reduce((mean, s, i) => mean + s * Math.exp(logs[i] - sum), 0);
    const hypothesis = { causes, prior: priorOfBoth(first.hypothesis, second.hypothesis) };
    return {
      hypothesis,
      // The first one's severity was fitted, not summed over: it pays for that as it would alone.
      log: Math.log(hypothesis.prior) + looks + sum - Math.log(TRIED.length) + first.narrowness,
      severity,
      peak: severity,
      narrowness: 0,
      severityRange: [TRIED[0], TRIED[TRIED.length - 1]],
      foretold: at(severity),
      at,
      severities: [first.severity, TRIED[logs.indexOf(most)]],
    };
  }

  /** What the pair comes to by the severity of the second: by what was played of it, or by adding. */
  private foretelling(
    first: Belief,
    second: Profile,
    shown: Shown | undefined,
  ): (s: number) => Foretold {
    const { keys, healthy } = this.search;
    const a = first.foretold;
    if (shown !== undefined)
      return (s) => shown.foretold.map((b, i) => keys.between(a[i], b, s / shown.severity));
    return (s) => second.at(s).map((v, i) => keys.added(healthy[i], a[i], v));
  }
}

interface Likely {
  readonly probability: number;
}

/** The first of each pair of causes, whichever of the two was fitted first. */
function distinct(pairs: readonly Paired[]): Paired[] {
  const seen = new Set<string>();
  return pairs.filter(({ hypothesis }) => {
    const key = keyOf([...hypothesis.causes].sort((a, b) => (keyOf([a]) < keyOf([b]) ? -1 : 1)));
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
