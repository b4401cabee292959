/** Which lesson: those that come with the page, or a file. */
import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { LessonWork } from '../model/lesson.js';
import { lessons, lineOf } from '../model/lessons.js';
import { count } from '../model/sentence.js';
import { issueItem } from './issue-item.js';

export interface ChooserParts {
  readonly work: LessonWork;
  /** Begins a new one. */
  readonly write: () => void;
}

export function chooser({ work, write }: ChooserParts): TemplateResult {
  return html`<h2>Lessons</h2>
    <p class="soft">
      Each asks about runs of the simulation, and answers from them. Choose one, or drop a lesson
      file on the page.
    </p>
    <ul class="lessons">
      ${lessons.map(
        (l) =>
          html`<li>
            <button @click=${() => work.open(l)}>
              <b>${lineOf(l.text, 'title')}</b><span>${noteOf(l.text)}</span>
            </button>
          </li>`,
      )}
    </ul>
    <div class="row">
      <button @click=${choose}>Open a lesson file…</button>
      <button @click=${write}>Write a lesson</button>
      <input
        type="file"
        accept=".yaml,.yml"
        tabindex="-1"
        aria-hidden="true"
        @change=${(e: Event) => given(e, work)}
      />
    </div>`;
}

/** The author's note, on one line or folded over several. */
function noteOf(text: string): string {
  const folded = /^note: *>-?\n((?: +.+\n)+)/m.exec(text)?.[1];
  return folded === undefined ? lineOf(text, 'note') : folded.replace(/\s+/g, ' ').trim();
}

function choose(e: Event): void {
  (e.target as Element).parentElement?.querySelector('input')?.click();
}

function given(e: Event, work: LessonWork): void {
  const input = e.target as HTMLInputElement;
  void work.store.openFiles([...(input.files ?? [])]);
  // So that the same file can be chosen again after it was mended.
  input.value = '';
}

/** Why a lesson could not be taken. */
export function refused(work: LessonWork): TemplateResult {
  const { file, issues, failure } = work.state;
  return html`<h2>${file} cannot be taken</h2>
    ${failure === '' ? nothing : html`<p>${failure}</p>`}
    ${issues.length === 0 ? nothing : html`<p>${count(issues.length, 'problem')}:</p>`}
    <ol class="issues">
      ${issues.map(issueItem)}
    </ol>
    <div class="row"><button @click=${() => work.leave()}>All lessons</button></div>`;
}

export function waiting(work: LessonWork): TemplateResult {
  const [ready, of] = work.state.progress;
  return html`<h2>Its runs are being simulated</h2>
    <div class="row" data-lesson-busy>
      <progress max=${Math.max(of, 1)} value=${ready} aria-label="Steps made ready"></progress>
      <output>${of === 0 ? '' : `${ready} of ${count(of, 'step')}`}</output>
      <button @click=${() => work.leave()}>Cancel</button>
    </div>`;
}
