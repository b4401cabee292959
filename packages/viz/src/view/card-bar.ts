import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { demos } from '../model/demos.js';
import type { State } from '../model/state.js';
import { define, View } from './base.js';
import { shared } from './shared.styles.js';

/** Which aircraft, which test card, whose units. */
export class CardBar extends View {
  static override styles = [
    shared,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        gap: 0.4rem 0.8rem;
        align-items: center;
        min-width: 0;
      }
      label {
        display: inline-flex;
        align-items: center;
        gap: 0.4rem;
        min-width: 0;
        font-size: 0.85rem;
        color: var(--ink-soft);
      }
      select {
        color: var(--ink);
        font-size: 0.95rem;
        min-width: 0;
        max-width: 100%;
        text-overflow: ellipsis;
      }
      .card {
        flex: 1 1 13rem;
      }
      .card select {
        flex: 1;
        max-width: 24rem;
      }
      .file select {
        max-width: 14rem;
      }
      .group {
        display: inline-flex;
      }
      .group button + button {
        margin-left: -1px;
      }
      .group button:first-child {
        border-radius: var(--round) 0 0 var(--round);
      }
      .group button:last-child {
        border-radius: 0 var(--round) var(--round) 0;
      }
      input[type='file'] {
        display: none;
      }
      .busy {
        font-size: 0.85rem;
        display: inline-flex;
        gap: 0.4rem;
        align-items: center;
      }
    `,
  ];

  protected readonly watches: readonly (keyof State)[] = ['picture', 'source', 'busy', 'system'];

  protected override render(): TemplateResult {
    const { picture, source, busy, system } = this.state;
    const known = demos.some((d) => d.file === source?.file);
    const units = (value: 'us' | 'metric', word: string): TemplateResult =>
      html`<button aria-pressed=${system === value} @click=${() => this.store.setSystem(value)}>
        ${word}
      </button>`;
    return html`
      <label class="file"
        >Aircraft
        <select @change=${this.#demo}>
          ${source === undefined || known ? nothing : html`<option selected value="">${source.file}</option>`}
          ${demos.map((d) => html`<option value=${d.file} ?selected=${d.file === source?.file}>${titleOf(d.text)}</option>`)}
        </select>
      </label>
      <label class="card"
        >Test card
        <select
          data-choose="card"
          ?disabled=${picture === undefined}
          @change=${(e: Event) => this.store.chooseCard((e.target as HTMLSelectElement).value)}
        >
          ${picture?.cards.map((c) => html`<option value=${c.name} ?selected=${c.name === picture.card}>${c.title}</option>`)}
        </select>
      </label>
      ${busy ? html`<span class="busy" data-busy>Simulating… <button @click=${() => this.store.stop()}>Stop</button></span>` : nothing}
      <button
        @click=${() => this.choose()}
        title="Open a scenario file (O), or drop it anywhere on the page"
      >
        Open file…
      </button>
      <input
        type="file"
        accept=".yaml,.yml"
        tabindex="-1"
        aria-hidden="true"
        @change=${this.#file}
      />
      <span class="group" role="group" aria-label="Units"
        >${units('us', 'US')}${units('metric', 'Metric')}</span
      >
    `;
  }

  /** Shows the file chooser. */
  choose(): void {
    this.renderRoot.querySelector<HTMLInputElement>('input[type=file]')?.click();
  }

  #demo = (e: Event): void => {
    const demo = demos.find((d) => d.file === (e.target as HTMLSelectElement).value);
    if (demo !== undefined) this.store.open(demo);
  };

  #file = (e: Event): void => {
    const input = e.target as HTMLInputElement;
    const file = input.files?.[0];
    if (file !== undefined) void this.store.openFile(file);
    // So that the same file can be chosen again after it was mended.
    input.value = '';
  };
}

/** The title line of a scenario, for the list of those that come with the page. */
function titleOf(text: string): string {
  const line = /^title:\s*(.+)$/m.exec(text)?.[1] ?? '';
  return line.replace(/^(['"])(.*)\1$/, '$2');
}

define('ww-card-bar', CardBar);
