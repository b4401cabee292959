/** What to do next, and what was done: looks and swings that checks asked for, to be taken back. */
import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { DiagnosisState } from '../model/diagnosis-state.js';
import type { DiagnosisWork } from '../model/diagnosis.js';
import { plain } from '../model/sentence.js';
import type { CheckFacts, Ranking } from '../worker/diagnosis-message.js';
import type { ObservationSheet } from '../worker/sheet-message.js';
import type { System } from '../worker/message.js';
import { sign } from './sign.js';

/** Checks that are shown at once. */
const FIRST = 4;

export function diagnosisChecks(
  work: DiagnosisWork,
  { whole, busy }: DiagnosisState,
  { checks, looks }: Ranking[System],
  sheet: ObservationSheet,
): TemplateResult {
  return html`<h2>Next check</h2>
    ${
      checks.length > 0
        ? html`<p class="soft">What tells most for each minute of work comes first.</p>`
        : html`<p class="soft" data-no-check>
            ${busy ? 'Being worked out…' : whole ? 'No check of the catalogue would tell more.' : 'Not worked out yet.'}
          </p>`
    }
    ${list(work, checks.slice(0, FIRST), 'Next checks')}
    ${
      checks.length > FIRST
        ? html`<details>
            <summary>${checks.length - FIRST} others, which tell less for each minute</summary>
            ${list(work, checks.slice(FIRST), 'Other checks')}
          </details>`
        : nothing
    }
    ${journal(work, sheet, looks)}`;
}

function list(work: DiagnosisWork, checks: readonly CheckFacts[], label: string): TemplateResult {
  return html`<ol class="checks" aria-label=${label}>
    ${checks.map((c) => html`<li data-check="${c.check} ${c.on}">${check(work, c)}</li>`)}
  </ol>`;
}

function check(work: DiagnosisWork, c: CheckFacts): TemplateResult {
  const name = c.on === '' ? c.title : `${c.title}: ${plain(c.on)}`;
  return html`<h3>${name}</h3>
    <p><b class="number">${c.minutes} min</b> · ${c.tells}</p>
    <p class="caution">${sign('caution')} ${c.caution}</p>
    <details>
      <summary>How it is done; needs ${c.tools}</summary>
      <p>${c.how}</p>
    </details>
    <div class="tools">
      ${
        c.conditions === undefined
          ? html`<button aria-label="${name}: found" @click=${() => work.look(c, true)}>
                Found
              </button>
              <button aria-label="${name}: not found" @click=${() => work.look(c, false)}>
                Not found
              </button>`
          : html`<button @click=${() => work.swing(c)}>Time a swing under that</button>`
      }
    </div>`;
}

/** Looks and swings that checks have put on the sheet. */
function journal(
  work: DiagnosisWork,
  { looks = [], swings }: ObservationSheet,
  words: readonly string[],
): TemplateResult | typeof nothing {
  const made = swings
    .map((swing, row) => ({ swing, row }))
    .filter(({ swing }) => Object.keys(swing.conditions).length > 0);
  const struck = work.card.struck;
  if (looks.length + made.length === 0 && struck === undefined) return nothing;
  return html`<h2>Checks done</h2>
    <ul class="journal">
      ${looks.map(
        ({ check: kind, on, found }, i) =>
          html`<li>
            <span
              >${words[i] ?? `${plain(kind)}, ${plain(on)}: ${found ? 'found' : 'not found'}`}</span
            >
            <button
              aria-label="Take back: ${plain(kind)}, ${plain(on)}"
              @click=${() => work.takeBack(i)}
            >
              Take back
            </button>
          </li>`,
      )}
      ${made.map(
        ({ swing, row }) =>
          html`<li>
            <span
              >Row ${row + 1}, ${swing.direction}:
              ${swing.note === '' ? 'other conditions' : swing.note}</span
            >
            <button aria-label="Strike out row ${row + 1}" @click=${() => work.card.strike(row)}>
              Take back
            </button>
          </li>`,
      )}
      ${struck === undefined ? nothing : html`<li><span>Row ${struck + 1} is struck out.</span><button @click=${() => work.card.putBack()}>Put it back</button></li>`}
    </ul>`;
}
