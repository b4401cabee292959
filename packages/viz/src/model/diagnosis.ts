/** The diagnosis bench: what explains the sheet on the desk, and what its checks have shown. */
import type {
  CheckFacts,
  DiagnosisReply,
  DiagnosisRequest,
  MemberLine,
  Ranking,
} from '../worker/diagnosis-message.js';
import type { DiagnosisQuestion } from '../worker/diagnosis-client.js';
import type { ObservationSheet } from '../worker/sheet-message.js';
import { isNoted } from '../worker/noted.js';
import { keyOf, NO_DIAGNOSIS } from './diagnosis-state.js';
import type { DiagnosisState, Explainer } from './diagnosis-state.js';
import { plain } from './sentence.js';
import type { Source, State } from './state.js';
import type { Store } from './store.js';
import type { TestCardWork } from './test-card.js';

/** How long the hand rests before a change of the sheet is looked at, ms: on the bench, and ahead of it on the test card. */
const REST = { diagnosis: 250, 'test-card': 2000 } as const;

/** A sheet on which something was taken down. */
export function isFilled(sheet: ObservationSheet | undefined): boolean {
  return sheet?.swings.some(isNoted) === true;
}

type Asked = Omit<DiagnosisRequest, 'id' | 'scenario'>;

/** The verbs of the bench, on the page's one store. */
export class DiagnosisWork {
  /** What was asked for last, as it is compared, and as it was put; and how far ahead of it was played. */
  #asked = '';
  #question: DiagnosisQuestion | undefined;
  #ahead: 'none' | 'playing' | 'done' = 'none';
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** What waits to be asked, since when, and for how long, ms. */
  #waiting = { asked: '', since: -Infinity, rest: 0 };
  /** File that the ranking belongs to. */
  #file = '';

  constructor(
    private readonly store: Store,
    readonly card: TestCardWork,
    private readonly explainer: Explainer,
    /** Sheets that come with the page. */
    private readonly examples: readonly Source[],
  ) {
    store.watch((changed) => {
      const keys: readonly (keyof State)[] = [
        'testCard',
        'bench',
        'source',
        'edits',
        'picture',
        'traces',
      ];
      if (keys.some((key) => changed.has(key))) this.#follow();
    });
  }

  get #state(): DiagnosisState {
    return this.store.state.diagnosis;
  }

  #put(patch: Partial<DiagnosisState>): void {
    this.store.set({ diagnosis: { ...this.#state, ...patch } });
  }

  /** A sheet of the aircraft on show that comes with the page. */
  get example(): Source | undefined {
    const folder = this.store.state.source?.file.split('/')[0] ?? '';
    return this.examples.find((e) => e.file.split('/')[0] === folder);
  }

  /** Lays the sample sheet on the desk. */
  openExample(): void {
    const { example } = this;
    if (example !== undefined) this.card.files.take(example);
  }

  /** Once more from the start of what is known. */
  again(): void {
    this.#asked = '';
    this.#follow();
  }

  /** Gives up; what is known stays. */
  stop(): void {
    this.explainer.stop();
    // Whoever stops it does not want it to play on.
    this.#ahead = 'done';
    this.#put({ busy: false });
    this.store.set({ said: 'Stopped; the ranking so far stays.' });
  }

  pick(member: MemberLine): void {
    this.#put({ picked: keyOf(member) });
  }

  /**
   * Puts a cause with its fitted severity on the run, under the conditions of the sheet, so that what it
   * foretells is drawn under what was seen.
   */
  show({ causes, severities }: MemberLine): void {
    const { picture } = this.store.state;
    const { card = '', conditions = {} } = this.card.sheet ?? {};
    const faults = causes.map((c, i) => ({ ...c, severity: severities[i]?.at ?? 0 }));
    const here = picture?.card === card || picture?.cards.some((c) => c.name === card) !== true;
    const stood = Object.keys(conditions).length > 0 ? conditions : undefined;
    if (here && JSON.stringify(stood) === JSON.stringify(picture?.stood))
      this.store.setFaults(faults);
    else this.store.again({ ...(!here && { card }), faults, stood });
  }

  /** The run on show under the card's own conditions again. */
  showUsual(): void {
    this.store.again({ stood: undefined });
  }

  /** What a look has shown goes on the sheet, in place of what it showed before. */
  look({ check, on, title }: CheckFacts, found: boolean): void {
    this.card.changeSheet((sheet) => {
      const others = (sheet.looks ?? []).filter((l) => l.check !== check || l.on !== on);
      return { ...sheet, looks: [...others, { check, on, found }] };
    });
    this.store.set({ said: `${title}, ${plain(on)}: ${found ? 'found' : 'not found'}, noted.` });
  }

  takeBack(index: number): void {
    this.card.changeSheet((sheet) => {
      const { looks = [], ...rest } = sheet;
      const kept = looks.filter((_, i) => i !== index);
      return kept.length === 0 ? rest : { ...rest, looks: kept };
    });
    this.store.set({ said: 'The check is taken off the sheet.' });
  }

  /** To the stopwatch: the next swings are made as the check asks. */
  swing({ title, conditions = {} }: CheckFacts): void {
    this.card.swingUnder({ title, conditions });
    this.store.set({ bench: 'test-card', said: `${title}: the next swings are noted under that.` });
  }

  #follow(): void {
    const { source, picture, bench, edits, testCard } = this.store.state;
    const { draft, expectation } = testCard;
    if (this.#file !== '' && this.#file !== source?.file) this.#leave();
    if (bench !== 'diagnosis' && bench !== 'test-card') return this.#rest();
    if (source === undefined || picture === undefined || draft === undefined) return;
    clearTimeout(this.#timer);
    if (draft.watch !== undefined || expectation === undefined) return;
    const { by: _, date: __, note: ___, ...sheet } = draft.sheet;
    const recordings = this.#recordings(draft.sheet);
    const lengths = Object.entries(recordings).map(([file, text]) => [file, text.length]);
    const asked = JSON.stringify([source.file, source.text, edits, sheet, lengths]);
    if (asked === this.#asked) {
      const { whole, busy } = this.#state;
      if (this.#ahead === 'none' && !busy && (whole || !isFilled(draft.sheet))) this.#goAhead();
      return;
    }
    const { card } = draft.sheet;
    const own = card === '' || card === expectation.card;
    const ways = own ? expectation.swings.map((s) => s.direction) : [];
    const request = { sheet: draft.sheet, ways, recordings };
    if (asked !== this.#waiting.asked) {
      // The first change after a rest, or while it is only played ahead, is looked at at once: a sheet that was
      // opened, a row that was ended.
      const since = performance.now();
      const rested =
        bench === 'diagnosis' &&
        (this.#ahead === 'playing' || since - this.#waiting.since > REST.diagnosis);
      this.#waiting = { asked, since, rest: rested ? 0 : REST[bench] };
    }
    this.#timer = setTimeout(() => this.#ask(asked, request), this.#waiting.rest);
  }

  /** Texts of the recordings that the sheet names, of those that are laid over the traces. */
  #recordings({ swings }: ObservationSheet): Readonly<Record<string, string>> {
    const named = new Set(swings.flatMap((s) => s.recordings.map((r) => r.file)));
    return Object.fromEntries(
      this.store.state.traces.recordings
        .filter((r) => named.has(r.file) && r.text !== '')
        .map((r) => [r.file, r.text]),
    );
  }

  /** Of another aircraft nothing is known. */
  #leave(): void {
    this.#file = '';
    this.#asked = '';
    this.#question = undefined;
    this.#ahead = 'none';
    clearTimeout(this.#timer);
    this.explainer.stop();
    this.store.set({ diagnosis: NO_DIAGNOSIS });
  }

  #ask(asked: string, request: Asked): void {
    const scenario = this.card.written();
    if (scenario === undefined) return;
    this.#asked = asked;
    this.#file = scenario.file;
    this.#question = { scenario, ...request };
    this.#ahead = 'none';
    if (!isFilled(request.sheet)) this.store.set({ diagnosis: NO_DIAGNOSIS });
    this.#put({ busy: true, share: 0, whole: false, failure: '' });
    if (isFilled(request.sheet))
      this.explainer.explain(this.#question, (reply) => this.#hear(reply));
    else this.#goAhead();
  }

  /** Plays what the sheet may want when more is on it, while nothing else is asked. */
  #goAhead(): void {
    if (this.#question === undefined) return;
    this.#ahead = 'playing';
    this.explainer.ahead(this.#question, (reply) => this.#hear(reply));
  }

  /** Other benches have the machine for themselves. */
  #rest(): void {
    if (this.#ahead !== 'playing') return;
    this.explainer.stop();
    this.#ahead = 'none';
    this.#put({ busy: false });
  }

  #hear(reply: DiagnosisReply): void {
    switch (reply.kind) {
      case 'played':
        if (reply.share === 1) this.#ahead = 'done';
        // Nobody waits for it beside a whole ranking.
        return this.#state.whole
          ? undefined
          : this.#put({ share: reply.share, busy: reply.share < 1 });
      case 'broken':
        // What is played ahead beside a whole ranking takes nothing from it, and would fail again.
        if (this.#ahead === 'playing' && this.#state.whole) {
          this.#ahead = 'done';
          return;
        }
        return this.#put({ busy: false, failure: reply.message });
      case 'ranked':
        return this.#ranked(reply.ranking, { share: reply.share, whole: reply.whole });
      case 'whole':
        this.#ranked(reply.ranking, { share: 1, busy: false, whole: true });
        return this.#follow();
    }
  }

  /** A new first cause is said, and that one is established. */
  #ranked(ranking: Ranking, patch: Partial<DiagnosisState>): void {
    const first = (r: Ranking | undefined): string => r?.us.ranking[0]?.title ?? '';
    const { standing, verdict } = ranking.us;
    const before = this.#state.ranking;
    const news = first(before) !== first(ranking) || before?.us.standing !== standing;
    this.#put({ ...patch, ranking });
    if (news && this.store.state.bench === 'diagnosis')
      this.store.set({
        said: standing === 'established' ? `Cause established. ${verdict}` : verdict,
      });
  }
}
