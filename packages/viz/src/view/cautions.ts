import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import type { State } from '../model/state.js';
import { define, View } from './base.js';
import { shared } from './shared.styles.js';
import { sign } from './sign.js';

/** What can hurt people, and what this page is not. Always in sight; the rest one step away. */
export class Cautions extends View {
  static override styles = [
    shared,
    css`
      :host {
        background: var(--caution-soft);
        border-bottom: 1px solid var(--caution);
        font-size: 0.85rem;
        position: relative;
      }
      summary {
        padding: 0.25rem 0.8rem;
        cursor: pointer;
        display: flex;
        gap: 0.5rem;
        align-items: center;
        list-style: none;
      }
      summary::-webkit-details-marker {
        display: none;
      }
      summary b {
        color: var(--caution);
      }
      summary .more {
        margin-left: auto;
        text-decoration: underline;
        white-space: nowrap;
      }
      ul {
        position: absolute;
        z-index: 5;
        left: 0;
        right: 0;
        margin: 0;
        padding: 0.5rem 1rem 0.8rem 2.2rem;
        background: var(--caution-soft);
        border-bottom: 2px solid var(--caution);
        max-height: 60vh;
        overflow: auto;
      }
      li {
        margin: 0.25rem 0;
        max-width: 75rem;
      }
    `,
  ];

  protected readonly watches: readonly (keyof State)[] = [];

  protected override render(): TemplateResult {
    return html`<details>
      <summary>
        ${sign('caution')}
        <span
          ><b>A simulation, not approved data.</b> On the aircraft its manual rules. Gear and doors
          move without warning and do not stop for a hand.</span
        >
        <span class="more">All cautions</span>
      </summary>
      <ul>
        ${CAUTIONS.map(([head, text]) => html`<li><b>${head}</b> ${text}</li>`)}
      </ul>
    </details>`;
  }
}

/** Common practice; the aircraft's approved data comes first. */
const CAUTIONS: readonly (readonly [string, string])[] = [
  [
    'Not approved data.',
    'Times, limits and settings here come from a scenario file. Work to the aircraft’s maintenance manual, local codes and a licensed person’s direction.',
  ],
  [
    'Jacked aircraft.',
    'Only on the proper pads with locks run down, tail steadied, area roped off, one person in charge and an agreed word for stop. Nobody under a wing that only a jack holds.',
  ],
  [
    'Doors shear.',
    'Doors and legs close in a second or less with the force to cut. Keep hands, heads, tools and stands out of their arcs while there is pressure, or stored gas, in the system.',
  ],
  [
    'Oil under pressure.',
    'A pinhole jet goes through skin and gloves: never feel for a leak by hand. Injected oil is a surgical emergency even when the wound looks small: go to hospital at once and say what the oil is.',
  ],
  [
    'Trapped pressure.',
    'Release pressure and show that it is gone before a line is opened. Moving one leg by hand with lines closed can unlock another.',
  ],
  [
    'Ground locks.',
    'Fit and count the pins before anyone goes under; take them out only for the test.',
  ],
];

define('ww-cautions', Cautions);
