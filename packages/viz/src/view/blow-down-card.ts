import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { CAUTIONS } from '@wheelwell/core';
import { plain, seconds, withUnit } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { BlowDownFacts, BlowDownRun, FollowUp, Least } from '../worker/blow-down-message.js';
import type { Picture, System } from '../worker/message.js';
import { define, View } from './base.js';
import {
  conditionText,
  degrees,
  legSentence,
  percent,
  rampSentence,
  toldText,
} from './blow-down-words.js';
import { shared } from './shared.styles.js';
import { sign } from './sign.js';

/** Before the handle is pulled for a test; common practice, no source. */
const OWN_CAUTIONS: readonly string[] = [
  'Blow it down only on jacks, with the area roped off and everybody clear: the legs come without warning and cannot be stopped.',
  'A gas bottle is a pressure vessel: in date, regulated dry gas of the kind on its placard, never oxygen; eye protection; stand aside of the valve.',
  'Doors open, and may close, with full force; linked doors move with their leg.',
  'Never select UP before the system has been serviced: there is gas in the down sides.',
];

/**
 * A card for the bottle's door: cautions, the pressure to see at each temperature, the least charge,
 * what each leg does, and what has to be done afterwards. It prints alone.
 */
export class BlowDownCard extends View {
  static override styles = [
    shared,
    css`
      :host {
        padding: 0.5rem 0.7rem 0.8rem;
        font-size: 0.88rem;
        line-height: 1.35;
      }
      h3 {
        margin: 0.7rem 0 0.2rem;
      }
      header {
        display: flex;
        gap: 0.6rem;
        align-items: flex-start;
        justify-content: space-between;
      }
      .cautions {
        border: 1px solid var(--caution);
        background: var(--caution-soft);
        border-radius: var(--round);
        padding: 0.4rem 0.6rem;
        margin-top: 0.4rem;
      }
      .cautions ul {
        margin: 0;
        padding-left: 1.1rem;
      }
      ul.legs,
      ul.ramps {
        list-style: none;
        padding: 0;
        margin: 0;
      }
      ol {
        margin: 0;
        padding-left: 1.3rem;
      }
      ol li {
        margin: 0.25rem 0;
      }
      table {
        border-collapse: collapse;
        margin-top: 0.2rem;
      }
      th,
      td {
        padding: 0.1rem 0.9rem 0.1rem 0;
        text-align: right;
        font-weight: 400;
      }
      tbody tr {
        border-top: 1px solid var(--rule);
      }
      thead th {
        font-weight: 700;
      }
      @media print {
        :host {
          color: #000000;
          font-size: 10.5pt;
        }
        button {
          display: none;
        }
        .cautions,
        table,
        li {
          break-inside: avoid;
        }
      }
    `,
  ];

  protected readonly watches: readonly (keyof State)[] = ['picture', 'system', 'blowDown'];

  protected override render(): TemplateResult {
    const { picture, blowDown, system } = this.state;
    const facts = picture?.blowDown;
    if (picture === undefined || facts === undefined)
      return html`<p class="soft">This aircraft has no gas bottle that a test card lets go.</p>`;
    const { table, run } = facts;
    const title = picture.cards.find((c) => c.name === picture.card)?.title ?? picture.card;
    return html`
      <header>
        <h2>Emergency bottle: ${picture.title}</h2>
        <button @click=${this.#print}>Print</button>
      </header>
      <div class="cautions">
        <ul>
          <li><b>${CAUTIONS[0].head}</b> ${CAUTIONS[0].text}</li>
          ${OWN_CAUTIONS.map((c) => html`<li>${c}</li>`)}
        </ul>
      </div>
      <h3>Charge table</h3>
      <p>
        ${plain(table.bottle)}: ${table.gas}, ${withUnit(table.volume, 'volume', picture, system)},
        ${withUnit(table.charge, 'gauge-pressure', picture, system)} at
        ${degrees(table.chargeTemperature, picture, system)}. The gauge of the full bottle shows,
        when it has taken on the temperature:
      </p>
      ${chargeRows(facts, picture, system)}
      <h3>Least charge</h3>
      <p>${leastWords(blowDown.least, blowDown.busy, facts, picture, system)}</p>
      ${
        run === undefined
          ? nothing
          : html`<h3>${title}, ${conditionText(run.condition, picture, system)}</h3>
              ${verdictOf(run, picture, system)}
              <h3>After this blow-down</h3>
              <ol>
                ${run.steps.map((s) => html`<li><b>${s.step}</b> ${toldText(s.reason, picture, system)}</li>`)}
              </ol>
              ${this.#after(picture)}`
      }
    `;
  }

  /** A swing before anybody has bled it, asked for by a button: it costs two runs. */
  #after(picture: Picture): TemplateResult {
    const { after } = this.state.blowDown;
    if (after?.run !== picture.run)
      return html`<button @click=${() => this.store.askAfter()}>Swing before it is bled</button>`;
    const { found } = after;
    if (found === undefined) return html`<p>No card of this aircraft swings it as usual.</p>`;
    return html`<h3>A swing before it is bled</h3>
      ${afterTable(found)}`;
  }

  /** The page hides everything else for as long as it prints. */
  #print = (): void => {
    this.dispatchEvent(new CustomEvent('print-panel', { bubbles: true, composed: true }));
  };
}

function chargeRows(facts: BlowDownFacts, picture: Picture, system: System): TemplateResult {
  return html`<table>
    <thead>
      <tr>
        <th scope="col">Temperature</th>
        <th scope="col">Gauge</th>
      </tr>
    </thead>
    <tbody>
      ${facts.table.rows.map(
        (r) =>
          html`<tr>
            <th scope="row">${degrees(r.temperature, picture, system)}</th>
            <td>${withUnit(r.pressure, 'gauge-pressure', picture, system)}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

function afterTable({ sound, gassed }: FollowUp): TemplateResult {
  return html`<table data-after>
    <thead>
      <tr>
        <th scope="col">Leg</th>
        <th scope="col">Sound</th>
        <th scope="col">With gas</th>
      </tr>
    </thead>
    <tbody>
      ${gassed.map(
        (t, i) =>
          html`<tr>
            <th scope="row">${plain(t.unit)} ${t.direction}</th>
            <td>${seconds(sound[i]?.total ?? NaN)}</td>
            <td>${seconds(t.total)}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

function leastWords(
  least: Least | undefined,
  busy: boolean,
  { own }: BlowDownFacts,
  picture: Picture,
  system: System,
): TemplateResult {
  if (least === undefined)
    return html`${busy ? 'Being looked for…' : 'Not looked for yet: compute the map.'}`;
  const at = degrees(least.temperature, picture, system);
  if (least.kind === 'never') return html`No charge of its range locks every leg at ${at}.`;
  if (least.kind === 'always') return html`At ${at} every leg locks even without gas.`;
  const pressure = withUnit(least.charge, 'gauge-pressure', picture, system);
  const share = percent(1 - least.charge / own.charge);
  return html`At ${at} every leg still locks with <b>${pressure}</b>; with less, one does not.
    ${own.charge >= least.charge ? `Of the charge ${share} is in hand.` : 'The charge is below it.'}`;
}

function verdictOf(run: BlowDownRun, picture: Picture, system: System): TemplateResult {
  const whole = run.verdict === 'locked';
  const word =
    run.verdict === 'failed'
      ? 'The run did not reach its end.'
      : whole
        ? 'Every leg is down and locked.'
        : 'Not every leg is down and locked.';
  const free = (unit: string): boolean =>
    (run.curves.find((c) => c.unit === unit)?.worst ?? -1) >= 0;
  const left = withUnit(run.endPressure, 'gauge-pressure', picture, system);
  return html`<p class=${whole ? 'note' : 'fail'}>
      ${sign(whole ? 'note' : 'fail')} <b>${word}</b> ${left} are left in the bottle,
      ${percent(run.gasLeft)} of its gas.
    </p>
    <ul class="legs">
      ${run.legs.map((leg) => html`<li class=${leg.locked ? '' : 'fail'}>${sign(leg.locked ? 'engaged' : 'open')} ${legSentence(leg, free(leg.unit), picture, system)}</li>`)}
    </ul>
    ${
      run.ramps.length === 0
        ? nothing
        : html`<ul class="ramps">
            ${run.ramps.map((r) => html`<li class=${r.margin > 0 ? '' : 'caution'}>${sign(r.margin > 0 ? 'note' : 'caution')} ${rampSentence(r, picture, system)}</li>`)}
          </ul>`
    }`;
}

define('ww-blow-down-card', BlowDownCard);
