/**
 * Holds the state and the verbs that change it. Knows no DOM; views watch the keys they show.
 * Longer than most: the verbs of time, selection and loading all guard the one state.
 */
import type { Condition } from '../worker/blow-down-message.js';
import type {
  AfterRequest,
  FaultEntry,
  Picture,
  Reply,
  RunRequest,
  SeriesRequest,
} from '../worker/message.js';
import type { Question, Told } from '../worker/parameters-message.js';
import { arrived, refined, withFlags } from './arrival.js';
import { noted, settled } from './changes.js';
import { sourcesOf } from './file.js';
import type { GivenFile } from './file.js';
import { eventAfter, eventBefore, flagAfter, reached } from './history.js';
import { looped } from './loop.js';
import { sentenceOfFlag } from './sentence.js';
import { SeriesBook } from './series.js';
import { follow, zoomed } from './span.js';
import { EMPTY, RATES } from './state.js';
import type { Selection, Source, State } from './state.js';

export type Watcher = (changed: ReadonlySet<keyof State>) => void;

/** Whatever can be asked for a run: the worker, or a stand-in. */
export interface Runner {
  run(request: Omit<RunRequest, 'id'>): void;
  /** More about a run that was made before. */
  ask(request: SeriesRequest | AfterRequest): void;
  stop(): void;
  /** Tells about a text; absent where nobody can. */
  question?(question: Question): Promise<Told>;
}

/** What is set about a scenario; the card's own where something is absent. */
export type Setting = Pick<RunRequest, 'card' | 'faults' | 'condition' | 'stood' | 'exact'> &
  Pick<State, 'edits'>;

export class Store {
  #state: State = EMPTY;
  #watchers = new Set<Watcher>();
  #runner: Runner;
  /** What of a run may be seen: all of it, unless a lesson asks about what is to come. */
  veil = (picture: Picture): Picture => picture;
  /** The run on show as it came, with nothing veiled. */
  #whole: Picture | undefined;
  /** Each takes a given file that is no scenario; true when it was one for it. */
  readonly takers: ((source: Source) => boolean)[] = [];
  /** Channels of the run on show, fetched when a view wants them. */
  readonly series = new SeriesBook(this, (request) => this.#runner.ask(request));

  constructor(makeRunner: (listener: (reply: Reply) => void) => Runner) {
    this.#runner = makeRunner((reply) => this.receive(reply));
  }

  get state(): State {
    return this.#state;
  }

  watch(watcher: Watcher): () => void {
    this.#watchers.add(watcher);
    return () => this.#watchers.delete(watcher);
  }

  set(patch: Partial<State>): void {
    const changed = new Set<keyof State>();
    for (const key of Object.keys(patch) as (keyof State)[]) {
      if (this.#state[key] !== patch[key]) changed.add(key);
    }
    if (changed.size === 0) return;
    this.#state = { ...this.#state, ...patch };
    for (const watcher of this.#watchers) watcher(changed);
  }

  // Loading

  /** Reads a scenario and runs a card of it, the first when none is named. */
  open(source: Source, card = ''): void {
    // As it is: what was changed in another, or in this one before, stays behind.
    this.#ask({ ...source }, { edits: [], ...(card !== '' && { card }) });
  }

  /** The same with all that was set about it: what a link or a former visit brings. */
  reopen(source: Source, how: Setting): void {
    this.#ask({ ...source }, how);
  }

  /** The same for files the user gives: the first that can be had is opened, the others are listed. */
  async openFiles(given: readonly GivenFile[]): Promise<void> {
    const { sources: all, failure } = await sourcesOf(given);
    const sources = all.filter((source) => !this.takers.some((take) => take(source)));
    const kept = this.#state.files.filter((f) => !sources.some((s) => s.file === f.file));
    this.set({ files: [...kept, ...sources] });
    const [first] = sources;
    if (first !== undefined) this.open(first);
    if (failure !== '') this.set({ failure, said: failure });
  }

  chooseCard(card: string): void {
    const { source } = this.#state;
    if (source !== undefined) this.#ask(source, { card });
  }

  /** Steps of one drag have the same gesture, and are taken back as one. */
  setFaults(faults: readonly FaultEntry[], gesture = ''): void {
    const { picture, faults: before } = this.#state;
    if (picture === undefined) return;
    const { card } = picture;
    const what = 'faults';
    const change = { kind: 'faults', what, card, gesture, before, after: faults } as const;
    this.set({ changes: noted(this.#state.changes, change) });
    this.again({ faults });
  }

  /** The drag is over: what follows is another change. */
  settle(): void {
    this.set({ changes: settled(this.#state.changes) });
  }

  /** The card on show once more under another charge and temperature; its own for undefined. */
  setCondition(condition: Condition | undefined): void {
    this.again({ condition });
  }

  /** The test on show once more, with what is to be other about it. */
  again(how: Omit<RunRequest, 'id' | 'file' | 'text'>): void {
    const { source, picture, faults } = this.#state;
    if (source === undefined || picture === undefined) return;
    const { card, stood: standing, blowDown } = picture;
    const kept = { card, faults, condition: blowDown?.run?.condition, stood: standing };
    const { condition, stood, ...asked } = { ...kept, ...how };
    this.#ask(source, { ...asked, ...(condition && { condition }), ...(stood && { stood }) });
  }

  stop(): void {
    this.#runner.stop();
    this.set({
      busy: false,
      asked: undefined,
      progress: 0,
      faults: this.#state.picture?.faults ?? [],
      edits: this.#state.picture?.edits ?? [],
      said: 'Simulation stopped.',
    });
  }

  #ask(source: Source, how: Omit<RunRequest, 'id' | 'file' | 'text'>): void {
    const asked = { source, card: how.card ?? '' };
    const { faults = this.#state.faults, edits = this.#state.edits } = how;
    // Of another source only when it has come: it may not be readable.
    const here = source === this.#state.source ? { edits } : {};
    this.set({ asked, busy: true, progress: 0, failure: '', faults, ...here });
    this.#runner.run({ ...source, ...how, ...(edits.length > 0 && { edits }) });
  }

  /** Asks the worker about a text. */
  question(question: Question): Promise<Told> {
    return this.#runner.question?.(question) ?? Promise.reject(new Error('nobody to ask'));
  }

  receive(reply: Reply): void {
    if (reply.kind === 'after') {
      const { blowDown, picture } = this.#state;
      if (reply.id === picture?.run)
        this.set({ blowDown: { ...blowDown, after: { run: reply.id, found: reply.after } } });
      return;
    }
    if (reply.kind === 'series') {
      this.series.receive(reply.traces);
      return;
    }
    if (reply.kind !== 'picture') {
      this.set(arrived(this.#state, reply));
      return;
    }
    if (reply.refines !== undefined) {
      if (this.#whole?.run !== reply.refines) return;
      this.#whole = reply.picture;
      this.set(refined(this.#state, this.veil(this.#whole)));
      return;
    }
    this.#whole = withFlags(reply.picture, this.#whole);
    this.set(arrived(this.#state, { ...reply, picture: this.veil(this.#whole) }));
  }

  dismissIssues(): void {
    this.set({ issues: [], issuesFile: '', failure: '' });
  }

  /** Has what a swing after the blow-down on show would be like come in `state.blowDown`. */
  askAfter(): void {
    const { picture } = this.#state;
    if (picture !== undefined) this.#runner.ask({ kind: 'after', run: picture.run });
  }

  // Time

  /** Moves the play head; the chart's window follows when the head leaves it. */
  seek(time: number): void {
    const { picture, span } = this.#state;
    if (picture === undefined) return;
    const t = Math.min(Math.max(time, 0), reached(picture));
    this.set({ time: t, span: follow(span, t, picture.duration) });
  }

  /** The same by hand: what was playing stops, what was picked out is let go. */
  scrub(time: number): void {
    this.set({ playing: false, selection: { kind: 'none' } });
    this.seek(time);
  }

  play(): void {
    const { picture, time, loop } = this.#state;
    if (picture === undefined) return;
    if (loop?.on === true && (time < loop.from || time >= loop.to)) this.seek(loop.from);
    else if (time >= reached(picture)) this.seek(0);
    this.set({ playing: true });
  }

  pause(): void {
    this.set({ playing: false });
  }

  toggle(): void {
    if (this.#state.playing) this.pause();
    else this.play();
  }

  /** Lets `seconds` of real time pass. */
  advance(seconds: number): void {
    const { picture, playing, time, rate, loop } = this.#state;
    if (!playing || picture === undefined) return;
    const round = loop?.on === true ? loop : undefined;
    const next = time + seconds * rate;
    const until = Math.min(next, round?.to ?? Infinity);
    const passed = picture.flags.filter(
      (f) => f.severity !== 'note' && f.from > time && f.from <= until,
    );
    this.seek(round === undefined ? next : looped(round, next));
    if (passed.length > 0) {
      this.set({
        said: passed.map((f) => sentenceOfFlag(f, picture, this.#state.system)).join(' '),
      });
    }
    if (round === undefined && next >= reached(picture)) this.pause();
  }

  setRate(rate: number): void {
    if (RATES.includes(rate)) this.set({ rate });
  }

  /** One step slower or faster. */
  changeRate(by: -1 | 1): void {
    const next = RATES[RATES.indexOf(this.#state.rate) + by];
    if (next !== undefined) this.set({ rate: next });
  }

  stepTick(by: number): void {
    const { picture, time } = this.#state;
    if (picture === undefined) return;
    this.pause();
    this.seek((Math.round(time / picture.tick) + by) * picture.tick);
  }

  /** To the next or former event; several at one instant are taken one by one. */
  stepEvent(by: -1 | 1): void {
    const { picture, time, selection } = this.#state;
    if (picture === undefined) return;
    const from = selection.kind === 'event' ? selection.index : -1;
    const index =
      by > 0 ? eventAfter(picture.log, time, from) : eventBefore(picture.log, time, from);
    if (index >= 0) this.selectEvent(index);
  }

  /** To the next or former flag that is not a mere note; wraps round. */
  stepFlag(by: -1 | 1): void {
    const { picture, selection, time } = this.#state;
    if (picture === undefined) return;
    const index = flagAfter(
      picture.flags,
      time,
      selection.kind === 'flag' ? selection.index : -1,
      by,
    );
    if (index >= 0) this.selectFlag(index);
    else this.set({ said: 'There are no flags in this run.' });
  }

  // Selection

  selectEvent(index: number): void {
    const { picture } = this.#state;
    const entry = picture?.log[index];
    if (picture === undefined || entry === undefined) return;
    this.set({ playing: false, selection: { kind: 'event', index } });
    this.seek(entry.t);
    this.set({
      said: `${entry.t.toFixed(2)} seconds. ${entry.device}: ${entry.to}. Because ${entry.cause}.`,
    });
  }

  selectFlag(index: number): void {
    const { picture, system } = this.#state;
    const flag = picture?.flags[index];
    if (picture === undefined || flag === undefined) return;
    this.set({ playing: false, selection: { kind: 'flag', index } });
    this.seek(flag.from);
    this.set({ said: sentenceOfFlag(flag, picture, system) });
  }

  select(selection: Selection): void {
    this.set({ selection });
  }

  // Chart window

  /** Zooms about the play head; a factor above 1 goes closer. */
  zoom(factor: number, about = this.#state.time): void {
    const { picture, span } = this.#state;
    if (picture === undefined) return;
    this.set({ span: zoomed(span, factor, about, picture.duration) });
  }

  showAll(): void {
    const { picture } = this.#state;
    if (picture !== undefined) this.set({ span: [0, picture.duration] });
  }

  setLarge(large: boolean): void {
    this.set({ large });
  }

  setSystem(system: State['system']): void {
    this.set({ system });
  }
}
