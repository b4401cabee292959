/** How it went, and the files of it. */
import { html } from 'lit';
import type { TemplateResult } from 'lit';
import type { LessonWork } from '../model/lesson.js';
import { resultsCsv, resultsJson, resultsOf } from '../model/lesson-export.js';
import { scoreOf } from '../model/lesson-state.js';
import { download, fileName } from './download.js';

export function results(work: LessonWork): TemplateResult {
  const { state } = work;
  const { right, first, settled, of } = scoreOf(state);
  const title = state.plan?.lesson?.title ?? '';
  return html`<details class="results">
    <summary>
      <output>${right} of ${of} right</output>, ${first} at the first
      try${settled < of ? `, ${of - settled} to go` : ''}
    </summary>
    <label
      >Name, to go with the results (it stays on this machine)
      <input
        autocomplete="off"
        maxlength="80"
        .value=${state.who}
        @change=${(e: Event) => work.setWho((e.target as HTMLInputElement).value)}
      />
    </label>
    <div class="row">
      <button
        @click=${() => download(fileName(`${title} results`, 'csv'), resultsCsv(resultsOf(state)), 'text/csv')}
      >
        Results as CSV
      </button>
      <button
        @click=${() => download(fileName(`${title} results`, 'json'), resultsJson(state), 'application/json')}
      >
        Results as JSON
      </button>
      <button @click=${() => work.again()}>Start over</button>
    </div>
  </details>`;
}
