/**
 * From what was noted of a swing to what explains it. Every known fault is simulated wherever it can
 * befall (see search.ts); the healthy aircraft's own scatter is worked out
 * from one run per unknown; then Bayes' rule (Bayes' theorem; MacKay, Information Theory, Inference and
 * Learning Algorithms, chapter 28 on evidence, from memory).
 */
import type { Catalogues, Scenario } from '../../define/index.js';
import type { ObservationSheet } from '../../observation/index.js';
import { checkMade } from './check-conditions.js';
import { evidencesOf } from './entry.js';
import { faultsAt, hypothesesOf } from './hypothesis.js';
import { logSum, type Likelihood } from './likelihood.js';
import { apartInTimes, possibleLooks, rankedChecks } from './next-check.js';
import { Pairs } from './pair.js';
import { groupsOf, severitiesOf, unknownCause, type Belief } from './posterior.js';
import { ownPool, Player } from './player.js';
import { recordedOf, together } from './recorded.js';
import { Search, tenths } from './search.js';
import { setupsOf } from './setup.js';
import type {
  Comparison,
  Diagnosis,
  DiagnosisOptions,
  Explanation,
  Signature,
  SignatureJob,
} from './shapes.js';
import { thinned } from './thin.js';
import { TEMPERATURE } from './unknown.js';
import type { Weighing } from './weighing.js';

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

/** Causes that are played under what a check would change, when they are as likely as this. */
const OUTLOOKS = 5;
const WORTH = 0.02;
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
  private readonly possible: (check: string, on: string) => boolean;
  /** Swings that could be made next, with the places of their setups. */
  private readonly checks: readonly { readonly check: string; readonly setup: number }[];
  private readonly ownSetups: number;
  private readonly unused: readonly string[];
  private readonly player: Player;
  private readonly search: Search;
  private readonly pairs: Pairs;
  private done = 0;
  /** The ranking worked out last, and when. */
  private last: { readonly at: string; readonly ranked: Ranked } | undefined;

  constructor(
    catalogues: Catalogues,
    scenario: Scenario,
    sheet: ObservationSheet,
    private readonly options: DiagnosisOptions,
  ) {
    const found = setupsOf(catalogues, scenario, sheet);
    const { setups, of, own, checks } = found;
    this.ownSetups = own;
    this.checks = checks
      .map((check, k) => ({ check, setup: own + k }))
      .filter(({ check }) => !checkMade(catalogues, scenario, sheet, check));
    const recorded = recordedOf(catalogues, setups, sheet, of, options.recordings);
    const evidences = thinned(together(evidencesOf(scenario, sheet, of), recorded));
    this.unused = evidences.unused;
    this.possible = possibleLooks(catalogues, scenario, sheet);
    this.player = new Player(setups, options.pool ?? ownPool(catalogues), options.memory);
    this.search = new Search({
      catalogues,
      scenario,
      evidences,
      setups: found,
      hypotheses: hypothesesOf(catalogues, scenario, sheet),
      play: (jobs, hear) => this.play(jobs, hear),
      stopped: () => this.stopped,
    });
    this.pairs = new Pairs(this.search, own);
  }

  async run(): Promise<Diagnosis> {
    if (this.ownSetups === 0)
      return {
        ...NOTHING,
        unused: ['there is no swing on the sheet: there is nothing to explain'],
      };
    await this.search.run();
    const { weighing, done } = this.search;
    if (weighing !== undefined && done && !this.stopped)
      await this.pairs.prove(
        weighing,
        (jobs, hear) => this.play(jobs, hear),
        () => this.ranked(weighing).told,
      );
    return this.withChecks();
  }

  private get stopped(): boolean {
    return this.options.signal?.aborted === true;
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
    this.options.onProgress?.(Math.min(1, this.done / this.search.wanted), () => this.result());
  }

  /** The ranking with what to do next: the likeliest causes are played under what checks would change. */
  private async withChecks(): Promise<Diagnosis> {
    const found = this.result();
    if (!found.whole) return found;
    const beliefs = found.groups.flatMap((g) => g.members);
    const places = beliefs
      .map((b, i) => ({ i, p: b.probability }))
      .filter(({ p }) => p > WORTH)
      .sort((a, b) => b.p - a.p)
      .slice(0, OUTLOOKS)
      .map(({ i }) => i);
    const looks = { ...found, checks: rankedChecks(beliefs, [], this.possible) };
    // A swing tells apart two at least.
    if (this.checks.length === 0 || places.length < 2) return looks;
    this.options.onRanked?.(looks);
    const jobs = this.checks.flatMap(({ setup }) =>
      places.map((p) => ({ setup, faults: fittedFaults(beliefs[p]) })),
    );
    const played = await this.play(jobs);
    if (this.stopped) return { ...found, whole: false };
    const outlooks = this.checks.map(({ check }, k) => ({
      check,
      places,
      apart: (a: number, b: number): number => {
        const [x, y] = [played[k * places.length + a], played[k * places.length + b]];
        return x === undefined || y === undefined ? 0 : apartInTimes(x, y);
      },
    }));
    const ranked = rankedChecks(beliefs, outlooks, this.possible);
    return { ...found, runs: this.player.runs, checks: ranked };
  }

  /** All that is believed, with probabilities; and that of a cause which is not in the catalogue. */
  private ranked(weighing: Weighing): Ranked {
    const { likelihood, quick, close } = weighing;
    // Nothing was played since: it is as it was.
    const at = `${this.done} ${this.search.done}`;
    if (this.last?.at === at) return this.last.ranked;
    const { profiles, likely, healthy } = this.search;
    const singles = profiles.map((p) => (likely.has(p) ? close(p) : quick(p)));
    const beliefs = [...singles, ...this.pairs.beliefs(weighing)];
    const nobody = unknownCause(likelihood.evidences, likelihood.figuresIn(healthy));
    const all = logSum([...beliefs.map((b) => b.log), nobody]);
    const told = beliefs.map((b) => ({ ...b, probability: Math.exp(b.log - all) }));
    const ranked = { told, unknown: Math.exp(nobody - all) };
    this.last = { at, ranked };
    return ranked;
  }

  private result(): Diagnosis {
    const { search, unused } = this;
    const { weighing, profiles } = search;
    if (weighing === undefined || profiles.length === 0)
      return { ...NOTHING, runs: this.player.runs, unused };
    const { likelihood } = weighing;
    const { told, unknown } = this.ranked(weighing);
    const groups = groupsOf(likelihood, told).map((members) => ({
      probability: members.reduce((sum, m) => sum + m.probability, 0),
      members: members.map((m) => ({
        causes: m.hypothesis.causes,
        probability: m.probability,
        severities: severitiesOf(m),
        ...(m.offNominal && { offNominal: m.offNominal }),
        ...(m.cold !== undefined && !m.offNominal && { colder: m.cold * TEMPERATURE }),
        comparisons: comparisonsOf(likelihood, m),
      })),
    }));
    const whole = !this.stopped && search.done;
    const established = whole && (groups[0]?.probability ?? 0) >= ESTABLISHED;
    return { ...NOTHING, groups, unknown, established, runs: this.player.runs, whole, unused };
  }
}

/** As bad as they were found to be, so that what was played is met again. */
const fittedFaults = ({ causes, severities }: Explanation): SignatureJob['faults'] =>
  faultsAt(
    causes,
    severities.map(({ at }) => tenths(at)),
  );

interface Ranked {
  readonly told: readonly (Belief & { readonly probability: number })[];
  readonly unknown: number;
}

function comparisonsOf(likelihood: Likelihood, { foretold }: Belief): Comparison[] {
  const { figures, facts } = likelihood.evidences;
  const figured = likelihood.figuresIn(foretold);
  const seen = likelihood.factsIn(foretold);
  return [
    ...figures.map(({ swing, label, kind, value, error }, i) => ({
      swing,
      label,
      kind,
      observed: value,
      error,
      foretold: figured[i],
    })),
    ...facts.map(({ swing, label, kind }, i) => ({
      swing,
      label,
      kind,
      observed: 1,
      error: 0,
      foretold: seen[i],
    })),
  ];
}
