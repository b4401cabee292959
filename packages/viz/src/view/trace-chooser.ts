import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { group } from 'd3-array';
import { panelOf, titleOf } from '../model/channel-words.js';
import { fits } from '../model/search.js';
import { count, plain } from '../model/sentence.js';
import type { State } from '../model/state.js';
import { chosenOf } from '../model/traces.js';
import type { TracesWork } from '../model/traces.js';
import type { ChannelInfo } from '../worker/message.js';
import { define, View } from './base.js';
import { traceChooserStyles } from './trace-chooser.styles.js';
import { shared } from './shared.styles.js';

/** The list of what can be shown: found by a few letters, by part, by what is measured. */
export class TraceChooser extends View {
  static override properties = {
    ...View.properties,
    work: { attribute: false },
    typed: { state: true },
    device: { state: true },
    at: { state: true },
  };
  static override styles = [shared, traceChooserStyles];

  declare work: TracesWork;
  declare typed: string;
  /** Device or mechanism whose channels are shown; '' for all. */
  declare device: string;
  /** Name of the option that the keys are on. */
  declare at: string;

  protected readonly watches: readonly (keyof State)[] = ['picture', 'traces'];

  constructor() {
    super();
    this.typed = '';
    this.device = '';
    this.at = '';
  }

  protected override render(): TemplateResult {
    const { picture } = this.state;
    if (picture === undefined) return html``;
    const chosen = new Set(chosenOf(this.state).map((c) => c.name));
    const found = this.#found(chosen);
    const at = found.some((c) => c.name === this.at) ? this.at : (found[0]?.name ?? '');
    const parts = [...new Set(picture.channels.map((c) => c.of))].sort();
    return html`
      <input
        type="search"
        aria-label="Search traces"
        placeholder="Search, e.g. left rod pressure"
        .value=${this.typed}
        @input=${(e: Event) => (this.typed = (e.target as HTMLInputElement).value)}
        @keydown=${(e: KeyboardEvent) => this.#searchKey(e, at)}
      />
      <div class="tools">
        <select
          aria-label="Of which part"
          @change=${(e: Event) => (this.device = (e.target as HTMLSelectElement).value)}
        >
          <option value="" .selected=${this.device === ''}>every part</option>
          ${parts.map((p) => html`<option value=${p} .selected=${p === this.device}>${plain(p)}</option>`)}
        </select>
        <button @click=${() => this.work.usual()} title="Supply, legs, and one leg's jack">
          Usual
        </button>
        <button ?disabled=${chosen.size === 0} @click=${() => this.work.choose([])}>Clear</button>
      </div>
      <div
        class="list"
        role="listbox"
        aria-label="Traces"
        aria-multiselectable="true"
        tabindex="0"
        aria-activedescendant=${at === '' ? nothing : idOf(at)}
        @keydown=${(e: KeyboardEvent) => this.#listKey(e, found, at)}
      >
        ${[...group(found, (c) => this.#heading(c, chosen))].map(
          ([heading, list]) =>
            html`<div role="group" aria-label=${heading}>
              <div class="part" aria-hidden="true">${heading}</div>
              ${list.map((c) => this.#option(c, chosen.has(c.name), c.name === at))}
            </div>`,
        )}
      </div>
      <p class="soft" role="status">
        ${found.length === 0 ? 'Nothing of that name in this aircraft.' : `${count(found.length, 'trace')}, ${chosen.size} shown`}
      </p>
    `;
  }

  /** Those shown first while nothing is typed; else by part. */
  #heading(c: ChannelInfo, chosen: ReadonlySet<string>): string {
    const all = this.typed === '' && this.device === '';
    return all && chosen.has(c.name) && this.#first.has(c.name) ? 'shown' : plain(c.of);
  }

  /** What was shown when the list was opened: it does not jump about while one chooses. */
  #first: ReadonlySet<string> = new Set();

  override connectedCallback(): void {
    super.connectedCallback();
    this.#first = new Set();
  }

  #found(chosen: ReadonlySet<string>): ChannelInfo[] {
    const { picture } = this.state;
    if (this.#first.size === 0) this.#first = chosen;
    const channels = (picture?.channels ?? []).filter(
      (c) => this.device === '' || c.of === this.device,
    );
    if (this.typed.trim() !== '')
      return channels
        .map((c) => ({
          c,
          score: fits(`${plain(c.name)} ${c.title} ${panelOf(c.quantity)}`, this.typed),
        }))
        .filter((f) => f.score > 0)
        .sort((a, b) => b.score - a.score)
        .map((f) => f.c);
    const first = (c: ChannelInfo): boolean => chosen.has(c.name) && this.#first.has(c.name);
    return [...channels.filter(first), ...channels.filter((c) => !first(c))];
  }

  #option(info: ChannelInfo, selected: boolean, at: boolean): TemplateResult {
    const { name, of } = info;
    return html`<div
      class=${at ? 'option at' : 'option'}
      role="option"
      id=${idOf(name)}
      data-channel=${name}
      aria-selected=${selected}
      title=${name}
      @click=${() => {
        this.at = name;
        this.work.toggle(name);
      }}
    >
      <svg class="box" viewBox="0 0 12 12" aria-hidden="true">
        <path d=${selected ? 'M2.5,6.5L5,9L9.5,3.5' : ''}></path>
      </svg>
      <span>${plain(of)}: ${titleOf(info)}</span>
    </div>`;
  }

  #searchKey(e: KeyboardEvent, at: string): void {
    if (e.key === 'Enter' && at !== '') this.work.toggle(at);
    else if (e.key === 'ArrowDown') this.renderRoot.querySelector<HTMLElement>('.list')?.focus();
    else return;
    e.preventDefault();
  }

  #listKey(e: KeyboardEvent, found: readonly ChannelInfo[], at: string): void {
    const here = found.findIndex((c) => c.name === at);
    const to = {
      ArrowDown: here + 1,
      ArrowUp: here - 1,
      PageDown: here + 10,
      PageUp: here - 10,
      Home: 0,
      End: found.length - 1,
    }[e.key];
    if (to !== undefined) {
      this.at = found[Math.min(Math.max(to, 0), found.length - 1)]?.name ?? '';
      void this.updateComplete.then(() =>
        this.renderRoot.querySelector('.at')?.scrollIntoView({ block: 'nearest' }),
      );
    } else if (e.key === ' ' || e.key === 'Enter') {
      if (at !== '') this.work.toggle(at);
    } else return;
    e.preventDefault();
  }
}

function idOf(name: string): string {
  return `trace-${name}`;
}

define('ww-trace-chooser', TraceChooser);
