import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { comparisonWords, compare, expectedOf, GEAR } from '../model/observed.js';
import { count } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { TestCardWork } from '../model/test-card.js';
import type { TestCardState } from '../model/test-card-state.js';
import type { ObservedSwing } from '../worker/sheet-message.js';
import { define, View } from './base.js';
import { download, fileName } from './download.js';
import { shared } from './shared.styles.js';
import './sheet-conditions.js';
import { sign } from './sign.js';
import './stopwatch.js';
import './swing-entry.js';
import { testCardStyles } from './test-card.styles.js';

/** Rows shown at once; all of a longer sheet are kept. */
const MOST = 40;
/** Entries that do not go together, or cannot be read, told at once. */
const TOLD = 8;

/** The test card bench: the stopwatch, the swings as rows, the one looked at, and the sheet as a file. */
export class TestCard extends View {
  static override properties = { ...View.properties, work: { attribute: false } };
  static override styles = [shared, testCardStyles];

  declare work: TestCardWork;

  protected readonly watches: readonly (keyof State)[] = ['picture', 'testCard', 'system'];

  protected override render(): TemplateResult {
    const { picture, testCard } = this.state;
    const { draft, picked } = testCard;
    if (picture === undefined || draft === undefined) return html``;
    const { swings } = draft.sheet;
    return html`
      ${this.#tools(testCard)} ${this.#offer(testCard)} ${this.#failure(testCard)}
      <ww-stopwatch .store=${this.store} .work=${this.work}></ww-stopwatch>
      <h2>Swings on the sheet</h2>
      ${this.#rows(testCard)} ${this.#contradictions(testCard)}
      ${swings[picked] === undefined ? nothing : html`<ww-swing-entry .store=${this.store} .work=${this.work}></ww-swing-entry>`}
      <h2>The whole sheet</h2>
      <ww-sheet-conditions .store=${this.store} .work=${this.work}></ww-sheet-conditions>
    `;
  }

  #tools({ draft, expectation }: TestCardState): TemplateResult {
    return html`<div class="tools">
      <button data-save @click=${this.#save}>Save sheet</button>
      <button
        @click=${() => this.renderRoot.querySelector<HTMLInputElement>('input[type=file]')?.click()}
      >
        Open sheet…
      </button>
      <input
        type="file"
        accept=".yaml,.yml,.json"
        tabindex="-1"
        aria-hidden="true"
        @change=${this.#open}
      />
      <button
        ?disabled=${draft?.saved !== true || draft.sheet.swings.length === 0}
        title="When this one has been saved"
        @click=${() => this.work.clear()}
      >
        New sheet
      </button>
      <span class="soft" data-saved
        >${draft?.saved === true ? 'Nothing unsaved' : 'Not saved as a file yet; kept on this device'}</span
      >
      <p class="soft expect">
        ${expectation === undefined ? 'The sound run is being computed…' : html`Expected: “${expectation.cardTitle}” without faults, as simulated.`}
      </p>
    </div>`;
  }

  #offer({ offered }: TestCardState): TemplateResult | typeof nothing {
    if (offered === undefined) return nothing;
    const n = offered.sheet.swings.length;
    return html`<div class="box" role="alertdialog" aria-label="A sheet was opened" data-offer>
      <p>${offered.file} has ${count(n, 'swing')}. The sheet here has not been saved.</p>
      <div class="tools">
        <button @click=${() => this.work.files.answerOffer('append')}>Add its swings</button>
        <button @click=${() => this.work.files.answerOffer('replace')}>
          Open it in place of mine
        </button>
        <button @click=${() => this.work.files.answerOffer('leave')}>Leave it</button>
      </div>
    </div>`;
  }

  #failure({ failure, issues, opened }: TestCardState): TemplateResult {
    return html`${failure === '' ? nothing : html`<p class="fail" role="alert">${sign('fail')} ${failure}.</p>`}
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

  #rows({ draft, picked, expectation }: TestCardState): TemplateResult {
    const swings = draft?.sheet.swings ?? [];
    const first = Math.max(swings.length - MOST, 0);
    const row = (swing: ObservedSwing, i: number): TemplateResult => {
      const total = swing.times[GEAR]?.total;
      const due = expectedOf(expectation, swing.direction)?.times[GEAR]?.total;
      const told =
        total === undefined
          ? 'whole gear not timed'
          : `${total.at.toFixed(2)} s${due === undefined ? '' : `, ${comparisonWords(compare(total, due))}`}`;
      return html`<li>
        <button aria-pressed=${i === picked} data-row=${i} @click=${() => this.work.pick(i)}>
          <b>${i + 1}. ${swing.direction}</b> ${told}
        </button>
        <button aria-label="Strike out row ${i + 1}" @click=${() => this.work.strike(i)}>✕</button>
      </li>`;
    };
    return html`
      ${swings.length === 0 ? html`<p class="soft">None yet. Start the watch, or write one by hand.</p>` : nothing}
      ${first > 0 ? html`<p class="soft">The last ${MOST} of ${swings.length}; all are kept.</p>` : nothing}
      <ol>
        ${swings.slice(first).map((s, i) => row(s, first + i))}
      </ol>
      <div class="tools">
        <button @click=${() => this.work.addBlank()}>Write one by hand</button>
        ${draft?.struck === undefined ? nothing : html`<button @click=${() => this.work.putBack()}>Put row ${draft.struck.row + 1} back</button>`}
      </div>
    `;
  }

  #contradictions({ contradictions }: TestCardState): TemplateResult | typeof nothing {
    if (contradictions.length === 0) return nothing;
    return html`<div class="box" role="status" data-contradictions>
      <p class="caution">${sign('caution')} <b>These do not go together:</b></p>
      <ul>
        ${contradictions.slice(0, TOLD).map((c) => html`<li>${rowOf(c.path)}${c.message.replace(/ \(line .*\)$/, '')}</li>`)}
        ${contradictions.length > TOLD ? html`<li>and ${contradictions.length - TOLD} more</li>` : nothing}
      </ul>
    </div>`;
  }

  #save = async (): Promise<void> => {
    const text = await this.work.files.save();
    const sheet = this.state.testCard.draft?.sheet;
    if (text === undefined || sheet === undefined) return;
    download(
      fileName(`${sheet.aircraft.split(',')[0]} observed ${sheet.date}`, 'yaml'),
      text,
      'application/yaml',
    );
    this.store.set({ said: 'The observation sheet is saved.' });
  };

  #open = (e: Event): void => {
    const input = e.target as HTMLInputElement;
    const [file] = input.files ?? [];
    if (file !== undefined) void this.work.files.open(file);
    input.value = '';
  };
}

/** `swings.3.times.left` -> `Row 4, `. */
function rowOf(path: string): string {
  const row = /^swings\.(\d+)\./.exec(path)?.[1];
  return row === undefined ? '' : `Row ${Number(row) + 1}: `;
}

define('ww-test-card', TestCard);
