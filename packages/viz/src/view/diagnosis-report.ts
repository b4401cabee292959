import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { CAUTIONS } from '@wheelwell/core';
import { isFilled } from '../model/diagnosis.js';
import { plain } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { RankedLine } from '../worker/diagnosis-message.js';
import { define, View } from './base.js';
import { cardSheetStyles } from './card-sheet.styles.js';
import { comparisonTable, noteOf, remedies } from './diagnosis-cause.js';
import { titleOf, verdictOf } from './diagnosis-ranking.js';
import { reportStyles } from './diagnosis-cause.styles.js';
import { shared } from './shared.styles.js';

/** Entries and checks on paper. */
const MOST = 60;
const NEXT = 5;

/** The diagnosis on paper: cautions, what was seen, what was concluded and how sure, what next. It prints alone. */
export class DiagnosisReport extends View {
  static override styles = [shared, cardSheetStyles, reportStyles];

  protected readonly watches: readonly (keyof State)[] = ['diagnosis', 'system', 'testCard'];

  protected override render(): TemplateResult {
    const { diagnosis, system, testCard } = this.state;
    const report = diagnosis.ranking?.[system];
    const sheet = testCard.draft?.sheet;
    if (report === undefined || !isFilled(sheet))
      return html`<p class="soft">The report stands here as soon as there is a ranking.</p>`;
    const first = report.ranking.find((line) => line.members.length > 0)?.members[0];
    return html`
      <header>
        <h2>Diagnosis: ${report.title}</h2>
        <button @click=${this.#print}>Print</button>
      </header>
      <div class="cautions">
        <ul>
          ${CAUTIONS.map((c) => html`<li><b>${c.head}</b> ${c.text}</li>`)}
        </ul>
      </div>
      <p class="lead">
        ${report.swings}${report.about.map(([head, text]) => `; ${head} ${text}`).join('')}.
        ${diagnosis.whole ? '' : 'Not all was played: the figures are rough.'}
      </p>
      <p class="verdict">${verdictOf(report)}</p>
      <div class="block">
        <h3>What explains it</h3>
        <table>
          <thead>
            <tr>
              <th scope="col">Cause</th>
              <th scope="col">Probability</th>
              <th scope="col">Severity fitted (middle 90 %)</th>
            </tr>
          </thead>
          <tbody>
            ${report.ranking.map(rankedRow)}
          </tbody>
        </table>
      </div>
      ${
        report.looks.length === 0
          ? nothing
          : html`<h3>Checks done</h3>
              <ul>
                ${report.looks.map((look) => html`<li>${look}</li>`)}
              </ul>`
      }
      ${
        first === undefined
          ? nothing
          : html`<h3>Seen, and foretold by: ${titleOf(first)}</h3>
              ${noteOf(first)} ${comparisonTable(first.comparisons.slice(0, MOST))}`
      }
      ${report.unused.length === 0 ? nothing : html`<p>Not used: ${report.unused.join('; ')}.</p>`}
      ${
        report.checks.length === 0
          ? nothing
          : html`<h3>Next</h3>
              <ol>
                ${report.checks
                  .slice(0, NEXT)
                  .map(
                    (c) =>
                      html`<li>
                        <b>${c.title}${c.on === '' ? '' : `: ${plain(c.on)}`}</b>, ${c.minutes} min;
                        ${c.tells}. ${c.how} Needs: ${c.tools}. <b>CAUTION</b> ${c.caution}
                      </li>`,
                  )}
              </ol>`
      }
      ${first === undefined ? nothing : remedies(first)}
      <div class="block signed">
        <p>${report.defers}</p>
        <p class="rule">Done by <span></span> Date <span></span></p>
        <p class="rule">Checked against approved data (reference) <span></span></p>
        <p class="rule">Signature and licence of the person who signs <span></span></p>
      </div>
    `;
  }

  /** The page hides everything else for as long as it prints. */
  #print = (): void => {
    this.dispatchEvent(new CustomEvent('print-panel', { bubbles: true, composed: true }));
  };
}

function rankedRow({ members, title, percent, odds, more }: RankedLine): TemplateResult {
  const [first, ...others] = members;
  return html`<tr>
    <th scope="row">
      ${first === undefined ? title : titleOf(first)}
      ${others.length === 0 ? nothing : html`<br />or ${others.map((m) => `${titleOf(m)} (${m.percent})`).join('; or ')}${more === 0 ? '' : `; or ${more} more`}`}
    </th>
    <td>${percent}, ${odds}</td>
    <td>${first?.severityText}</td>
  </tr>`;
}

define('ww-diagnosis-report', DiagnosisReport);
