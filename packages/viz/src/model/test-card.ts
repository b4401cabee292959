/** The test card: what is expected, the stopwatch, the sheet being filled in. */
import { keepDraft, keptDraft } from './draft.js';
import type { Draft, Keep } from './draft.js';
import { blankSheet, blankSwing, changeSwing, expectedOf } from './observed.js';
import { SheetFiles } from './sheet-files.js';
import type { Store } from './store.js';
import { measuredOf, merged } from './swing-times.js';
import { tapKeys } from './tap-keys.js';
import { NO_CARD, nextWay } from './test-card-state.js';
import type { SheetMaker, TestCardState } from './test-card-state.js';
import { startWatch, swingOf, tap, tapOf, undoTap } from './watch.js';
import type { Clock } from './watch.js';
import type { MeasuredTime } from './measured.js';
import type {
  ObservationSheet,
  ObservedSwing,
  TimedEvent,
  WrittenScenario,
} from '../worker/sheet-message.js';
import { plain, seconds } from './sentence.js';

/** Benches that have the sheet on them. */
const DESKS: readonly string[] = ['test-card', 'diagnosis'];

/** The verbs of the test card, on the page's one store. */
export class TestCardWork {
  /** Test that the expectation belongs to. */
  #test = '';
  /** Readings that this has laid over the chart. */
  #laid: readonly MeasuredTime[] = [];
  #check = 0;
  /** Where the sheet was last looked at. */
  #bench = '';
  /** To files and back. */
  readonly files = new SheetFiles(this);

  constructor(
    readonly store: Store,
    readonly maker: SheetMaker,
    private readonly keep: Keep,
    readonly clock: Clock,
  ) {
    store.takers.push((source) => this.files.take(source));
    store.watch((changed) => {
      if (['picture', 'bench', 'edits', 'source'].some((k) => changed.has(k as 'picture')))
        this.#follow();
    });
  }

  get #state(): TestCardState {
    return this.store.state.testCard;
  }

  /** Of the aircraft on show. */
  get sheet(): ObservationSheet | undefined {
    return this.#state.draft?.sheet;
  }

  /** Row struck out last. */
  get struck(): number | undefined {
    return this.#state.draft?.struck?.row;
  }

  put(patch: Partial<TestCardState>): void {
    this.store.set({ testCard: { ...this.#state, ...patch } });
  }

  // The stopwatch

  start(): void {
    const { draft } = this.#state;
    if (draft === undefined || draft.watch !== undefined) return;
    const direction = nextWay(this.#state);
    this.change({ ...draft, watch: startWatch(direction, this.clock()) });
    this.store.set({ said: `Selector moved, ${plain(direction)}. The watch runs.` });
  }

  tap(unit: string, event: TimedEvent): void {
    const { draft } = this.#state;
    if (draft?.watch === undefined) return;
    const watch = tap(draft.watch, unit, event, this.clock());
    if (watch === draft.watch) return;
    this.change({ ...draft, watch });
    const at = tapOf(watch, unit, event)?.at ?? NaN;
    this.store.set({ said: `${plain(unit)} ${event}: ${seconds(at)}.` });
  }

  undo(): void {
    const { draft } = this.#state;
    const last = draft?.watch?.taps.at(-1);
    if (draft?.watch === undefined || last === undefined) return;
    this.change({ ...draft, watch: undoTap(draft.watch) });
    this.store.set({ said: `Undone: ${plain(last.unit)} ${last.event}.` });
  }

  /** Stops the watch: everything is home, or (false) not everything came home. The swing becomes a row. */
  stop(home: boolean): void {
    const { draft } = this.#state;
    if (draft?.watch === undefined) return;
    const { watch: running, ...rest } = draft;
    const watch = home ? tap(running, 'gear', 'total', this.clock()) : running;
    this.#addRow(rest, swingOf(watch, draft.sheet.readingError));
    this.store.set({
      said: home
        ? 'All home. The swing is on the sheet.'
        : 'The swing is on the sheet, not all home.',
    });
  }

  /** Stops the watch and keeps nothing of it. */
  discard(): void {
    const { draft } = this.#state;
    if (draft?.watch === undefined) return;
    const { watch: _, ...rest } = draft;
    this.change(rest);
    this.store.set({ said: 'The watch was stopped; nothing was noted.' });
  }

  /** Space, the numbers and Backspace; true when the key was one for the test card. */
  key(key: string): boolean {
    const { picture } = this.store.state;
    const { draft } = this.#state;
    if (picture === undefined || draft === undefined) return false;
    if (key === ' ') {
      if (draft.watch === undefined) this.start();
      else this.stop(true);
      return true;
    }
    if (draft.watch === undefined) return false;
    const usual = expectedOf(this.#state.expectation, draft.watch.direction);
    const found = tapKeys(picture, usual).find((k) => k.key === key.toLowerCase());
    if (found !== undefined) this.tap(found.unit, found.event);
    else if (key === 'Backspace') this.undo();
    else return false;
    return true;
  }

  // The sheet

  /** A row to be filled in by hand. */
  addBlank(): void {
    const { draft } = this.#state;
    if (draft !== undefined) this.#addRow(draft, blankSwing(nextWay(this.#state)));
  }

  #addRow(draft: Draft, made: ObservedSwing): void {
    const { sheet, under } = draft;
    const { title: note = '', conditions = {} } = under ?? {};
    const swing = { ...made, conditions: { ...made.conditions, ...conditions }, note };
    const swings = [...sheet.swings, swing];
    this.put({ picked: sheet.swings.length, way: undefined });
    this.change({ ...draft, sheet: { ...sheet, swings }, saved: false });
  }

  /** The swings that follow are made under other conditions; undefined: as on the rest of the sheet. */
  swingUnder(under: Draft['under']): void {
    const { draft } = this.#state;
    if (draft === undefined) return;
    const { under: _, ...rest } = draft;
    this.change({ ...rest, ...(under && { under }) });
  }

  pick(row: number): void {
    this.put({ picked: row });
    this.#lay();
  }

  changeRow(row: number, change: (swing: ObservedSwing) => ObservedSwing): void {
    this.changeSheet((sheet) => changeSwing(sheet, row, change));
  }

  changeSheet(change: (sheet: ObservationSheet) => ObservationSheet): void {
    const { draft } = this.#state;
    if (draft !== undefined) this.change({ ...draft, sheet: change(draft.sheet), saved: false });
  }

  strike(row: number): void {
    const { draft } = this.#state;
    const swing = draft?.sheet.swings[row];
    if (draft === undefined || swing === undefined) return;
    const swings = draft.sheet.swings.filter((_, i) => i !== row);
    this.put({ picked: Math.min(row, swings.length - 1) });
    this.change({
      ...draft,
      sheet: { ...draft.sheet, swings },
      struck: { row, swing },
      saved: false,
    });
    this.store.set({ said: `Row ${row + 1} is struck out; it can be put back.` });
  }

  putBack(): void {
    const { draft } = this.#state;
    if (draft?.struck === undefined) return;
    const { struck, ...rest } = draft;
    const swings = draft.sheet.swings.toSpliced(struck.row, 0, struck.swing);
    this.put({ picked: struck.row });
    this.change({ ...rest, sheet: { ...draft.sheet, swings }, saved: false });
  }

  /** A new sheet in the place of this one, which has been saved or is not wanted. */
  clear(): void {
    this.put({ picked: -1, issues: [], opened: '' });
    const draft = this.#blank();
    if (draft !== undefined) this.change(draft);
  }

  // What follows from what

  /** The scenario on show, for the worker to read. */
  written(): WrittenScenario | undefined {
    const { source, edits } = this.store.state;
    return source === undefined ? undefined : { file: source.file, text: source.text, edits };
  }

  #file(): string {
    return this.store.state.source?.file ?? '';
  }

  /** Another draft in the place of the present one. */
  change(draft: Draft): void {
    this.put({ draft });
    keepDraft(this.keep, this.#file(), draft);
    this.#lay();
    this.#renew();
    this.#lookOver();
  }

  /** The aircraft's own draft and expectation, as soon as the bench is in sight. */
  #follow(): void {
    const { picture, source, bench } = this.store.state;
    if (!DESKS.includes(bench) || picture === undefined || source === undefined) return;
    if (bench !== this.#bench) {
      this.#bench = bench;
      this.#lay();
    }
    const { draft } = this.#state;
    if (draft === undefined || this.#test.split('\n')[0] !== this.#file()) {
      const kept = keptDraft(this.keep, this.#file(), this.clock);
      const fresh = kept ?? this.#blank();
      this.put({ ...NO_CARD, draft: fresh, picked: (fresh?.sheet.swings.length ?? 0) - 1 });
    }
    this.#renew();
  }

  /** Expects anew where the test is another, or stands otherwise. */
  #renew(): void {
    const { picture, source, edits } = this.store.state;
    const scenario = this.written();
    if (picture === undefined || source === undefined || scenario === undefined) return;
    const { leftFor: _, ...stood } = this.sheet?.conditions ?? {};
    const how = [picture.card, JSON.stringify([edits, stood]), source.text];
    const test = [this.#file(), ...how].join('\n');
    if (test === this.#test) return;
    this.#test = test;
    void this.maker.ask({ kind: 'expect', scenario, card: picture.card, stood }).then((reply) => {
      if (test !== this.#test) return;
      if (reply.kind === 'expected') this.put({ expectation: reply.expectation, failure: '' });
      if (reply.kind === 'broken') this.put({ expectation: undefined, failure: reply.message });
    });
    this.#lay();
  }

  #blank(): Draft | undefined {
    const { picture } = this.store.state;
    if (picture === undefined) return undefined;
    const date = new Date(this.clock() * 1000).toISOString().slice(0, 10);
    const head = { aircraft: picture.title, scenario: picture.file, card: picture.card, date };
    return { sheet: blankSheet(head), saved: true };
  }

  /**
   * Lays the row looked at over the order chart, to a diagnosis all that were made as the sheet says;
   * what was laid before goes.
   */
  #lay(): void {
    const { picture, measured, bench } = this.store.state;
    const { draft, picked } = this.#state;
    const all = draft?.sheet.swings ?? [];
    const swings =
      bench === 'diagnosis'
        ? all.filter((s) => Object.keys(s.conditions).length === 0)
        : all.slice(picked, picked + 1);
    const others = measured.filter((m) => !this.#laid.includes(m));
    this.#laid =
      picked < 0 || picture === undefined
        ? []
        : swings.reduce<readonly MeasuredTime[]>((so, s) => merged(so, measuredOf(s, picture)), []);
    if (this.#laid.length > 0 || others.length !== measured.length)
      this.store.set({ measured: merged(others, this.#laid) });
  }

  /** Entries that do not go together, looked for when the hand rests. */
  #lookOver(): void {
    const { draft } = this.#state;
    const mine = ++this.#check;
    if (draft === undefined || draft.watch !== undefined || draft.sheet.swings.length === 0) return;
    void this.maker
      .ask({ kind: 'write', sheet: draft.sheet, units: this.store.state.system })
      .then((reply) => {
        if (mine === this.#check && reply.kind === 'written')
          this.put({ contradictions: reply.contradictions });
      });
  }
}
