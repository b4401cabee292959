/** The verbs of writing a lesson. Every change is checked by the runs, kept over a reload, and can be undone. */
import type { Lesson, LessonStep } from '../worker/lesson-message.js';
import { eventsAfter, stepHere } from './lesson-draft.js';
import type { Here, Kind } from './lesson-draft.js';
import type { LessonMaker, LessonWork } from './lesson.js';
import { NO_LESSON } from './lesson-state.js';

/** A change is checked when it has rested this long, ms. */
const REST = 400;
const MOST_PAST = 50;

const baseOf = (file: string): string => file.split('/').at(-1) ?? file;

export class LessonDesk {
  readonly work: LessonWork;
  readonly #maker: LessonMaker;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(work: LessonWork, maker: LessonMaker) {
    this.work = work;
    this.#maker = maker;
  }

  get draft(): Lesson | undefined {
    return this.work.state.draft;
  }

  /** The play head on the run on show; undefined before there is one. */
  get here(): Here | undefined {
    const { picture, time, selection } = this.work.store.state;
    return picture === undefined ? undefined : { picture, time, selection };
  }

  /** A lesson from nothing, on the aircraft on show. */
  begin(): void {
    const file = baseOf(this.work.store.state.picture?.file ?? '');
    const { who } = this.work.state;
    this.work.put({ ...NO_LESSON, who, file: 'lesson.yaml' });
    this.#set({ title: 'New lesson', note: '', scenario: file, steps: [] }, []);
  }

  /** The lesson being taken is written on. */
  edit(): void {
    const { plan } = this.work.state;
    if (plan?.lesson === undefined) return;
    this.#set(plan.lesson, []);
    this.work.unveil();
  }

  /** Takes what was written, as a student would. */
  take(): void {
    const { checked, file } = this.work.state;
    if (checked !== undefined && checked.issues.length === 0)
      this.work.open({ file, text: checked.text });
  }

  /** Checks a lesson that was left over from before a reload. */
  resume(): void {
    if (this.draft !== undefined && this.work.state.checked === undefined) this.#checkSoon();
  }

  change(patch: Partial<Lesson>): void {
    const { draft } = this;
    if (draft === undefined) return;
    this.#set({ ...draft, ...patch }, [...this.work.state.past, draft].slice(-MOST_PAST));
  }

  undo(): void {
    const { past } = this.work.state;
    const former = past.at(-1);
    if (former !== undefined) this.#set(former, past.slice(0, -1));
  }

  /** Why no step can be added from the run on show; empty when one can. */
  get obstacle(): string {
    const { draft, here } = this;
    if (here === undefined) return 'There is no run on show yet.';
    const file = baseOf(here.picture.file);
    if (draft !== undefined && draft.steps.length > 0 && baseOf(draft.scenario) !== file)
      return `This lesson is about ${draft.scenario}; put that aircraft on show to add to it.`;
    return '';
  }

  /** A step made from the run at the play head, after the others. */
  add(kind: Kind): void {
    const { draft, here } = this;
    if (draft === undefined || here === undefined || this.obstacle !== '') return;
    const scenario = draft.steps.length === 0 ? baseOf(here.picture.file) : draft.scenario;
    const keeps = baseOf(draft.scenario) === scenario ? draft.scenario : scenario;
    this.change({ scenario: keeps, steps: [...draft.steps, stepHere(kind, here)] });
    this.work.put({ at: draft.steps.length });
  }

  setStep(index: number, step: LessonStep): void {
    this.change({ steps: (this.draft?.steps ?? []).map((s, i) => (i === index ? step : s)) });
  }

  remove(index: number): void {
    this.change({ steps: (this.draft?.steps ?? []).filter((_, i) => i !== index) });
    this.work.put({ at: Math.max(0, Math.min(index, (this.draft?.steps.length ?? 1) - 1)) });
  }

  move(index: number, by: -1 | 1): void {
    const steps = [...(this.draft?.steps ?? [])];
    const [step] = steps.splice(index, 1);
    if (step === undefined || index + by < 0 || index + by > steps.length) return;
    steps.splice(index + by, 0, step);
    this.change({ steps });
    this.work.put({ at: index + by });
  }

  /** The next events at the play head, to take into an order. */
  get next(): ReturnType<typeof eventsAfter> {
    return this.here === undefined ? [] : eventsAfter(this.here);
  }

  #set(draft: Lesson, past: readonly Lesson[]): void {
    this.work.put({ draft, past, checked: undefined });
    this.#checkSoon();
  }

  #checkSoon(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#check(), REST);
  }

  #check(): void {
    const { draft } = this;
    if (draft === undefined) return;
    const { file } = this.work.state;
    const scenario = this.work.scenarioOf(draft.scenario);
    this.#maker.ask(
      { file, lesson: draft, ...(scenario && { scenario: scenario.text }) },
      (reply) => {
        // What has changed since is being checked in its turn.
        if (this.draft !== draft) return;
        if (reply.kind === 'plan') {
          const { steps, issues } = reply.plan;
          this.work.put({ checked: { text: reply.text, steps, issues } });
        }
        if (reply.kind === 'refused')
          this.work.put({ checked: { text: '', steps: [], issues: reply.issues } });
        if (reply.kind === 'broken') this.work.put({ failure: reply.message });
      },
    );
  }
}
