/** What is to be said of a sheet that was opened: what could not be read, what is done with the one on the desk. */
import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { count } from '../model/sentence.js';
import type { TestCardState } from '../model/test-card-state.js';
import type { TestCardWork } from '../model/test-card.js';
import { sign } from './sign.js';

/** Entries that do not go together, or cannot be read, told at once. */
export const TOLD = 8;

export function sheetTold(work: TestCardWork, state: TestCardState): TemplateResult {
  return html`${offer(work, state)} ${failure(state)}`;
}

/** In place of what is expected, as long as there is none. */
export function awaited({ failure: why }: TestCardState): string {
  return why === '' ? 'The sound run is being computed…' : 'There is no sound run to compare with.';
}

function offer(work: TestCardWork, { offered }: TestCardState): TemplateResult | typeof nothing {
  if (offered === undefined) return nothing;
  const n = offered.sheet.swings.length;
  return html`<div class="box" role="alertdialog" aria-label="A sheet was opened" data-offer>
    <p>${offered.file} has ${count(n, 'swing')}. The sheet here has not been saved.</p>
    <div class="tools">
      <button @click=${() => work.files.answerOffer('append')}>Add its swings</button>
      <button @click=${() => work.files.answerOffer('replace')}>Open it in place of mine</button>
      <button @click=${() => work.files.answerOffer('leave')}>Leave it</button>
    </div>
  </div>`;
}

function failure({ failure: why, issues, opened }: TestCardState): TemplateResult {
  return html`${why === '' ? nothing : html`<p class="fail" role="alert">${sign('fail')} ${why}.</p>`}
  ${
    issues.length === 0
      ? nothing
      : html`<div class="box" role="alert" data-issues>
          <p>
            <b>${opened}: ${count(issues.length, 'entry', 'entries')} could not be read.</b> The
            rest is here; the file is as it was.
          </p>
          <ul>
            ${issues.slice(0, TOLD).map((i) => html`<li>Line ${i.line}, ${i.path}: ${i.message}${i.found === '' ? '' : `, found “${i.found}”`}${i.allowed === '' ? '' : `; allowed: ${i.allowed}`}${i.hint === '' ? '' : ` (${i.hint})`}</li>`)}
            ${issues.length > TOLD ? html`<li>and ${issues.length - TOLD} more</li>` : nothing}
          </ul>
        </div>`
  }`;
}
