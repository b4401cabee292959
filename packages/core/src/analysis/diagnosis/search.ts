/**
 * Which swings to play, in which order, so that what explains a sheet is known well after few of them: every
 * cause once at its worst (a swing tells of all that do the same, and lends to the other side); those that could
 * not explain it at any severity are ruled out; the rest where they fit, ever closer, the likelier the closer;
 * their like on other devices; at last what could still explain it better than all that was played, and what lies
 * beside where something fits narrowly. Where nothing fits well, also what was lent its figures by the other side,
 * and the likeliest on other aircraft than the nominal one. Longer than usual: stages of one search that share what
 * is alive.
 */
import type { Catalogues, Scenario } from '../../define/index.js';
import { playAcross } from './across.js';
import type { Evidences } from './entry.js';
import { faultsOf, jobOf } from './hypothesis.js';
import { Keys } from './keys.js';
import { Likelihood } from './likelihood.js';
import { oddSide } from './mirror.js';
import { bounces, DRAWN, drawsOf, MIDDLES, playChilled, type Draw } from './off-nominal.js';
import { inTurn } from './order-of-play.js';
import { LEAST, preferred, Profile, WORST, type Foretold } from './profile.js';
import type { Promising } from './promise.js';
import type { Setups } from './setup.js';
import type { Hypothesis, Signature, SignatureJob } from './shapes.js';
import { Sharing } from './share.js';
import type { Scatter } from './scatter.js';
import { guessedScatter, playNominal, playScatter } from './sound-swings.js';
import { Weighing } from './weighing.js';

/** So many of what is likeliest by itself are played first of all, for a ranking at once. */
const EARLY = 8;
/** So many of the rest, a few for each thread, before it is looked at anew which to play next. */
const AT_ONCE = 16;
/** A cause so much less likely at best than the likeliest is ruled out, as a log of odds; so many go on at most. */
const RULED_OUT = 12;
const ALIVE = 40;
/** What explains no more than a healthy aircraft does is not looked at closer; log of likelihood. */
const GAIN = 1;
/** What might be no less likely than this, beside the likeliest, is looked at closer; a log of odds. */
const WORTH_IT = 6;
/** How many at most, time after time, and how near a severity that was played is near enough. */
const CLOSER = [
  { most: 24, within: 0.05 },
  { most: 16, within: 0.04 },
  { most: 10, within: 0.03 },
  { most: 6, within: 0.02 },
  { most: 4, within: 0.01 },
] as const;
/** In which of these the like of so many causes is played too, how many of them at most, and how far from where those fit. */
const LIKE = { round: 2, of: 3, most: 10, off: 0.05 } as const;
/** After these, what could be better is looked for so often at most, so many at a time, in gaps as wide as this; in the first rounds also what could come near. */
const BETTER = { rounds: 12, generous: 2, most: 24, gap: 0.015 } as const;
/** Of so many, what fits less of the severities than this, a log, is played so far to both sides of where it fits best. */
const SHARPER = { of: 5, narrow: -2.5, steps: [0.02, 0.01] } as const;
/** How many are then summed up finely. */
const CLOSEST = 24;
/** Severity to a tenth, so that what was played is met again. */
export const tenths = (severity: number): number => Math.max(0.1, Math.round(severity * 10) / 10);

/** Plays jobs and tells of each as it is done; undefined where it was stopped before. */
export type Play = (
  jobs: readonly SignatureJob[],
  hear?: (index: number, signature: Signature) => void,
) => Promise<readonly (Signature | undefined)[]>;

export interface SearchSetting {
  readonly catalogues: Catalogues;
  readonly scenario: Scenario;
  readonly evidences: Evidences;
  readonly setups: Setups;
  readonly hypotheses: readonly Hypothesis[];
  readonly play: Play;
  readonly stopped: () => boolean;
}

export class Search {
  readonly keys = new Keys();
  /** The healthy aircraft first; then all, later those that are not ruled out. */
  profiles: readonly Profile[] = [];
  /** Those that were looked at where they fit. */
  likely: ReadonlySet<Profile> = new Set();
  /** Whether all that was wanted was played; where nothing gains on a healthy aircraft that is little. */
  done = false;
  /** Those that could explain more than a healthy aircraft does. */
  alive: ReadonlySet<Profile> = new Set();
  /** Those that could not, or change nothing, if they go about straight from nothing to their worst. */
  private doubtful: ReadonlySet<Profile> = new Set();
  healthy: Foretold = [];
  /** From when the healthy aircraft and some of the likeliest causes are known; until its scatter is, a rough one. */
  weighing: Weighing | undefined;
  private readonly own: readonly number[];
  /** Swings that are wanted beside the usual. */
  private more = 0;
  private sharing!: Sharing;
  all: ReadonlyMap<Hypothesis, Profile> = new Map();

  constructor(private readonly setting: SearchSetting) {
    this.own = Array.from({ length: setting.setups.own }, (_, i) => i);
  }

  /** About how many swings it will play. */
  get wanted(): number {
    const { hypotheses } = this.setting;
    return 20 + 0.75 * hypotheses.length + this.own.length * 40 + this.more;
  }

  async run(): Promise<void> {
    const { catalogues, setups, evidences, hypotheses } = this.setting;
    const { figures } = evidences;
    const nominal = await playNominal(this.setting, this.keys);
    if (nominal === undefined) return;
    this.healthy = nominal;
    const weighed = (scatter: Scatter): Weighing =>
      new Weighing(new Likelihood(evidences, scatter, nominal, this.keys));
    const rough = weighed(guessedScatter(this.keys, figures, nominal));
    // The likeliest first, so that a ranking early on says most; of two sides the one that is off.
    const [sound, ...faulty] = hypotheses;
    const side = oddSide(rough.likelihood, nominal);
    const here = ({ causes: [{ on }] }: Hypothesis): number => Number(on.includes(side));
    const byPrior = [...faulty].sort((a, b) => b.prior - a.prior || here(b) - here(a));
    this.sharing = new Sharing(catalogues, setups.setups.at(0).scenario, byPrior);
    const healthy = new Profile(sound, this.keys, nominal);
    const all = byPrior.map((h) => new Profile(h, this.keys, nominal, this.sharing.abrupt(h)));
    this.all = new Map(all.map((p) => [p.hypothesis, p]));
    this.profiles = [healthy, ...all];
    const tellers = this.sharing.tellers(WORST);
    await this.playWorst(tellers.slice(0, EARLY));
    this.weighing = rough;
    const scatter = await playScatter(this.setting, this.keys, figures, nominal);
    if (scatter === undefined) return;
    const weighing = weighed(scatter);
    this.weighing = weighing;
    await this.playInTurn(weighing, tellers.slice(EARLY));
    const erratic = all.filter(bounces).map(({ hypothesis }) => hypothesis);
    await this.playMiddles(erratic);
    await playChilled(all, this.setting, this.keys, nominal);
    await this.lookCloser(weighing, healthy, all);
    if (!this.setting.stopped() && weighing.fitsNoBetter('fair', this.profiles)) {
      // What the other side has lent may be why.
      const own = this.sharing.tellers(WORST, { borrowing: false });
      await this.playWorst(own.filter((h) => this.all.get(h)?.borrowed(WORST) === true));
      await this.playMiddles(MIDDLES.flatMap((severity) => this.sharing.tellers(severity)));
      await this.lookCloser(weighing, healthy, all);
      await this.playDrawn(weighing, healthy);
    }
    if (this.setting.stopped()) return;
    this.likely = new Set(weighing.likeliest(this.alive, CLOSEST));
    this.done = true;
  }

  /** At their worst, the more promising first by what has come of others until then. */
  private async playInTurn(weighing: Weighing, tellers: readonly Hypothesis[]): Promise<void> {
    const { scenario } = this.setting.setups.setups.at(0);
    const [, ...faulty] = this.profiles;
    for (let open = tellers; open.length > 0; open = open.slice(AT_ONCE)) {
      open = inTurn(scenario, open, faulty.filter((p) => p.known(0)).map(weighing.promise));
      await this.playWorst(open.slice(0, AT_ONCE));
      if (this.setting.stopped()) return;
    }
  }

  /** Plays these less badly than at the worst. */
  private async playMiddles(hypotheses: readonly Hypothesis[]): Promise<void> {
    const gradual = [...new Set(hypotheses)].filter((h) => !this.sharing.abrupt(h));
    const places = MIDDLES.flatMap((severity) =>
      gradual.map((hypothesis) => ({ hypothesis, severity, setup: 0 })),
    );
    this.more += places.length;
    await this.playJobs(places);
  }

  /**
   * Plays what is likeliest on other aircraft than the nominal one: where a small thing decides what happens (a leg
   * that falls on its lock makes it or not), a sound gear's tolerances do not just make it a little sooner or later.
   */
  private async playDrawn(weighing: Weighing, healthy: Profile): Promise<void> {
    const { stopped } = this.setting;
    let ranked: readonly Profile[] = this.promises(weighing)
      .sort(byLog)
      .map(({ profile }) => profile);
    for (const { most, draws } of DRAWN) {
      if (stopped() || !weighing.fitsNoBetter('bad', this.profiles)) return;
      const likeliest = ranked.slice(0, most / this.own.length);
      const chosen = [...new Set([healthy, ...likeliest, ...ranked.filter(bounces)])];
      await this.draw(drawsOf(chosen, draws, (profile) => weighing.quick(profile).peak));
      ranked = weighing.likeliest(this.alive, most);
    }
  }

  private async draw(planned: readonly Draw[]): Promise<void> {
    const swings = planned.map(({ profile: { hypothesis }, severity, drawn }) => ({
      faults: faultsOf(hypothesis, severity),
      drawn,
    }));
    this.enliven(planned.map(({ profile }) => profile));
    this.more += swings.length * this.own.length;
    const found = await playAcross(swings, this.own.length, this.keys, this.setting.play);
    found.forEach(
      (foretold, i) => foretold && planned[i].profile.draw(planned[i].severity, foretold),
    );
  }

  /** Rules out, and plays what is left where it fits, closer and closer. */
  private async lookCloser(
    weighing: Weighing,
    healthy: Profile,
    all: readonly Profile[],
  ): Promise<void> {
    if (this.setting.stopped()) return;
    const { alive, quiet, doubtful } = this.sifted(weighing, all);
    this.alive = new Set(alive);
    this.doubtful = new Set([...quiet, ...doubtful]);
    this.profiles = [healthy, ...alive, ...quiet];
    await this.playAt(
      alive.map((profile) => ({ profile, severity: WORST })),
      0,
    );
    await this.playAt(
      alive.map((profile) => weighing.promise(profile)),
      0.05,
    );
    // Of these no more is played.
    const settled = weighing.highest([healthy, ...quiet]);
    const sound = weighing.likelihood.of(this.healthy);
    await this.playOpen(weighing, settled);
    for (const [round, { most, within }] of CLOSER.entries()) {
      if (this.setting.stopped()) return;
      const least = Math.max(settled, weighing.highest([...this.alive])) - WORTH_IT;
      // What could still come near the likeliest, the most promising first; also what others have told of since.
      const promising = this.promises(weighing)
        .filter(({ log, most: at }) => log > least && at - sound > GAIN)
        .sort(byLog);
      const like = round === LIKE.round ? this.likeThem(weighing, settled) : [];
      const closer = [...promising.slice(0, most), ...like];
      const profiles = closer.map(({ profile }) => profile);
      this.likely = new Set(profiles);
      this.enliven(profiles);
      await this.playAt(closer, within);
    }
    await this.playBetter(weighing, settled);
    await this.playSharper(weighing);
  }

  /** What could still come near, because it was never played under some setup, and there were likelier ones. */
  private async playOpen(weighing: Weighing, settled: number): Promise<void> {
    if (this.setting.stopped()) return;
    const least = Math.max(settled, weighing.highest([...this.alive])) - GAIN;
    const open = [...this.doubtful]
      .filter((profile) => this.own.some((setup) => !profile.known(setup)))
      .map((profile) => weighing.promise(profile))
      .filter(({ log }) => log > least)
      .sort(byLog)
      .slice(0, ALIVE)
      .map(({ profile }) => profile);
    this.enliven(open);
    await this.playAt(
      open.map((profile) => ({ profile, severity: WORST })),
      0,
    );
  }

  /** As long as what was never played could explain the sheet better than anything that was: narrow windows. */
  private async playBetter(weighing: Weighing, settled: number): Promise<void> {
    for (let round = 0; round < BETTER.rounds && !this.setting.stopped(); round++) {
      const near = round < BETTER.generous ? WORTH_IT : 0;
      const least = Math.max(settled, weighing.highest([...this.alive])) - near;
      const hopeful = this.hopeful(weighing, least).slice(0, BETTER.most);
      if (hopeful.length === 0) return;
      this.enliven(hopeful.map(({ profile }) => profile));
      // In the middle of a gap, however narrow.
      await this.playAt(hopeful, 0);
    }
  }

  /** What fits narrowly may fit much better beside where it was played: of the likeliest. */
  private async playSharper(weighing: Weighing): Promise<void> {
    for (const step of SHARPER.steps) {
      if (this.setting.stopped()) return;
      const beliefs = weighing.likeliest(this.alive, SHARPER.of).map((p) => ({
        p,
        b: weighing.quick(p),
      }));
      const narrow = beliefs.filter(
        ({ b }) => b.narrowness < SHARPER.narrow && b.log > beliefs[0].b.log - RULED_OUT,
      );
      const beside = narrow.flatMap(({ p, b }) =>
        [b.peak - step, b.peak + step]
          .filter((severity) => severity >= LEAST && severity <= WORST)
          .map((severity) => ({ profile: p, severity })),
      );
      await this.playAt(beside, step / 2);
    }
  }

  /** What could come to more than this, and than it has itself, if it went over late, or all at once, in some gap. */
  private hopeful(weighing: Weighing, least: number): readonly Promising[] {
    return [...this.alive, ...this.doubtful]
      .flatMap((profile) => weighing.hope(profile, BETTER.gap) ?? [])
      .filter(({ profile, log }) => log > least && log > weighing.quick(profile).log + GAIN)
      .sort(byLog);
  }

  /**
   * The faults of the likeliest causes on other devices, at the severities that fit there: what is most easily taken
   * for a cause is its like, and a bad figure at its worst may have ruled that out.
   */
  private likeThem(weighing: Weighing, settled: number): readonly Promising[] {
    const fault = ({ hypothesis }: Profile): string => hypothesis.causes[0].fault;
    return weighing
      .likeliest(this.alive, LIKE.of)
      .filter((first) => weighing.quick(first).log > settled)
      .flatMap((first) => {
        const severity = preferred(weighing.quick(first).peak, LIKE.off);
        const others = [...this.alive, ...this.doubtful].filter(
          (p) => p !== first && fault(p) === fault(first),
        );
        return others.map((p) => ({ ...weighing.promise(p), severity }));
      })
      .sort(byLog)
      .slice(0, LIKE.most);
  }

  /** Of all that is not quite ruled out. */
  private promises(weighing: Weighing): Promising[] {
    return [...this.alive, ...this.doubtful].map(weighing.promise);
  }

  /** Under the first setup. */
  private async playWorst(hypotheses: readonly Hypothesis[]): Promise<void> {
    await this.playJobs(
      hypotheses.map((hypothesis) => ({ hypothesis, severity: WORST, setup: 0 })),
    );
  }

  private async playJobs(
    places: readonly {
      readonly hypothesis: Hypothesis;
      readonly severity: number;
      readonly setup: number;
    }[],
  ): Promise<void> {
    const jobs = places.map((p) => jobOf(p.hypothesis, p.severity, p.setup));
    await this.setting.play(jobs, (i, signature) => {
      const { hypothesis, severity, setup } = places[i];
      const healthy = this.keys.named(this.healthy[setup]);
      for (const told of this.sharing.told(hypothesis, severity, signature, healthy))
        this.all
          .get(told.hypothesis)
          ?.put(told.severity, setup, this.keys.vector(told.signature), told.borrowed);
    });
  }

  /** Those that something between nothing and their worst could make the explanation; and those that change nothing. */
  private sifted(
    weighing: Weighing,
    all: readonly Profile[],
  ): Readonly<Record<'alive' | 'quiet' | 'doubtful', readonly Profile[]>> {
    const least = weighing.highest(this.profiles) - RULED_OUT;
    const sound = weighing.likelihood.of(this.healthy);
    const ranked = all.map((profile) => weighing.promise(profile)).sort(byLog);
    const left = ranked.filter(({ log }) => log > least);
    const of = (gains: boolean): Profile[] =>
      left.filter(({ most }) => most - sound > GAIN === gains).map(({ profile }) => profile);
    const [alive, quiet] = [of(true).slice(0, ALIVE), of(false)];
    const taken = new Set([...alive, ...quiet]);
    const doubtful = ranked.map(({ profile }) => profile).filter((p) => !taken.has(p));
    return { alive, quiet, doubtful };
  }

  /** Takes up what is looked at after all. */
  private enliven(found: readonly Profile[]): void {
    const late = found.filter((profile) => this.doubtful.has(profile));
    this.alive = new Set([...this.alive, ...late]);
    this.doubtful = new Set([...this.doubtful].filter((profile) => !this.alive.has(profile)));
    this.profiles = [...new Set([...this.profiles, ...late])];
  }

  /** Adds to each profile a severity under setups of the sheet, unless one as near was played. */
  private async playAt(
    wanted: readonly { readonly profile: Profile; readonly severity: number }[],
    within: number,
  ): Promise<void> {
    const places = wanted.flatMap(({ profile, severity: sought }) => {
      const severity = preferred(sought, within);
      return this.own
        .filter((setup) => !profile.has(severity, setup, within))
        .map((setup) => ({ hypothesis: profile.hypothesis, severity, setup }));
    });
    await this.playJobs(places);
  }
}

const byLog = (a: Promising, b: Promising): number => b.log - a.log;
