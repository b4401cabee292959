import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { isFilled } from '../model/diagnosis.js';
import type { DiagnosisWork } from '../model/diagnosis.js';
import { count } from '../model/sentence.js';
import type { State } from '../model/state.js';
import { define, View } from './base.js';
import { diagnosisChecks } from './diagnosis-checks.js';
import { diagnosisRanking, verdictOf } from './diagnosis-ranking.js';
import { diagnosisStyles } from './diagnosis.styles.js';
import { sheetTold } from './sheet-told.js';
import { shared } from './shared.styles.js';
import { sign } from './sign.js';
import { testCardStyles } from './test-card.styles.js';

const STANDING = {
  nothing: 'caution',
  open: 'caution',
  established: 'note',
  'none fits': 'fail',
} as const;

/** The diagnosis bench: what explains the sheet on the desk, how sure that is, and which check to do next. */
export class Diagnosis extends View {
  static override properties = { ...View.properties, work: { attribute: false } };
  static override styles = [shared, testCardStyles, diagnosisStyles];

  declare work: DiagnosisWork;

  protected readonly watches: readonly (keyof State)[] = [
    'picture',
    'testCard',
    'diagnosis',
    'system',
    'faults',
  ];

  protected override render(): TemplateResult {
    const { diagnosis, testCard, system } = this.state;
    const sheet = testCard.draft?.sheet;
    if (sheet === undefined) return html``;
    const ranking = diagnosis.ranking?.[system];
    const filled = isFilled(sheet);
    return html`
      ${this.#tools()} ${sheetTold(this.work.card, testCard)}
      ${diagnosis.failure === '' ? nothing : html`<p class="fail" role="alert">${sign('fail')} No diagnosis: ${diagnosis.failure}. <button @click=${() => this.work.again()}>Once more</button></p>`}
      ${
        filled
          ? nothing
          : html`<p class="empty" data-empty>
              Nothing is on the sheet yet. Time a swing on the test
              card${this.work.example === undefined ? ' or open' : ', look at an example, or open'}
              a sheet that was saved.
            </p>`
      }
      ${filled ? this.#progress() : nothing}
      ${
        ranking === undefined || !filled
          ? nothing
          : html`<p class="verdict" data-standing=${ranking.standing}>
                ${sign(STANDING[ranking.standing])} <b>${verdictOf(ranking)}</b>
              </p>
              ${diagnosisRanking(this.work, diagnosis, system)}
              ${ranking.unused.length === 0 ? nothing : html`<p class="soft">Not used: ${ranking.unused.join('; ')}.</p>`}
              ${diagnosisChecks(this.work, diagnosis, ranking, sheet)}`
      }
    `;
  }

  #tools(): TemplateResult {
    const { swings = [], looks = [] } = this.work.card.sheet ?? {};
    return html`<div class="tools">
      <button @click=${() => this.renderRoot.querySelector<HTMLInputElement>('input')?.click()}>
        Open sheet…
      </button>
      <input
        type="file"
        accept=".yaml,.yml,.json"
        tabindex="-1"
        aria-hidden="true"
        @change=${this.#open}
      />
      ${this.work.example === undefined ? nothing : html`<button data-example @click=${() => this.work.openExample()}>An example</button>`}
      <button @click=${() => this.store.set({ bench: 'test-card' })}>To the test card</button>
      <span class="soft"
        >On the sheet:
        ${count(swings.length, 'swing')}${looks.length === 0 ? '' : `, ${count(looks.length, 'look')}`}</span
      >
    </div>`;
  }

  /** Of one height whether it is at work or done, so that nothing below moves. */
  #progress(): TemplateResult {
    const { busy, share, whole } = this.state.diagnosis;
    return html`<div class="progress" data-busy-diagnosis=${busy}>
      ${
        busy
          ? html`<progress
                max="1"
                value=${share}
                aria-label="Share of the diagnosis done"
              ></progress>
              <output>${Math.floor(share * 100)}&nbsp;%</output>
              <button @click=${() => this.work.stop()}>Stop</button>
              <span class="soft"
                >${whole ? 'The ranking stands; swings that would tell more are weighed.' : 'The ranking is refined as it goes.'}</span
              >`
          : html`<span class="soft"
                >${whole ? 'All that was wanted was played.' : 'Stopped: the ranking is a rough one.'}</span
              >
              ${whole ? nothing : html`<button @click=${() => this.work.again()}>Go on</button>`}`
      }
    </div>`;
  }

  #open = (e: Event): void => {
    const input = e.target as HTMLInputElement;
    const [file] = input.files ?? [];
    if (file !== undefined) void this.work.card.files.open(file);
    input.value = '';
  };
}

define('ww-diagnosis', Diagnosis);
