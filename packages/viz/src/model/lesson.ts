/** The verbs of a lesson being taken, on the page's one store. */
import type { LessonReply, LessonRequest, Scene } from '../worker/lesson-message.js';
import type { FaultEntry, Picture } from '../worker/message.js';
import { demos } from './demos.js';
import {
  answerAt,
  inPlace,
  isOpen,
  isQuestion,
  NO_LESSON,
  stepAt,
  UNANSWERED,
} from './lesson-state.js';
import type { Answer, LessonState } from './lesson-state.js';
import { isLesson, lineOf } from './lessons.js';
import type { Source } from './state.js';
import type { Store } from './store.js';
import { bystander, cutAt } from './veil.js';

/** Whoever makes lessons ready: the worker, or a stand-in. */
export interface LessonMaker {
  ask(request: Omit<LessonRequest, 'id' | 'kind'>, hear: (reply: LessonReply) => void): void;
  stop(): void;
}

/** What outlives a reload. */
export interface Shelf {
  get(name: string): unknown;
  put(name: string, value: unknown): void;
}

export const BENCH = 'lesson';

export class LessonWork {
  readonly store: Store;
  readonly #maker: LessonMaker;
  readonly #shelf: Shelf;
  /** The run on show with nothing taken out of it. */
  #whole: Picture | undefined;
  /** A run that was asked for, to be stopped where the step says. */
  #awaited = false;
  readonly #now: () => string;

  constructor(
    store: Store,
    maker: LessonMaker,
    shelf: Shelf,
    now = (): string => new Date().toISOString(),
  ) {
    this.store = store;
    this.#maker = maker;
    this.#shelf = shelf;
    this.#now = now;
    store.veil = (picture) => {
      this.#whole = picture;
      return this.#seen(picture);
    };
    store.takers.push((source) => {
      if (!isLesson(source.text)) return false;
      // Files given with it come first: its scenario may be among them.
      queueMicrotask(() => this.open(source));
      return true;
    });
    store.watch((changed) => {
      if (changed.has('bench') && store.state.bench === BENCH) this.#resume();
      // Channels that came before would tell what is to come.
      if (changed.has('picture') && this.veiled && store.state.series.size > 0)
        store.set({ series: new Map() });
      if (changed.has('picture') && this.#awaited && this.onShow()) this.#stop();
    });
  }

  get state(): LessonState {
    return this.store.state.lesson;
  }

  put(patch: Partial<LessonState>): void {
    this.store.set({ lesson: { ...this.state, ...patch } });
    const { file, text, at, answers, who, draft } = this.state;
    this.#shelf.put('lesson', { file, text, at, answers, who, draft });
  }

  // Opening

  /** Opens a lesson from its beginning. */
  open(source: Source): void {
    const { who } = this.state;
    this.put({ ...NO_LESSON, who, file: source.file, text: source.text, phase: 'waiting' });
    this.store.set({ bench: BENCH });
    this.#prepare();
  }

  /** Back to the list of lessons. */
  leave(): void {
    const { who } = this.state;
    this.#maker.stop();
    this.put({ ...NO_LESSON, who });
    this.unveil();
  }

  /** The scenario a lesson speaks of: one of those that come with the page, or that the user has given. */
  scenarioOf(name: string): Source | undefined {
    const base = (file: string): string => file.split('/').at(-1) ?? '';
    return [...this.store.state.files, ...demos].find((s) => base(s.file) === base(name));
  }

  #prepare(): void {
    const { file, text } = this.state;
    const name = lineOf(text, 'scenario');
    const scenario = this.scenarioOf(name);
    this.#maker.ask(
      { file, lesson: text, ...(scenario && { scenario: scenario.text }) },
      (reply) => {
        if (reply.kind === 'refused' && reply.issues.length === 0) {
          const failure = `It speaks of ${name}, which is not here: open that file first, then the lesson.`;
          this.put({ phase: 'refused', failure });
        } else this.#hear(reply);
      },
    );
  }

  #hear(reply: LessonReply): void {
    if (reply.kind === 'steps') this.put({ progress: [reply.ready, reply.of] });
    if (reply.kind === 'broken') this.put({ phase: 'refused', failure: reply.message });
    if (reply.kind === 'refused') this.put({ phase: 'refused', issues: reply.issues });
    if (reply.kind !== 'plan') return;
    const { plan } = reply;
    if (plan.issues.length > 0) {
      this.put({ phase: 'refused', issues: plan.issues, plan });
      return;
    }
    this.put({ phase: 'ready', issues: [], failure: '', plan });
    this.go(Math.min(this.state.at, plan.steps.length - 1));
  }

  /** What was left when the page was closed. */
  #resume(): void {
    if (this.state.phase !== 'none') {
      this.#stage();
      return;
    }
    const kept = this.#shelf.get('lesson') as Partial<LessonState> | null;
    if (typeof kept?.text !== 'string') return;
    const { file = '', text, at = 0, answers = [], who = '', draft } = kept;
    this.put({ file, text, at, answers, who, draft });
    if (text === '' || draft !== undefined) return;
    this.put({ phase: 'waiting' });
    this.#prepare();
  }

  // Going through

  go(at: number): void {
    const { plan } = this.state;
    const step = plan?.steps[at];
    if (step === undefined) return;
    this.put({ at, other: false });
    const { question, text } = step;
    this.store.set({
      said: `Step ${at + 1} of ${plan?.steps.length}. ${question === '' ? text : question}`,
    });
    this.#stage();
  }

  /** Gives an answer: one choice, or all in order. */
  answer(given: readonly string[]): void {
    const step = stepAt(this.state);
    if (step === undefined || !isQuestion(step)) return;
    const before = answerAt(this.state);
    if (before.settled) return;
    const right = given.length === step.right.length && inPlace(step, given) === given.length;
    this.#answered({ ...before, given, right, settled: right, tries: before.tries + 1 });
    this.store.set({ said: right ? 'Right.' : 'Not so.' });
  }

  /** Shows the answer. */
  reveal(): void {
    const step = stepAt(this.state);
    const before = answerAt(this.state);
    if (step === undefined || !isOpen(step, before)) return;
    this.#answered({ ...before, settled: true });
    this.store.set({ said: 'The answer is shown.' });
  }

  /** Makes one of the checks, as long as there are any left. */
  check(id: string): void {
    const step = stepAt(this.state);
    const before = answerAt(this.state);
    if (step === undefined || before.checks.includes(id) || before.settled) return;
    if (before.checks.length >= step.budget) return;
    this.#set({ ...before, checks: [...before.checks, id] });
    const left = step.budget - before.checks.length - 1;
    this.store.set({ said: `Check made. ${left} left.` });
  }

  /** All answers taken back. */
  again(): void {
    this.put({ answers: [] });
    this.go(0);
  }

  setWho(who: string): void {
    this.put({ who });
  }

  /** The one or the other run of a comparison that was answered. */
  showOther(other: boolean): void {
    this.put({ other });
    this.#stage();
  }

  /** Plays up to where the step stops, from where the one before did. */
  lead(): void {
    const { plan, at } = this.state;
    const step = stepAt(this.state);
    const former = plan?.steps[at - 1];
    const before = former?.card === step?.card ? (former?.stop ?? 0) : 0;
    this.store.scrub(before < (step?.stop ?? Infinity) ? before : 0);
    this.store.play();
  }

  #answered(answer: Answer): void {
    this.#set({ ...answer, when: this.#now() });
    if (answer.settled) this.unveil();
  }

  #set(answer: Answer): void {
    const { answers, at, plan } = this.state;
    const all = Array.from({ length: plan?.steps.length ?? 0 }, (_, i) => answers[i] ?? UNANSWERED);
    all[at] = answer;
    this.put({ answers: all });
  }

  // The run on show

  /** The run a step is about; undefined while none is on. */
  scene(): Scene | undefined {
    const step = stepAt(this.state);
    if (this.state.draft !== undefined) return undefined;
    return this.state.other ? step?.other : step;
  }

  /** Whether the run on show is the one that the step is about. */
  onShow(picture: Picture | undefined = this.#whole): boolean {
    const scene = this.scene();
    const source = this.scenarioOf(this.state.plan?.lesson?.scenario ?? '');
    if (scene === undefined || picture === undefined || source === undefined) return false;
    const own = picture.cards.find((c) => c.name === scene.card)?.faults ?? [];
    const { asked, edits } = this.store.state;
    return (
      picture.file === source.file &&
      picture.card === scene.card &&
      same(picture.faults, scene.faults ?? own) &&
      (asked?.source.text ?? source.text) === source.text &&
      edits.length === 0
    );
  }

  /** Puts the step's run on show, stopped where the step says. */
  #stage(): void {
    const scene = this.scene();
    const { lesson } = this.state.plan ?? {};
    if (scene === undefined || lesson === undefined || this.store.state.bench !== BENCH) return;
    if (this.onShow()) {
      this.unveil();
      this.#stop();
      return;
    }
    const source = this.scenarioOf(lesson.scenario);
    this.#awaited = true;
    const { card, faults } = scene;
    if (source !== undefined)
      this.store.reopen(source, { card, ...(faults && { faults }), edits: [], exact: true });
  }

  #stop(): void {
    this.#awaited = false;
    const { stop } = stepAt(this.state) ?? {};
    this.store.scrub(this.state.other ? 0 : (stop ?? 0));
  }

  /** Back to the step's run after another was looked at. */
  restage(): void {
    this.#stage();
  }

  /** What is on show has something taken out, for a question. */
  get veiled(): boolean {
    const { picture } = this.store.state;
    return picture !== this.#whole && this.#isWhole(picture);
  }

  /** Whether a picture is of the run held here, with or without something taken out. */
  #isWhole(picture: Picture | undefined): boolean {
    return picture !== undefined && Math.abs(picture.run) === this.#whole?.run;
  }

  /** What of a run may be seen at this step. */
  #seen(picture: Picture): Picture {
    const step = stepAt(this.state);
    if (step === undefined || this.state.other || !this.onShow(picture)) return picture;
    const waits = step.kind === 'tell' ? this.#more() : isOpen(step, answerAt(this.state));
    if (!waits) return picture;
    const shown = step.kind === 'find' ? bystander(picture) : picture;
    return step.stop === undefined ? shown : cutAt(shown, step.stop);
  }

  /** Questions are left: what is told stops where it says, or it would tell too much. */
  #more(): boolean {
    const { plan, answers } = this.state;
    return (plan?.steps ?? []).some((step, i) => isOpen(step, answers[i] ?? UNANSWERED));
  }

  /** Shows as much of the run as may be seen now. */
  unveil(): void {
    const whole = this.#whole;
    if (whole === undefined || !this.#isWhole(this.store.state.picture)) return;
    const picture = this.#seen(whole);
    this.store.set({
      picture,
      faults: picture.faults,
      selection: { kind: 'none' },
      playing: false,
    });
  }
}

function same(a: readonly FaultEntry[], b: readonly FaultEntry[]): boolean {
  const word = (f: FaultEntry): string => `${f.fault} ${f.on} ${f.severity}`;
  return a.map(word).join() === b.map(word).join();
}
