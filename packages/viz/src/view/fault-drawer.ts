import { css, html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { plain } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { FaultEntry, FaultFacts, Picture } from '../worker/message.js';
import { define, View } from './base.js';
import { shared } from './shared.styles.js';

const FIRST_SEVERITY = 0.5;

/** Faults put into the run: which, on what, how severe; every change simulates again. */
export class FaultDrawer extends View {
  static override properties = { ...View.properties, kind: { state: true }, on: { state: true } };
  static override styles = [
    shared,
    css`
      :host {
        padding: 0.7rem;
      }
      form {
        display: grid;
        grid-template-columns: 1fr auto;
        gap: 0.5rem;
        align-items: end;
        margin-bottom: 0.8rem;
      }
      form label {
        font-size: 0.82rem;
        color: var(--ink-soft);
        min-width: 0;
        grid-column: 1 / -1;
      }
      form label.short {
        grid-column: 1;
      }
      select {
        display: block;
        width: 100%;
        color: var(--ink);
        font-size: 0.95rem;
      }
      .add {
        background: var(--accent);
        color: var(--on-accent);
        border-color: var(--accent);
      }
      .add:hover:not(:disabled) {
        background: var(--accent);
        filter: brightness(1.12);
      }
      .fault {
        border: 1px solid var(--rule-strong);
        border-radius: var(--round);
        padding: 0.6rem 0.7rem;
        margin-bottom: 0.6rem;
      }
      .top {
        display: flex;
        gap: 0.5rem;
        align-items: flex-start;
        justify-content: space-between;
      }
      .severity {
        display: grid;
        grid-template-columns: auto 1fr 3rem;
        gap: 0.6rem;
        align-items: center;
        margin: 0.4rem 0;
        font-size: 0.88rem;
      }
      output {
        text-align: right;
        font-weight: 700;
      }
      dl {
        margin: 0.3rem 0 0;
        font-size: 0.87rem;
        display: grid;
        grid-template-columns: auto 1fr;
        gap: 0.2rem 0.7rem;
      }
      dt {
        color: var(--ink-soft);
      }
      dd {
        margin: 0;
      }
      summary {
        cursor: pointer;
        font-size: 0.87rem;
        color: var(--ink-soft);
      }
    `,
  ];

  /** The fault and the device chosen in the form. */
  declare kind: string;
  declare on: string;

  protected readonly watches: readonly (keyof State)[] = ['picture', 'faults', 'proposed'];

  constructor() {
    super();
    this.kind = '';
    this.on = '';
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    const { proposed } = this.state;
    if (proposed === undefined) return;
    this.kind = proposed.fault;
    this.on = proposed.on;
    this.store.set({ proposed: undefined });
  }

  protected override render(): TemplateResult {
    const { picture, faults } = this.state;
    if (picture === undefined) return html``;
    const possible = picture.catalogue.filter((f) => this.#places(picture, f.kind).length > 0);
    const kind = possible.some((f) => f.kind === this.kind) ? this.kind : (possible[0]?.kind ?? '');
    const places = this.#places(picture, kind);
    const on = places.includes(this.on) ? this.on : (places[0] ?? '');
    const there = faults.some((f) => f.fault === kind && f.on === on);
    return html`
      <form @submit=${(e: Event) => this.#add(e, { fault: kind, on, severity: FIRST_SEVERITY })}>
        <label
          >Fault
          <select
            data-choose="fault"
            @change=${(e: Event) => (this.kind = (e.target as HTMLSelectElement).value)}
          >
            ${this.#choices(possible, kind)}
          </select>
        </label>
        <label class="short"
          >On
          <select
            data-choose="device"
            @change=${(e: Event) => (this.on = (e.target as HTMLSelectElement).value)}
          >
            ${places.map((p) => html`<option value=${p} ?selected=${p === on}>${plain(p)}</option>`)}
          </select>
        </label>
        <button class="add" type="submit" ?disabled=${kind === '' || there}>Put in</button>
      </form>
      ${faults.length === 0 ? html`<p class="soft">No fault is in this run. Put one in and watch what changes.</p>` : faults.map((f, i) => this.#fault(picture, f, i))}
    `;
  }

  /** A hundred faults are found by what they befall. */
  #choices(possible: readonly FaultFacts[], kind: string): TemplateResult[] {
    return [...new Set(possible.map((f) => f.group))].map(
      (group) =>
        html`<optgroup label=${capital(group)}>
          ${possible
            .filter((f) => f.group === group)
            .map(
              (f) =>
                html`<option value=${f.kind} ?selected=${f.kind === kind}>
                  ${f.title}${f.silent === true ? ' (inspection only)' : ''}
                </option>`,
            )}
        </optgroup>`,
    );
  }

  #places(picture: Picture, kind: string): string[] {
    return [
      ...picture.devices.filter((d) => d.faults.includes(kind)).map((d) => d.name),
      ...(picture.fluidFaults.includes(kind) ? ['fluid'] : []),
    ];
  }

  #fault(picture: Picture, f: FaultEntry, index: number): TemplateResult {
    const facts = picture.catalogue.find((c) => c.kind === f.fault);
    const title = facts?.title ?? plain(f.fault);
    return html`<section class="fault" aria-label="${title} on ${plain(f.on)}">
      <div class="top">
        <h2>${title}<br /><span class="soft">on ${plain(f.on)}</span></h2>
        <button
          @click=${() => this.#remove(index)}
          aria-label="Take out: ${title} on ${plain(f.on)}"
        >
          Take out
        </button>
      </div>
      <label class="severity"
        >Severity
        <input
          type="range"
          min="0"
          max="1"
          step="0.01"
          .value=${String(f.severity)}
          @input=${(e: Event) => this.#severity(index, e)}
          @change=${() => this.store.settle()}
        />
        <output>${f.severity.toFixed(2)}</output>
      </label>
      ${
        facts?.silent === true
          ? html`<p class="soft">No stopwatch or gauge shows this one; an inspection does.</p>`
          : nothing
      }
      ${facts === undefined ? nothing : this.#facts(facts)}
    </section>`;
  }

  #facts(f: FaultFacts): TemplateResult {
    return html`<dl>
        <dt>Caution</dt>
        <dd>${f.caution}</dd>
      </dl>
      <details>
        <summary>What it is, how it shows, how it is confirmed</summary>
        <dl>
          <dt>What</dt>
          <dd>${f.meaning}</dd>
          <dt>At 1.00</dt>
          <dd>${f.worst}</dd>
          <dt>Shows</dt>
          <dd>${f.shows}</dd>
          <dt>Confirm</dt>
          <dd>${f.confirm}</dd>
          <dt>Put right</dt>
          <dd>${f.remedy}</dd>
        </dl>
      </details>`;
  }

  #add(e: Event, entry: FaultEntry): void {
    e.preventDefault();
    this.store.setFaults([...this.state.faults, entry]);
  }

  #remove(index: number): void {
    this.store.setFaults(this.state.faults.filter((_, i) => i !== index));
  }

  #severity(index: number, e: Event): void {
    const severity = Number((e.target as HTMLInputElement).value);
    const faults = this.state.faults.map((f, i) => (i === index ? { ...f, severity } : f));
    this.store.setFaults(faults, `severity ${index}`);
  }
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

define('ww-fault-drawer', FaultDrawer);
