import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import type { LessonDesk } from '../model/lesson-desk.js';
import type { LessonWork } from '../model/lesson.js';
import { BENCH } from '../model/lesson.js';
import { answerAt, isOpen, isQuestion, stepAt } from '../model/lesson-state.js';
import type { Answer } from '../model/lesson-state.js';
import { count, seconds } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { PreparedStep } from '../worker/lesson-message.js';
import { define, View } from './base.js';
import { chooser, refused, waiting } from './lesson-chooser.js';
import './lesson-desk.js';
import { question } from './lesson-question.js';
import { results } from './lesson-results.js';
import { lessonStyles } from './lesson.styles.js';
import { toldLines } from './lesson-told.js';
import { shared } from './shared.styles.js';

/**
 * The lesson bench: steps beside the bay. While a question is open the run on show is cut, so that
 * what is asked cannot be looked up.
 */
export class LessonBench extends View {
  static override properties = {
    ...View.properties,
    work: { attribute: false },
    desk: { attribute: false },
    picked: { state: true },
    order: { state: true },
  };
  static override styles = [shared, lessonStyles];

  declare work: LessonWork;
  declare desk: LessonDesk;
  /** The choice that is ticked and not yet given. */
  declare picked: string;
  /** The order as it stands. */
  declare order: readonly string[];

  protected readonly watches: readonly (keyof State)[] = [
    'lesson',
    'picture',
    'system',
    'large',
    'bench',
    'busy',
  ];

  /** The step that `picked` and `order` belong to. */
  #of: PreparedStep | undefined;
  #left = new AbortController();

  constructor() {
    super();
    this.picked = '';
    this.order = [];
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#left = new AbortController();
    window.addEventListener('keydown', this.#key, { signal: this.#left.signal });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#left.abort();
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    const step = stepAt(this.state.lesson);
    if (step === this.#of) return;
    this.#of = step;
    const { given } = answerAt(this.state.lesson);
    this.picked = step?.kind === 'arrange' ? '' : (given[0] ?? '');
    this.order =
      step?.kind === 'arrange' && given.length > 0 ? given : (step?.choices ?? []).map((c) => c.id);
  }

  protected override render(): TemplateResult {
    const { lesson } = this.state;
    const { work, desk } = this;
    if (lesson.draft !== undefined)
      return html`<ww-lesson-desk .store=${this.store} .desk=${desk}></ww-lesson-desk>`;
    if (lesson.phase === 'waiting') return waiting(work);
    if (lesson.phase === 'refused') return refused(work);
    const step = stepAt(lesson);
    if (lesson.phase === 'none' || step === undefined)
      return chooser({ work, write: () => desk.begin() });
    return this.#step(step, answerAt(lesson));
  }

  #step(step: PreparedStep, answer: Answer): TemplateResult {
    const { work } = this;
    const { lesson, large } = this.state;
    const steps = lesson.plan?.steps ?? [];
    const last = lesson.at === steps.length - 1;
    const open = isOpen(step, answer);
    return html`
      <header>
        <div>
          <h2>${lesson.plan?.lesson?.title}</h2>
          <p class="soft">Step ${lesson.at + 1} of ${steps.length}</p>
        </div>
        ${
          large
            ? nothing
            : html`<button @click=${() => this.desk.edit()}>Edit</button
                ><button @click=${() => work.leave()}>All lessons</button>`
        }
      </header>
      <div class="step" data-kind=${step.kind} data-open=${open} ?data-room=${large}>
        ${isQuestion(step) ? html`<p class="ask">${step.question}</p>` : html`<p class="tell">${step.text}</p>`}
        ${this.#run(step, open)}
        ${isQuestion(step) ? question({ step, answer, work, picked: this.picked, pick: (id) => (this.picked = id), order: this.order, move: this.#move, room: large }) : nothing}
        ${isQuestion(step) && answer.settled ? this.#answer(step, answer) : nothing}
      </div>
      <nav aria-label="Steps">
        <button ?disabled=${lesson.at === 0} @click=${() => work.go(lesson.at - 1)}>Back</button>
        <button
          class=${open ? '' : 'main'}
          ?disabled=${last}
          @click=${() => work.go(lesson.at + 1)}
        >
          ${last ? 'This is the last step' : open ? 'Leave it open, next step' : 'Next step'}
        </button>
      </nav>
      ${large ? nothing : results(work)}
    `;
  }

  /** How much of which run is to be seen, and how to see it. */
  #run(step: PreparedStep, open: boolean): TemplateResult {
    const { work } = this;
    if (this.state.busy) return html`<p class="soft">The run is being simulated…</p>`;
    if (!work.onShow())
      return html`<p class="aside-run">
        Another run is on show.
        <button @click=${() => work.restage()}>Back to the lesson's run</button>
      </p>`;
    const { stop } = step;
    const words =
      step.kind === 'compare' && open
        ? 'Both runs are shut until you have answered.'
        : stop === undefined
          ? open
            ? 'You may watch the whole run in the bay; circuit, flags and events are shut.'
            : 'The whole run is yours to look at.'
          : open
            ? `The run is shut from ${seconds(stop)} on.`
            : `Stopped at ${seconds(stop)}.`;
    return html`<div class="row run">
      <span class="soft">${words}</span>
      ${
        stop === 0 && open
          ? nothing
          : open || !isQuestion(step)
            ? html`<button type="button" @click=${() => work.lead()}>
                ${stop === undefined ? 'Play it' : 'Play up to here'}
              </button>`
            : html`<button type="button" @click=${() => this.store.play()}>Play on</button>`
      }
      ${
        step.other === undefined || open
          ? nothing
          : html`<span class="pair" role="group" aria-label="Run on show"
              >${([false, true] as const).map((other) => html`<button aria-pressed=${this.state.lesson.other === other} @click=${() => work.showOther(other)}>${other ? 'Run B' : 'Run A'}</button>`)}</span
            >`
      }
    </div>`;
  }

  #answer(step: PreparedStep, answer: Answer): TemplateResult {
    const seek = (time: number): void => this.store.scrub(time);
    const verdict = answer.right
      ? answer.tries === 1
        ? 'Right.'
        : `Right, at try ${answer.tries}.`
      : answer.tries === 0
        ? 'The answer:'
        : `Not found in ${count(answer.tries, 'try', 'tries')}. The answer:`;
    const wanted = step.right.map((id) => step.choices.find((c) => c.id === id)?.text ?? id);
    return html`<section class="answer" aria-label="Answer">
      <h3 class=${answer.right ? 'yes' : ''}>
        ${verdict} ${step.kind === 'arrange' ? nothing : html`<span>${wanted[0]}</span>`}
      </h3>
      ${toldLines(step.told, this.state, seek)}
      ${step.why === '' ? nothing : html`<p class="why">${step.why}</p>`}
    </section>`;
  }

  /** Puts a choice at another place; the button that did it keeps the focus. */
  #move = (id: string, to: number): void => {
    const rest = this.order.filter((each) => each !== id);
    const at = Math.min(Math.max(to, 0), rest.length);
    const was = this.order.indexOf(id);
    this.order = [...rest.slice(0, at), id, ...rest.slice(at)];
    const text = this.#of?.choices.find((c) => c.id === id)?.text ?? id;
    this.store.set({ said: `${text}: place ${at + 1} of ${this.order.length}.` });
    void this.updateComplete.then(() => {
      const item = [...this.renderRoot.querySelectorAll<HTMLElement>('.arrange li')].find(
        (li) => li.dataset.id === id,
      );
      const same = item?.querySelector<HTMLButtonElement>(
        `[data-to=${at < was ? 'earlier' : 'later'}]`,
      );
      const button = same?.disabled === true ? item?.querySelector('button:enabled') : same;
      (button as HTMLElement | null | undefined)?.focus();
    });
  };

  /** In front of a room: a presenter's remote sends these two. */
  #key = (e: KeyboardEvent): void => {
    const { large, bench, lesson } = this.state;
    if (!large || bench !== BENCH || lesson.draft !== undefined || e.defaultPrevented) return;
    const step = stepAt(lesson);
    if (step === undefined || (e.key !== 'PageDown' && e.key !== 'PageUp')) return;
    e.preventDefault();
    if (e.key === 'PageUp') this.work.go(lesson.at - 1);
    else if (isOpen(step, answerAt(lesson))) this.work.reveal();
    else this.work.go(lesson.at + 1);
  };
}

define('ww-lesson', LessonBench);
