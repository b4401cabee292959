import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { CAUTIONS } from '@wheelwell/core';
import { GEAR, limitOf } from '../model/observed.js';
import { plain, withUnit } from '../model/sentence.js';
import type { State } from '../model/state.js';
import { EVENT_WORD, momentsOf } from '../model/tap-keys.js';
import type {
  Expectation,
  ExpectedSwing,
  GaugeMoment,
  ObservedSwing,
  TimedEvent,
} from '../worker/sheet-message.js';
import type { Picture } from '../worker/message.js';
import { define, View } from './base.js';
import { degrees } from './blow-down-words.js';
import { cardSheetStyles } from './card-sheet.styles.js';
import { shared } from './shared.styles.js';
import { awaited } from './sheet-told.js';

/** Columns to write in; the last swings of the sheet stand in them. */
const COLUMNS = 3;
const EVENTS = [
  'opened',
  'moving',
  'locked',
  'doors',
  'light',
] as const satisfies readonly TimedEvent[];
const GAUGE: readonly (readonly [GaugeMoment, string])[] = [
  ['static', 'before the swing'],
  ['moving', 'while moving'],
  ['dead-head', 'dead-head, selector held'],
  ['peak', 'peak'],
];
const HEAD = { up: 'Up', down: 'Down', 'blow-down': 'Blow-down' } as const;

/** The test card on paper: cautions, what is expected, its limits, and room to write. It prints alone. */
export class CardSheet extends View {
  static override styles = [shared, cardSheetStyles];

  protected readonly watches: readonly (keyof State)[] = ['picture', 'testCard', 'system'];

  protected override render(): TemplateResult {
    const { picture, testCard } = this.state;
    const { expectation, draft } = testCard;
    if (picture === undefined || expectation === undefined)
      return html`<p class="soft">${awaited(testCard)}</p>`;
    const swings = draft?.sheet.swings ?? [];
    return html`
      <header>
        <h2>Test card: ${expectation.title}</h2>
        <button @click=${this.#print}>Print</button>
      </header>
      <div class="cautions">
        <ul>
          ${CAUTIONS.map((c) => html`<li><b>${c.head}</b> ${c.text}</li>`)}
        </ul>
      </div>
      <p class="lead">
        Expected are the times of “${expectation.cardTitle}” as simulated from ${picture.file}
        without any fault${expectation.stood ? ', under the conditions as tested' : ''}, s from the
        ${expectation.swings[0]?.direction === 'blow-down' ? 'pull of the handle' : "selector's move"}.
      </p>
      ${this.#conditions(expectation, picture)}
      ${expectation.swings.map((s) => this.#swing(s, expectation, swings, picture))}
      <div class="block">
        <h3>Remarks</h3>
        <p>
          Did not move, moved by jerks, drifts when neutral, doors came open again, order seen;
          left, right and others apart.
        </p>
        <div class="line"></div>
        <div class="line"></div>
        <div class="line"></div>
      </div>
      <div class="block signed">
        <p>
          This card is no release to service. The aircraft's own approved data and the person who
          signs for the work decide.
        </p>
        <p class="rule">Tested by <span></span> Date <span></span></p>
        <p class="rule">Checked against approved data (reference) <span></span></p>
        <p class="rule">Signature and licence of the person who signs <span></span></p>
      </div>
    `;
  }

  #conditions({ conditions, fluids }: Expectation, picture: Picture): TemplateResult {
    const { system, testCard } = this.state;
    const own = testCard.draft?.sheet.conditions ?? {};
    const show = (value: number | undefined, q: 'flow' | 'gauge-pressure' | 'angle'): string =>
      value === undefined ? '' : withUnit(value, q, picture, system);
    const warmth = (value: number | undefined): string =>
      value === undefined ? '' : degrees(value, picture, system);
    const oil = (name: string | undefined): string => fluids.find(([n]) => n === name)?.[1] ?? '';
    const rows: readonly (readonly [string, string, string])[] = [
      ['Oil', oil(conditions.fluid), oil(own.fluid)],
      ['Oil temperature', warmth(conditions.temperature), warmth(own.temperature)],
      ['Supply: flow', show(conditions.supplyFlow, 'flow'), show(own.supplyFlow, 'flow')],
      [
        'Supply: pressure',
        show(conditions.supplyPressure, 'gauge-pressure'),
        show(own.supplyPressure, 'gauge-pressure'),
      ],
      ['Attitude, nose up', show(conditions.attitude, 'angle'), show(own.attitude, 'angle')],
      [
        'Doors connected',
        '',
        own.doors === undefined ? '' : own.doors === 'connected' ? 'yes' : 'no',
      ],
    ];
    return html`<table class="block">
      <thead>
        <tr>
          <th scope="col">Conditions</th>
          <th scope="col">Simulated</th>
          <th scope="col">As tested</th>
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          ([name, simulated, tested]) =>
            html`<tr>
              <th scope="row">${name}</th>
              <td>${simulated}</td>
              <td class="room">${tested}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  #swing(
    expected: ExpectedSwing,
    expectation: Expectation,
    all: readonly ObservedSwing[],
    picture: Picture,
  ): TemplateResult {
    const { direction, times } = expected;
    const made = all
      .map((swing, i) => ({ swing, row: i + 1 }))
      .filter(({ swing }) => swing.direction === direction)
      .slice(-COLUMNS);
    const columns = Array.from({ length: COLUMNS }, (_, i) => made[i]);
    const limit = limitOf(expectation, direction);
    const [left, right] = ['left', 'right'].map(
      (side) => picture.units.find((u) => u.side === side)?.name ?? '',
    );
    const spread = (of: (unit: string) => number | undefined): number | undefined => {
      const [a, b] = [of(left ?? ''), of(right ?? '')];
      return a === undefined || b === undefined ? undefined : Math.abs(a - b);
    };
    const row = (
      name: string,
      due: number | undefined,
      value: (swing: ObservedSwing) => number | undefined,
      most?: number,
    ): TemplateResult =>
      html`<tr>
        <th scope="row">${name}</th>
        <td>${due === undefined ? '–' : due.toFixed(2)}</td>
        <td>${most === undefined ? '' : `≤ ${most.toFixed(1)}`}</td>
        ${columns.map((c) => html`<td class="room">${c === undefined ? '' : value(c.swing)?.toFixed(2)}</td>`)}
      </tr>`;
    return html`<div class="block">
      <h3>${HEAD[direction]}</h3>
      <table data-direction=${direction}>
        <thead>
          <tr>
            <th scope="col">Time, s</th>
            <th scope="col">Expected</th>
            <th scope="col">Limit</th>
            ${columns.map((c, i) => html`<th scope="col">${c === undefined ? `Swing ${i + 1}` : `Row ${c.row}`}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${picture.units.flatMap((u) =>
            momentsOf(EVENTS, u, expected).map((e) =>
              row(
                `${plain(u.name)} ${EVENT_WORD[e]}`,
                times[u.name]?.[e],
                (s) => s.times[u.name]?.[e]?.at,
              ),
            ),
          )}
          ${row('Whole gear home', times[GEAR]?.total, (s) => s.times[GEAR]?.total?.at, limit)}
          ${
            left === '' || right === ''
              ? nothing
              : row(
                  'Left to right apart',
                  spread((u) => times[u]?.total),
                  (s) => spread((u) => s.times[u]?.doors?.at ?? s.times[u]?.locked?.at),
                  expectation.limits.spread,
                )
          }
          ${this.#gauge(
            expected,
            columns.map((c) => c?.swing),
            picture,
          )}
        </tbody>
      </table>
      <p>
        Order expected:
        ${expected.order.map(({ unit, event }) => `${plain(unit)} ${EVENT_WORD[event]}`).join(', ')}.
      </p>
    </div>`;
  }

  #gauge(
    expected: ExpectedSwing,
    columns: readonly (ObservedSwing | undefined)[],
    picture: Picture,
  ): TemplateResult | typeof nothing {
    const { system } = this.state;
    const [gauge] = Object.entries(expected.gauges);
    if (gauge === undefined) return nothing;
    const [node, readings] = gauge;
    const show = (value: number | undefined): string =>
      value === undefined ? '' : withUnit(value, 'gauge-pressure', picture, system);
    return html`${GAUGE.map(
      ([moment, word]) =>
        html`<tr>
          <th scope="row">Gauge at ${plain(node)}, ${word}</th>
          <td>${show(readings[moment])}</td>
          <td></td>
          ${columns.map((s) => html`<td class="room">${show(s?.gauges[node]?.[moment])}</td>`)}
        </tr>`,
    )}`;
  }

  /** The page hides everything else for as long as it prints. */
  #print = (): void => {
    this.dispatchEvent(new CustomEvent('print-panel', { bubbles: true, composed: true }));
  };
}

define('ww-card-sheet', CardSheet);
