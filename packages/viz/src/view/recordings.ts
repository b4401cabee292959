import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { titleOf } from '../model/channel-words.js';
import { plain } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { LaidOver, TracesWork } from '../model/traces.js';
import type { Issue, Picture } from '../worker/message.js';
import type { RecordingColumn } from '../worker/recording-message.js';
import { define, View } from './base.js';
import { recordingsStyles } from './recordings.styles.js';
import { shared } from './shared.styles.js';
import { sign } from './sign.js';

/** The slider reaches so far to either side, as a share of the run. */
const REACH = 1;

/** The recordings laid over the traces: what each column is, how far it is moved, what is wrong with it. */
export class Recordings extends View {
  static override properties = { ...View.properties, work: { attribute: false } };
  static override styles = [shared, recordingsStyles];

  declare work: TracesWork;

  protected readonly watches: readonly (keyof State)[] = ['picture', 'traces'];

  protected override render(): TemplateResult {
    const { picture, traces } = this.state;
    if (picture === undefined) return html``;
    return html`
      <p>
        <button @click=${() => this.renderRoot.querySelector('input')?.click()}>
          Open a recording…
        </button>
        <input
          type="file"
          accept=".csv,.tsv,.txt,text/csv"
          multiple
          tabindex="-1"
          aria-hidden="true"
          @change=${this.#file}
        />
      </p>
      ${
        traces.recordings.length === 0
          ? html`<p class="soft">
              A file of comma-separated values: a column of time, and one for each signal with its
              unit, e.g. “left leg angle (deg)”. It can be dropped anywhere on the page, and stays
              in this browser.
            </p>`
          : traces.recordings.map((r) => this.#one(r, picture))
      }
    `;
  }

  #one(laid: LaidOver, picture: Picture): TemplateResult {
    const { id, file, recording, failure } = laid;
    return html`<section aria-label=${file}>
      <header>
        <h2>${file}</h2>
        <button aria-label=${`Remove ${file}`} @click=${() => this.work.remove(id)}>Remove</button>
      </header>
      ${failure === '' ? nothing : html`<p class="fail">${sign('fail')} ${failure}</p>`}
      ${
        recording === undefined
          ? html`<p class="soft">${failure === '' ? 'Being read…' : ''}</p>`
          : html`
              ${
                recording.issues.length === 0
                  ? nothing
                  : html`<ul aria-label="What is wrong">
                      ${recording.issues.map(issueLine)}
                    </ul>`
              }
              ${recording.columns.length === 0 ? nothing : this.#columns(laid, recording.columns, picture)}
              ${recording.series.some((s) => s.channel !== '') ? this.#offset(laid, picture) : html`<p class="soft">Say what a column is to lay it over.</p>`}
            `
      }
    </section>`;
  }

  #columns(
    { id }: LaidOver,
    columns: readonly RecordingColumn[],
    picture: Picture,
  ): TemplateResult {
    return html`<div class="columns">
      ${columns
        .filter((c) => c.kind === 'figures')
        .map(
          (c) =>
            html`<div role="group" aria-label=${c.title}>
              <span class="name">${c.title}</span>
              <input
                aria-label=${`Unit of ${c.title}`}
                .value=${live(c.unit)}
                placeholder="unit"
                @change=${(e: Event) => this.work.setColumn(id, c.index, { unit: (e.target as HTMLInputElement).value.trim() })}
              />
              ${this.#channel(id, c, picture)}
            </div>`,
        )}
    </div>`;
  }

  #channel(id: number, column: RecordingColumn, picture: Picture): TemplateResult {
    const option = (name: string, words: string): TemplateResult =>
      html`<option value=${name} .selected=${live(name === column.channel)}>${words}</option>`;
    const parts = [...new Set(picture.channels.map((c) => c.of))].sort();
    return html`<select
      aria-label=${`What ${column.title} is`}
      @change=${(e: Event) => this.work.setColumn(id, column.index, { channel: (e.target as HTMLSelectElement).value })}
    >
      ${option('', 'not laid over')}
      ${parts.map(
        (part) =>
          html`<optgroup label=${plain(part)}>
            ${picture.channels.filter((c) => c.of === part).map((c) => option(c.name, `${plain(part)}: ${titleOf(c)}`))}
          </optgroup>`,
      )}
    </select>`;
  }

  #offset({ id, file, offset, found, seeking }: LaidOver, picture: Picture): TemplateResult {
    const reach = Math.max(Math.ceil(picture.duration * REACH), Math.ceil(Math.abs(offset)));
    const set = (e: Event): void =>
      this.work.setOffset(id, (e.target as HTMLInputElement).valueAsNumber);
    return html`<div class="offset">
      <span>Moved in time, seconds</span>
      <input
        type="range"
        aria-label=${`Time offset of ${file}`}
        min=${-reach}
        max=${reach}
        step="0.01"
        .value=${live(String(offset))}
        @input=${set}
      />
      <input
        type="number"
        aria-label=${`Time offset of ${file}, seconds`}
        step="0.001"
        .value=${live(String(offset))}
        @change=${set}
      />
      <span>
        <button ?disabled=${seeking} @click=${() => this.work.findOffset(id)}>
          Fit to the run
        </button>
        <span class="soft" role="status"
          >${seeking ? 'looking…' : found === undefined ? '' : `fitted; ${likeness(found.likeness)}`}</span
        >
      </span>
    </div>`;
  }

  #file = (e: Event): void => {
    const input = e.target as HTMLInputElement;
    void this.work.open([...(input.files ?? [])]);
    // So that the same file can be chosen again after it was mended.
    input.value = '';
  };
}

function likeness(share: number): string {
  return `${(share * 100).toFixed(share > 0.99 ? 1 : 0)} % alike`;
}

function issueLine({ line, column, path, message, found, allowed, hint }: Issue): TemplateResult {
  const place = line > 0 ? `Line ${line}, column ${column}: ` : '';
  const what = `${path === '' ? '' : `${path}: `}${message}`;
  const shown = found === '' ? '' : `, found ${found}`;
  const want = allowed === '' ? '' : `. Allowed: ${allowed}`;
  return html`<li class="caution">
    ${sign('caution')} ${place}${what}${shown}${want}${hint === '' ? '' : ` (${hint})`}
  </li>`;
}

define('ww-recordings', Recordings);
