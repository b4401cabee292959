import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import type { LessonDesk } from '../model/lesson-desk.js';
import { KIND_WORD, KINDS, momentWords, sceneWords } from '../model/lesson-draft.js';
import { count, seconds } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { Lesson } from '../worker/lesson-message.js';
import { define, View } from './base.js';
import { download, fileName } from './download.js';
import { issueItem } from './issue-item.js';
import { deskStyles } from './lesson-desk.styles.js';
import { stepForm } from './lesson-desk-step.js';
import { lessonStyles } from './lesson.styles.js';
import { shared } from './shared.styles.js';
import { sign } from './sign.js';

/** Where a lesson is written: steps are taken from the run at the play head. */
export class LessonDeskView extends View {
  static override properties = { ...View.properties, desk: { attribute: false } };
  static override styles = [shared, lessonStyles, deskStyles];

  declare desk: LessonDesk;

  protected readonly watches: readonly (keyof State)[] = [
    'lesson',
    'picture',
    'time',
    'selection',
    'system',
  ];

  protected override firstUpdated(changed: PropertyValues): void {
    super.firstUpdated(changed);
    this.desk.resume();
  }

  protected override render(): TemplateResult {
    const { desk } = this;
    const { draft, checked, past } = this.state.lesson;
    if (draft === undefined) return html``;
    const sound = checked !== undefined && checked.issues.length === 0;
    return html`
      <header>
        <div><h2>Writing a lesson</h2></div>
        <button ?disabled=${past.length === 0} @click=${() => desk.undo()}>Undo</button>
        <button @click=${() => desk.work.leave()}>All lessons</button>
      </header>
      <label class="field"
        >Title
        <input
          name="title"
          maxlength="200"
          .value=${draft.title}
          @change=${(e: Event) => desk.change({ title: (e.target as HTMLInputElement).value })}
        />
      </label>
      <label class="field"
        >Note: whom it is for, what it shows
        <textarea
          name="note"
          rows="2"
          maxlength="2000"
          .value=${draft.note}
          @change=${(e: Event) => desk.change({ note: (e.target as HTMLTextAreaElement).value })}
        ></textarea>
      </label>
      ${this.#adder()} ${this.#steps(draft)} ${this.#verdict()}
      <div class="row">
        <button
          class="main"
          ?disabled=${checked === undefined || checked.text === ''}
          @click=${() => download(fileName(draft.title, 'yaml'), checked?.text ?? '', 'text/yaml')}
        >
          Save as a file
        </button>
        <button ?disabled=${!sound || draft.steps.length === 0} @click=${() => desk.take()}>
          Take it
        </button>
      </div>
    `;
  }

  #adder(): TemplateResult {
    const { desk } = this;
    const { picture, time } = this.state;
    const { obstacle } = desk;
    return html`<section class="adder" aria-label="Add a step">
      <h3>
        Add at ${seconds(time)} of: ${picture?.cards.find((c) => c.name === picture.card)?.title}
      </h3>
      ${
        obstacle === ''
          ? html`<div class="row">
              ${KINDS.map((kind) => html`<button data-add=${kind} @click=${() => desk.add(kind)}>${KIND_WORD[kind]}</button>`)}
            </div>`
          : html`<p>${obstacle}</p>`
      }
    </section>`;
  }

  #steps(draft: Lesson): TemplateResult {
    const { desk } = this;
    const { at, checked } = this.state.lesson;
    const { picture } = this.state;
    return html`<ol class="steps" aria-label="Steps">
      ${draft.steps.map((step, i) => {
        const wrong = checked?.issues.some((issue) =>
          new RegExp(`^steps\\.${i}(\\.|$)`).test(issue.path),
        );
        const words = `${i + 1}. ${KIND_WORD[step.kind]}`;
        return html`<li class=${i === at ? 'chosen' : ''}>
          <div class="bar">
            <button
              class="name"
              aria-expanded=${i === at}
              @click=${() => desk.work.put({ at: i === at ? -1 : i })}
            >
              ${wrong === true ? sign('fail') : nothing}
              <span
                ><b>${words}</b
                ><small
                  >${step.text === '' ? `${sceneWords(step, picture)}, ${momentWords(step.moment)}` : step.text}</small
                ></span
              >
            </button>
            <button
              aria-label="Earlier: ${words}"
              ?disabled=${i === 0}
              @click=${() => desk.move(i, -1)}
            >
              ↑
            </button>
            <button
              aria-label="Later: ${words}"
              ?disabled=${i === draft.steps.length - 1}
              @click=${() => desk.move(i, 1)}
            >
              ↓
            </button>
            <button aria-label="Remove: ${words}" @click=${() => desk.remove(i)}>×</button>
          </div>
          ${i === at ? stepForm({ desk, step, index: i, prepared: checked?.steps[i], picture }) : nothing}
        </li>`;
      })}
    </ol>`;
  }

  #verdict(): TemplateResult {
    const { checked, failure } = this.state.lesson;
    if (failure !== '') return html`<p class="no">${failure}</p>`;
    if (checked === undefined)
      return html`<p class="soft" data-desk-busy>The runs are being asked whether it is true…</p>`;
    if (checked.issues.length === 0)
      return html`<p class="verdict">${sign('note')} The runs bear it out.</p>`;
    return html`<section class="issues" aria-label="Problems">
      <h3>${sign('fail')} ${count(checked.issues.length, 'problem')}</h3>
      <ol>
        ${checked.issues.map(issueItem)}
      </ol>
    </section>`;
  }
}

define('ww-lesson-desk', LessonDeskView);
