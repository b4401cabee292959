import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { gaugeAt } from '../model/circuit-now.js';
import { flagOn, stateAt, stretches } from '../model/history.js';
import { plain, SEVERITY_WORD, withUnit } from '../model/sentence.js';
import { valueAt } from '../model/series.js';
import type { State } from '../model/state.js';
import type { PartFacts } from '../worker/circuit-message.js';
import type { DeviceFacts, Picture } from '../worker/message.js';
import { define, View } from './base.js';
import { shared } from './shared.styles.js';
import { sign } from './sign.js';

/** All about one part of the circuit: what it reads at the play head, its figures, what can befall it. */
export class PartCard extends View {
  static override properties = { ...View.properties, name: { attribute: false } };
  static override styles = [
    shared,
    css`
      :host {
        padding: 0.5rem 0.7rem 0.8rem;
        font-size: 0.87rem;
      }
      header {
        display: flex;
        justify-content: space-between;
        gap: 0.5rem;
        align-items: start;
      }
      h2::first-letter {
        text-transform: uppercase;
      }
      h3 {
        margin-top: 0.7rem;
        font-size: 0.87rem;
      }
      dl {
        margin: 0.2rem 0 0;
        display: grid;
        grid-template-columns: 1fr auto;
        gap: 0.05rem 0.8rem;
      }
      dt::first-letter {
        text-transform: uppercase;
      }
      dt {
        color: var(--ink-soft);
      }
      dd {
        margin: 0;
        text-align: right;
        font-variant-numeric: tabular-nums;
      }
      ul {
        margin: 0.2rem 0 0;
        padding: 0;
        list-style: none;
      }
      li button {
        width: 100%;
        text-align: left;
        white-space: normal;
        margin-top: 0.25rem;
        padding: 0.2rem 0.6rem;
      }
      details button {
        margin-top: 0.3rem;
      }
      summary {
        cursor: pointer;
        margin-top: 0.7rem;
        font-weight: 700;
      }
    `,
  ];

  /** The part told about. */
  declare name: string;

  protected readonly watches: readonly (keyof State)[] = ['picture', 'series', 'time', 'system'];

  protected override render(): TemplateResult {
    const { picture, time } = this.state;
    const part = picture?.circuit.parts.find((p) => p.name === this.name);
    const device = picture?.devices.find((d) => d.name === this.name);
    if (picture === undefined || part === undefined || device === undefined) return html``;
    this.store.series.want(readings(picture, part).map((r) => r.name));
    const state = stateAt(stretches(picture, part.name, 'mode'), time);
    const flag = flagOn(picture, part.name, time, -1);
    return html`
      <header>
        <h2>
          ${plain(part.name)}<br /><span class="soft"
            >${part.title}${state === '' ? '' : `: ${state}`}</span
          >
        </h2>
        <button @click=${() => this.dispatchEvent(new CustomEvent('close'))}>Close</button>
      </header>
      ${flag === undefined ? nothing : html`<p class=${flag.severity}>${sign(flag.severity)} ${SEVERITY_WORD[flag.severity]}: ${flag.title}</p>`}
      ${this.#readings(picture, part)}
      ${
        device.note === ''
          ? nothing
          : html`<details>
              <summary>Why it is so</summary>
              <p>${device.note}</p>
            </details>`
      }
      ${this.#parameters(picture, part)} ${this.#faults(picture, device)}
    `;
  }

  #readings(picture: Picture, part: PartFacts): TemplateResult {
    const { series, time, system } = this.state;
    const rows = part.ports.map((port): [string, string] => {
      const gauge = gaugeAt(picture.circuit, series, port.node, time);
      const title = `pressure at ${port.title}`;
      return [title, Number.isNaN(gauge) ? '' : withUnit(gauge, 'gauge-pressure', picture, system)];
    });
    for (const { name, title, quantity } of readings(picture, part)) {
      const trace = series.get(name);
      const value = trace === undefined ? NaN : valueAt(trace, time);
      rows.push([title, Number.isNaN(value) ? '' : withUnit(value, quantity, picture, system)]);
    }
    return html`<h3>At ${time.toFixed(2)} s</h3>
      <dl>
        ${rows.map(
          ([title, text]) =>
            html`<dt>${title}</dt>
              <dd>${text}</dd>`,
        )}
      </dl>`;
  }

  #parameters(picture: Picture, part: PartFacts): TemplateResult {
    const { system } = this.state;
    return html`<details>
      <summary>Its figures</summary>
      <button @click=${this.#change}>Change them</button>
      <dl>
        ${part.parameters.map(
          ({ title, value, quantity }) =>
            html`<dt>${title}</dt>
              <dd>
                ${typeof value === 'number' ? withUnit(value, quantity, picture, system) : value}
              </dd>`,
        )}
      </dl>
    </details>`;
  }

  #change = (): void => {
    this.store.select({ kind: 'part', name: this.name });
    const detail = 'parameters';
    this.dispatchEvent(new CustomEvent('show-panel', { detail, bubbles: true, composed: true }));
  };

  #faults(picture: Picture, device: DeviceFacts): unknown {
    const faults = picture.catalogue.filter((f) => device.faults.includes(f.kind));
    if (faults.length === 0) return nothing;
    return html`<details>
      <summary>What can befall it (${faults.length})</summary>
      <ul>
        ${faults.map(
          (f) =>
            html`<li>
              <button
                title="Opens the fault drawer at it"
                @click=${() => this.store.set({ proposed: { fault: f.kind, on: device.name } })}
              >
                ${f.title}
              </button>
            </li>`,
        )}
      </ul>
    </details>`;
  }
}

/** Its own channels, but for the pressures, which its ports tell. */
function readings(picture: Picture, part: PartFacts): Picture['channels'] {
  return picture.channels.filter((c) => c.of === part.name && c.quantity !== 'free-gas-flow');
}

define('ww-part-card', PartCard);
