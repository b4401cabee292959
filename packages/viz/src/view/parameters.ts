import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import type { EditWork } from '../model/edits.js';
import { asTyped, numberIn, stepOf, typed } from '../model/figure-text.js';
import { count, plain } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { Display, Picture } from '../worker/message.js';
import type { ParameterFacts, ParameterGroup } from '../worker/parameters-message.js';
import { define, View } from './base.js';
import { inForce, parameterRow } from './parameter-row.js';
import type { RowDeeds } from './parameter-row.js';
import { parametersStyles } from './parameters.styles.js';
import { saveAs } from './save.js';
import { shared } from './shared.styles.js';

/** More rows than these help nobody to find one. */
const MOST_ROWS = 60;

/** Every figure of the scenario, by device, to be changed in place; the run follows. */
export class Parameters extends View {
  static override properties = {
    ...View.properties,
    work: { attribute: false },
    query: { state: true },
    open: { state: true },
    at: { state: true },
  };
  static override styles = [shared, parametersStyles];

  declare work: EditWork;
  /** What is looked for. */
  declare query: string;
  /** Names of the groups that are unfolded. */
  declare open: ReadonlySet<string>;
  /** Path of the figure at hand. */
  declare at: string;

  protected readonly watches: readonly (keyof State)[] = [
    'picture',
    'source',
    'edits',
    'changes',
    'parameters',
    'selection',
    'system',
  ];

  /** Typed and not applied, by path. */
  #drafts = new Map<string, string>();

  constructor() {
    super();
    this.query = '';
    this.open = new Set(['fluid']);
    this.at = '';
  }

  protected override updated(_: PropertyValues): void {
    this.work.want();
  }

  protected override render(): TemplateResult {
    const { picture, source, parameters, changes, edits, selection } = this.state;
    if (picture === undefined || source === undefined) return html``;
    const groups = parameters.text === source.text ? parameters.groups : [];
    const here = groups.filter(
      (g) => !g.name.startsWith('cards.') || g.name === `cards.${picture.card}`,
    );
    const part =
      selection.kind === 'part' ? here.find((g) => g.name === selection.name) : undefined;
    const [past, next] = [changes.past.at(-1), changes.future[0]];
    return html`
      <div class="tools">
        <input
          type="search"
          aria-label="Find a figure"
          placeholder="Find: device or figure"
          .value=${this.query}
          @input=${(e: Event) => (this.query = (e.target as HTMLInputElement).value)}
        />
        <button
          ?disabled=${past === undefined}
          title=${past === undefined ? 'Nothing to take back' : `Take back: ${past.what} (Ctrl Z)`}
          @click=${() => this.work.undo()}
        >
          Undo
        </button>
        <button
          ?disabled=${next === undefined}
          title=${next === undefined ? 'Nothing was taken back' : `Make again: ${next.what} (Ctrl Shift Z)`}
          @click=${() => this.work.redo()}
        >
          Redo
        </button>
        <button
          title="The scenario with the changed figures, comments and all (Ctrl S)"
          @click=${() => void saveAs(this.store, this.work)}
        >
          Save as file…
        </button>
        ${
          edits.length === 0
            ? nothing
            : html`<button @click=${() => this.work.resetAll()}>Reset all ${edits.length}</button>`
        }
      </div>
      ${
        groups.length === 0
          ? html`<p class="empty soft">Reading the figures…</p>`
          : part !== undefined && this.query === ''
            ? this.#part(picture, part, here)
            : this.#list(picture, here)
      }
    `;
  }

  /** The one that is picked out elsewhere. */
  #part(picture: Picture, group: ParameterGroup, all: readonly ParameterGroup[]): TemplateResult {
    return html`<div class="one">
        <h2>${titleOf(group)}</h2>
        <button @click=${() => this.store.select({ kind: 'none' })}>Show all</button>
      </div>
      ${this.#note(group)}
      ${
        group.parameters.length === 0
          ? html`<p class="empty soft">It has no figures of its own.</p>`
          : group.parameters.map((f) => this.#row(picture, f, all))
      }`;
  }

  #list(picture: Picture, all: readonly ParameterGroup[]): TemplateResult {
    const words = this.query.toLowerCase().split(/\s+/).filter(Boolean);
    let room = MOST_ROWS;
    let left = 0;
    const shown = all.flatMap((group) => {
      const found =
        words.length === 0
          ? group.parameters
          : group.parameters.filter((f) => fits(words, group, f));
      const open = words.length > 0 || this.open.has(group.name);
      if (found.length === 0) return [];
      // Rows cost time at every run: only those that are looked at are there.
      const rows = open ? found.slice(0, words.length > 0 ? Math.max(0, room) : found.length) : [];
      if (words.length > 0) room -= rows.length;
      left += open ? found.length - rows.length : 0;
      return rows.length === 0 && open ? [] : [{ group, rows, open }];
    });
    if (shown.length === 0) return html`<p class="empty">Nothing of that name.</p>`;
    return html`${shown.map(({ group, rows, open }) => this.#group(picture, group, rows, open, all))}
    ${left > 0 ? html`<p class="empty soft">${left} more: look for something narrower.</p>` : nothing}`;
  }

  #group(
    picture: Picture,
    group: ParameterGroup,
    rows: readonly ParameterFacts[],
    open: boolean,
    all: readonly ParameterGroup[],
  ): TemplateResult {
    const paths = new Set(group.parameters.map((f) => f.path));
    const changed = this.state.edits.filter((e) => paths.has(e.path)).length;
    const fold = (e: Event): void => {
      const unfolded = (e.target as HTMLDetailsElement).open;
      if (this.query !== '' || unfolded === this.open.has(group.name)) return;
      const next = new Set(this.open);
      if (unfolded) next.add(group.name);
      else next.delete(group.name);
      this.open = next;
    };
    return html`<details ?open=${open} data-group=${group.name} @toggle=${fold}>
      <summary>
        <b>${nameOf(group)}</b> <span class="soft">${kindOf(group)}</span>
        ${changed === 0 ? nothing : html`<span class="count">${changed} changed</span>`}
      </summary>
      ${open ? html`${this.#note(group)}${rows.map((f) => this.#row(picture, f, all))}` : nothing}
    </details>`;
  }

  #note(group: ParameterGroup): TemplateResult | typeof nothing {
    return group.note === '' ? nothing : html`<p class="note">${group.note}</p>`;
  }

  #row(picture: Picture, facts: ParameterFacts, all: readonly ParameterGroup[]): TemplateResult {
    const set = `cards.${picture.card}.set.${facts.path}`;
    const card = all.find((g) => g.name === `cards.${picture.card}`);
    return parameterRow({
      facts,
      picture,
      state: this.state,
      draft: this.#drafts.get(facts.path),
      open: this.at === facts.path,
      ruled: card?.parameters.find((f) => f.path === set),
      deeds: this.#deeds,
    });
  }

  readonly #deeds: RowDeeds = {
    draft: (facts, text) => {
      this.#drafts.set(facts.path, text);
    },
    apply: (facts, display) => this.#apply(facts, display),
    put: (facts, value) => this.work.put(facts, value),
    slide: (facts, value) => this.work.put(facts, value, `slide ${facts.path}`),
    settle: () => this.store.settle(),
    reset: (facts) => {
      this.#drafts.delete(facts.path);
      this.work.reset(facts);
      this.renderRoot.querySelector<HTMLElement>(`#${facts.path.replaceAll('.', '_')}`)?.focus();
    },
    key: (e, facts, display) => this.#key(e, facts, display),
    at: (path) => {
      if (this.at !== path) this.store.settle();
      this.at = path;
    },
  };

  #apply(facts: ParameterFacts, display: Display): void {
    const draft = this.#drafts.get(facts.path);
    if (draft === undefined) return;
    this.#drafts.delete(facts.path);
    const { value } = inForce({ facts, picture: this.state.picture as Picture, state: this.state });
    const refused = this.state.changes.refused.some((r) => r.edit.path === facts.path);
    // Typed back to what holds: nothing to do, and what was refused is forgotten.
    const same = typeof value === 'number' && draft.trim() === numberIn(value, display);
    if (same && !refused) this.requestUpdate();
    else if (same && !this.state.edits.some((e) => e.path === facts.path)) this.work.reset(facts);
    else
      this.work.put(
        facts,
        facts.kind === 'text' ? draft.replace(/\s+/g, ' ') : typed(draft, display),
      );
  }

  #key(e: KeyboardEvent, facts: ParameterFacts, display: Display): void {
    const draft = this.#drafts.get(facts.path);
    if (e.key === 'Enter' && !e.shiftKey) {
      e.preventDefault();
      this.#apply(facts, display);
    } else if (e.key === 'Escape') {
      this.#drafts.delete(facts.path);
      this.work.forgive(facts);
      this.requestUpdate();
    } else if ((e.ctrlKey || e.metaKey) && e.key.toLowerCase() === 'z' && draft === undefined) {
      // Nothing typed to take back: the last change then.
      e.preventDefault();
      if (e.shiftKey) this.work.redo();
      else this.work.undo();
    } else if ((e.key === 'ArrowUp' || e.key === 'ArrowDown') && facts.kind === 'number') {
      this.#step(e, facts, display);
    }
  }

  /** By about a hundredth of the figure; ten times as far with Shift. */
  #step(e: KeyboardEvent, facts: ParameterFacts, display: Display): void {
    const shown = Number((e.target as HTMLInputElement).value);
    if (!Number.isFinite(shown) || facts.range === undefined) return;
    e.preventDefault();
    this.#drafts.delete(facts.path);
    const step = stepOf(shown) * (e.shiftKey ? 10 : 1) * (e.key === 'ArrowUp' ? 1 : -1);
    const si = (shown + step - display.shift) / display.factor;
    const [low, high] = facts.range;
    const value = asTyped(Math.min(high, Math.max(low, si)), display);
    this.work.put(facts, value, `step ${facts.path}`);
  }
}

function fits(words: readonly string[], group: ParameterGroup, f: ParameterFacts): boolean {
  const text = `${nameOf(group)} ${kindOf(group)} ${f.title} ${f.path}`.toLowerCase();
  return words.every((w) => text.includes(w));
}

/** Device or mechanism by its name; the others by what they are. */
function nameOf({ name, title, parameters }: ParameterGroup): string {
  const path = parameters[0]?.path ?? '';
  return /^(components|mechanisms|nodes)\./.test(path)
    ? plain(name)
    : name.startsWith('cards.')
      ? 'This test card'
      : title;
}

function kindOf(group: ParameterGroup): string {
  const own = nameOf(group);
  const kind = own === group.title ? '' : group.title;
  return [kind, count(group.parameters.length, 'figure')].filter(Boolean).join(', ');
}

const titleOf = (group: ParameterGroup): string => nameOf(group);

define('ww-parameters', Parameters);
