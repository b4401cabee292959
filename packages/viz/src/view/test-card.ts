import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { comparisonWords, compare, dueOf, GEAR } from '../model/observed.js';
import type { Draft } from '../model/draft.js';
import type { State } from '../model/state.js';
import type { TestCardWork } from '../model/test-card.js';
import type { TestCardState } from '../model/test-card-state.js';
import type { ObservedSwing } from '../worker/sheet-message.js';
import { define, View } from './base.js';
import { download, fileName } from './download.js';
import { shared } from './shared.styles.js';
import './sheet-conditions.js';
import { awaited, sheetTold, TOLD } from './sheet-told.js';
import { sign } from './sign.js';
import './stopwatch.js';
import './swing-entry.js';
import { testCardStyles } from './test-card.styles.js';

/** Rows shown at once; all of a longer sheet are kept. */
const MOST = 40;

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
      ${this.#tools(testCard)} ${sheetTold(this.work, testCard)} ${this.#under(draft)}
      <ww-stopwatch .store=${this.store} .work=${this.work}></ww-stopwatch>
      <h2>Swings on the sheet</h2>
      ${this.#rows(testCard)} ${this.#contradictions(testCard)}
      ${swings[picked] === undefined ? nothing : html`<ww-swing-entry .store=${this.store} .work=${this.work}></ww-swing-entry>`}
      <h2>The whole sheet</h2>
      <ww-sheet-conditions .store=${this.store} .work=${this.work}></ww-sheet-conditions>
    `;
  }

  #tools(state: TestCardState): TemplateResult {
    const { draft, expectation } = state;
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
        ${expectation === undefined ? awaited(state) : html`Expected: “${expectation.cardTitle}” without faults${expectation.stood ? ', under the conditions of this sheet' : ''}, as simulated.`}
      </p>
    </div>`;
  }

  /** How the next swings are made, where a check asks for it. */
  #under({ under }: Draft): TemplateResult | typeof nothing {
    if (under === undefined) return nothing;
    return html`<div class="box" data-under>
      <p><b>${under.title}.</b> Swings from now on are noted as made under that.</p>
      <div class="tools">
        <button @click=${() => this.store.set({ bench: 'diagnosis' })}>
          Back to the diagnosis
        </button>
        <button @click=${() => this.work.swingUnder(undefined)}>As usual again</button>
      </div>
    </div>`;
  }

  #rows({ draft, picked, expectation }: TestCardState): TemplateResult {
    const swings = draft?.sheet.swings ?? [];
    const first = Math.max(swings.length - MOST, 0);
    const row = (swing: ObservedSwing, i: number): TemplateResult => {
      const total = swing.times[GEAR]?.total;
      const due = dueOf(expectation, swing)?.times[GEAR]?.total;
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
