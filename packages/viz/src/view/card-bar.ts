import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
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
      @media (min-width: 1180px) {
        /* One row: the names give way before the units do. */
        :host {
          flex-wrap: nowrap;
        }
        .file {
          flex: 0 1 auto;
        }
        .file select {
          max-width: 9rem;
        }
      }
      @media (min-width: 1500px) {
        .file select {
          max-width: 22rem;
        }
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
      @media (max-width: 560px) {
        .file,
        .card {
          flex: 1 1 100%;
        }
        .file select,
        .card select {
          flex: 1;
          max-width: none;
        }
      }
      @media (max-width: 1400px) {
        /* Still there by their keys. */
        :host([large]) .minor {
          display: none;
        }
        :host([large]) {
          flex-wrap: nowrap;
        }
      }
      input[type='file'] {
        display: none;
      }
    `,
  ];

  protected readonly watches: readonly (keyof State)[] = [
    'picture',
    'source',
    'asked',
    'files',
    'system',
  ];

  protected override render(): TemplateResult {
    const { picture, source, asked, files, system } = this.state;
    // What has just been chosen; when it comes to nothing, what is on show again.
    const file = (asked?.source ?? source)?.file;
    const card = asked === undefined || asked.card === '' ? picture?.card : asked.card;
    const units = (value: 'us' | 'metric', word: string): TemplateResult =>
      html`<button aria-pressed=${system === value} @click=${() => this.store.setSystem(value)}>
        ${word}
      </button>`;
    return html`
      <label class="file"
        >Aircraft
        <select data-choose="aircraft" @change=${this.#source}>
          ${demos.map((d) => html`<option value=${d.file} .selected=${live(d.file === file)}>${titleOf(d.text)}</option>`)}
          ${files.map((f) => html`<option value=${f.file} .selected=${live(f.file === file)}>${f.file}</option>`)}
        </select>
      </label>
      <label class="card"
        >Test card
        <select
          data-choose="card"
          ?disabled=${picture === undefined}
          @change=${(e: Event) => this.store.chooseCard((e.target as HTMLSelectElement).value)}
        >
          ${picture?.cards.map((c) => html`<option value=${c.name} .selected=${live(c.name === card)}>${c.title}</option>`)}
        </select>
      </label>
      <button
        class="minor"
        @click=${() => this.choose()}
        title="Open a scenario file (O), or drop it anywhere on the page"
      >
        Open file…
      </button>
      <input
        type="file"
        accept=".yaml,.yml"
        multiple
        tabindex="-1"
        aria-hidden="true"
        @change=${this.#file}
      />
      <span class="group minor" role="group" aria-label="Units"
        >${units('us', 'US')}${units('metric', 'Metric')}</span
      >
    `;
  }

  /** Shows the file chooser. */
  choose(): void {
    this.renderRoot.querySelector<HTMLInputElement>('input[type=file]')?.click();
  }

  #source = (e: Event): void => {
    const { value } = e.target as HTMLSelectElement;
    const source = [...demos, ...this.state.files].find((s) => s.file === value);
    if (source !== undefined) this.store.open(source);
  };

  #file = (e: Event): void => {
    const input = e.target as HTMLInputElement;
    void this.store.openFiles([...(input.files ?? [])]);
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
