/**
 * From what was noted of a swing to what explains it. Every known fault is simulated wherever it can
 * befall, coarsely first, the likely ones at more severities; the healthy aircraft's own scatter is worked out
 * from one run per unknown; then Bayes' rule (Bayes' theorem; MacKay, Information Theory, Inference and
 * Learning Algorithms, chapter 28 on evidence, from memory).
 */
import type { Catalogues, Scenario } from '../../define/index.js';
import type { ObservationSheet } from '../../observation/index.js';
import { evidencesOf, type Evidences } from './entry.js';
import { hypothesesOf } from './hypothesis.js';
import { Likelihood, logSum, type Scatter } from './likelihood.js';
import { apartInTimes, rankedChecks } from './next-check.js';
import { pairBelief } from './pair.js';
import { believe, groupsOf, unknownCause, type Belief } from './posterior.js';
import { ownPool, Player } from './player.js';
import { Profile } from './profile.js';
import { recordedOf, together } from './recorded.js';
import { setupsOf } from './setup.js';
import type {
  Comparison,
  Diagnosis,
  DiagnosisOptions,
  Hypothesis,
  Signature,
  SignatureJob,
} from './shapes.js';
import { unknownsOf } from './unknown.js';

/** A cause is established when its group is as likely as this. */
export const ESTABLISHED = 0.9;

const NOTHING: Diagnosis = {
  groups: [],
  checks: [],
  established: false,
  unknown: 0,
  runs: 0,
  whole: false,
  unused: [],
};

/** Causes that are played under what a check would change. */
const OUTLOOKS = 8;
/** Severity to a tenth, so that what was played is met again. */
const tenths = (severity: number): number => Math.max(0.1, Math.round(severity * 10) / 10);

/** Severities every fault is played at, and what is added for the likely ones. */
const WORST = 1;
const HALF = 0.5;
const FINE: readonly number[] = [0.15, 0.3, 0.75];
/** How many are likely enough for that. */
const LIKELY = 24;
/** How many are looked at where they fit best, and how often. */
const CLOSE = 6;
const ROUNDS = 2;
/** Firsts of pairs, and how many pairs are kept. */
const FIRSTS = 3;
const PAIRS = 12;
/** Under the first of several setups this much less likely than the best, as a log of odds, is ruled out; and how many go on at most. */
const RULED_OUT = 12;
const ALIVE = 60;

export async function diagnose(
  catalogues: Catalogues,
  scenario: Scenario,
  sheet: ObservationSheet,
  options: DiagnosisOptions = {},
): Promise<Diagnosis> {
  const work = new Work(catalogues, scenario, sheet, options);
  return work.run();
}

class Work {
  /** Those of the sheet, and the checks that the others stand for. */
  private readonly own: readonly number[];
  private readonly checks: readonly string[];
  private readonly evidences: Evidences;
  private readonly hypotheses: readonly Hypothesis[];
  private readonly player: Player;
  private wanted = 0;
  private done = 0;
  private profiles: Profile[] = [];
  private healthy: readonly Signature[] = [];
  private likelihood: Likelihood | undefined;

  constructor(
    catalogues: Catalogues,
    scenario: Scenario,
    sheet: ObservationSheet,
    private readonly options: DiagnosisOptions,
  ) {
    const { setups, of, own, checks } = setupsOf(catalogues, scenario, sheet);
    this.own = setups.slice(0, own).map((_, i) => i);
    this.checks = checks;
    const noted = evidencesOf(scenario, sheet, of);
    const recorded = recordedOf(catalogues, setups, sheet, of, options.recordings);
    this.evidences = together(noted, recorded);
    this.hypotheses = hypothesesOf(catalogues, scenario, sheet);
    this.player = new Player(setups, options.pool ?? ownPool(catalogues, setups), options.memory);
    this.unknowns = setups.slice(0, own).map((s) => unknownsOf(catalogues, s.scenario).length);
  }
  private readonly unknowns: readonly number[];

  async run(): Promise<Diagnosis> {
    const singles = this.hypotheses.slice(1);
    this.wanted =
      this.own.length * (1 + singles.length * 1.5 + LIKELY * FINE.length) +
      this.unknowns.reduce((a, b) => a + b, 0);
    await this.playHealthy();
    if (this.stopped || this.likelihood === undefined) return this.result();
    this.profiles = this.hypotheses.map((h) => new Profile(h, this.healthy));
    // The likeliest first, so that a ranking early on says most.
    const byPrior = this.profiles.slice(1).sort((a, b) => b.hypothesis.prior - a.hypothesis.prior);
    await this.playNodes(byPrior, [WORST], [0]);
    // What does nothing at its worst does nothing at half of it.
    const doing = byPrior.filter((p) => differs(this.healthy[0], p.at(WORST)[0]));
    await this.playNodes(doing, [HALF], [0]);
    // Where a swing comes to its end no more, times run away just before: looked at more closely.
    const ends = (p: Profile, severity: number): number => Object.keys(p.at(severity)[0]).length;
    await this.playNodes(
      doing.filter((p) => ends(p, WORST) < ends(p, HALF)),
      [0.65, 0.8],
      [0],
    );
    await this.playNodes(
      doing.filter((p) => ends(p, HALF) < ends(p, 0)),
      [0.1, 0.25],
      [0],
    );
    if (this.own.length > 1) {
      // What the first setup rules out need not be played under the others.
      const alone = this.likelihood.only(0);
      const best = this.ranked(alone, byPrior);
      const least = best[0].log - RULED_OUT;
      const alive = best
        .slice(0, ALIVE)
        .filter(({ log }) => log > least)
        .map(({ profile }) => profile);
      this.profiles = [this.profiles[0], ...alive];
      await this.playNodes(alive, [WORST, HALF], this.own.slice(1));
    }
    const likely = this.ranked(this.likelihood, this.profiles.slice(1))
      .slice(0, LIKELY)
      .map(({ profile }) => profile);
    await this.playNodes(likely, FINE, this.own);
    // Then the few that matter just where they fit, until they no longer move.
    for (let round = 0; round < ROUNDS && !this.stopped; round++)
      for (const { profile } of this.ranked(this.likelihood, likely).slice(0, CLOSE)) {
        const { peak } = believe(this.likelihood, profile, 'close');
        await this.playNodes([profile], [peak], this.own);
      }
    return this.withChecks(likely);
  }

  /** The likeliest first, with the log of prior times evidence. */
  private ranked(
    likelihood: Likelihood,
    profiles: readonly Profile[],
  ): { readonly profile: Profile; readonly log: number }[] {
    return profiles
      .map((profile) => ({ profile, log: believe(likelihood, profile).log }))
      .sort((a, b) => b.log - a.log);
  }

  private get stopped(): boolean {
    return this.options.signal?.aborted === true;
  }

  private async playHealthy(): Promise<void> {
    const jobs = this.own.flatMap((setup): SignatureJob[] => [
      { setup, faults: [] },
      ...Array.from({ length: this.unknowns[setup] }, (_, unknown) => ({
        setup,
        faults: [],
        unknown,
      })),
    ]);
    const found = await this.play(jobs);
    if (found.some((s) => s === undefined)) return;
    let next = 0;
    const healthy: Signature[] = [];
    const shifted: Signature[][] = [];
    for (const count of this.unknowns) {
      healthy.push(found[next++]!);
      shifted.push(Array.from({ length: count }, () => found[next++]!));
    }
    this.healthy = healthy;
    // The unknowns of one aircraft are the same in all its swings: their places go together.
    const most = Math.max(...this.unknowns);
    const scatter: Scatter = this.evidences.figures.map(({ setup, key }) =>
      Array.from({ length: most }, (_, u) => {
        const [a, b] = [healthy[setup][key], shifted[setup][u]?.[key]];
        return a === undefined || b === undefined ? 0 : b - a;
      }),
    );
    this.likelihood = new Likelihood(this.evidences, scatter);
  }

  /** Adds nodes at severities to profiles, severity by severity, so that all are known equally well. */
  private async playNodes(
    profiles: readonly Profile[],
    severities: readonly number[],
    setups: readonly number[],
  ): Promise<void> {
    const places = severities.flatMap((severity) =>
      profiles.map((profile) => ({ profile, severity })),
    );
    const jobs = places.flatMap(({ profile, severity }) =>
      setups.map((setup): SignatureJob => ({
        setup,
        faults: profile.hypothesis.causes.map((c) => ({ ...c, severity })),
      })),
    );
    await this.play(jobs, (i, signature) => {
      const { profile, severity } = places[Math.floor(i / setups.length)];
      profile.put(severity, jobs[i].setup, signature);
    });
  }

  private async play(
    jobs: readonly SignatureJob[],
    hear?: (index: number, signature: Signature) => void,
  ): Promise<readonly (Signature | undefined)[]> {
    return this.player.play(
      jobs,
      (index, signature) => {
        this.done++;
        hear?.(index, signature);
        this.tell();
      },
      this.options.signal,
    );
  }

  private tell(): void {
    this.options.onProgress?.(Math.min(1, this.done / this.wanted), () => this.result());
  }

  /** The ranking with what to do next: the likeliest causes are played under what checks would change. */
  private async withChecks(likely: readonly Profile[]): Promise<Diagnosis> {
    const found = this.result(likely);
    const beliefs = found.groups.flatMap((g) => g.members).filter((m) => m.causes.length < 2);
    const places = beliefs
      .map((b, i) => ({ i, p: b.probability }))
      .sort((a, b) => b.p - a.p)
      .slice(0, OUTLOOKS)
      .map(({ i }) => i);
    const jobs = this.checks.flatMap((_, k) =>
      places.map((p): SignatureJob => ({
        setup: this.own.length + k,
        faults: beliefs[p].causes.map((c) => ({ ...c, severity: tenths(beliefs[p].severity) })),
      })),
    );
    const played = await this.play(jobs);
    if (this.stopped) return { ...found, whole: false };
    const outlooks = this.checks.map((check, k) => ({
      check,
      places,
      apart: (a: number, b: number): number => {
        const [x, y] = [played[k * places.length + a], played[k * places.length + b]];
        return x === undefined || y === undefined ? 0 : apartInTimes(x, y);
      },
    }));
    return { ...found, checks: rankedChecks(beliefs, outlooks) };
  }

  private result(likely: readonly Profile[] = []): Diagnosis {
    const { likelihood, evidences, healthy } = this;
    const { unused } = evidences;
    if (likelihood === undefined || this.profiles.length === 0)
      return { ...NOTHING, runs: this.player.runs, unused };
    const singles = this.profiles.map((p) =>
      believe(likelihood, p, likely.includes(p) ? 'close' : 'quick'),
    );
    const beliefs = [...singles, ...this.pairs(likelihood, singles, likely)];
    const nobody = unknownCause(evidences, healthy);
    const all = logSum([...beliefs.map((b) => b.log), nobody]);
    const told = beliefs.map((b) => ({ ...b, probability: Math.exp(b.log - all) }));
    const groups = groupsOf(likelihood, told).map((members) => ({
      probability: members.reduce((sum, m) => sum + m.probability, 0),
      members: members.map((m) => ({
        causes: m.hypothesis.causes,
        probability: m.probability,
        severity: m.severity,
        severityRange: m.severityRange,
        comparisons: this.compare(m),
      })),
    }));
    const whole = !this.stopped && likely.length > 0;
    const unknown = Math.exp(nobody - all);
    const established = whole && (groups[0]?.probability ?? 0) >= ESTABLISHED;
    return { ...NOTHING, groups, unknown, established, runs: this.player.runs, whole, unused };
  }

  /** Second faults beside the likeliest first ones. */
  private pairs(
    likelihood: Likelihood,
    singles: readonly Belief[],
    likely: readonly Profile[],
  ): Belief[] {
    if (likely.length === 0) return [];
    const firsts = singles
      .filter((b) => b.hypothesis.causes.length > 0)
      .sort((a, b) => b.log - a.log)
      .slice(0, FIRSTS);
    const pairs = firsts.flatMap((first) =>
      this.profiles
        .slice(1)
        .filter((p) => p.hypothesis.causes[0].on !== first.hypothesis.causes[0].on)
        .flatMap((second) => pairBelief(likelihood, this.healthy, first, second) ?? []),
    );
    return distinct(pairs.sort((a, b) => b.log - a.log)).slice(0, PAIRS);
  }

  private compare(b: Belief): Comparison[] {
    const { figures, facts } = this.evidences;
    return [
      ...figures.map(({ swing, label, kind, value, error, setup, key }) => ({
        swing,
        label,
        kind,
        observed: value,
        error,
        foretold: b.foretold[setup][key] ?? NaN,
      })),
      ...facts.map(({ swing, label, kind, seen, setup }) => ({
        swing,
        label,
        kind,
        observed: 1,
        error: 0,
        foretold: seen(b.foretold[setup]),
      })),
    ];
  }
}

/** The first of each pair of causes, whichever of the two was fitted first. */
function distinct(pairs: readonly Belief[]): Belief[] {
  const seen = new Set<string>();
  return pairs.filter(({ hypothesis }) => {
    const key = hypothesis.causes
      .map((c) => `${c.fault} ${c.on}`)
      .sort()
      .join('+');
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** Less than anybody can read off a watch, s, or a gauge, Pa. */
const UNREAD = { time: 0.02, gauge: 1e4 } as const;

/** Whether two signatures differ by more than nothing. */
function differs(a: Signature, b: Signature): boolean {
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].some((key) => {
    const [x, y] = [a[key], b[key]];
    if (x === undefined || y === undefined) return true;
    return Math.abs(x - y) > (key.includes('/gauge/') ? UNREAD.gauge : UNREAD.time);
  });
}
