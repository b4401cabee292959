import { css, html } from 'lit';
import type { PropertyDeclarations, TemplateResult } from 'lit';
import {
  expectedOf,
  gaugeOf,
  GEAR,
  sameEvent,
  withCondition,
  withGauge,
  withNever,
  withOrder,
  withSupply,
} from '../model/observed.js';
import { plain } from '../model/sentence.js';
import type { State } from '../model/state.js';
import { timedEvents, wordOf } from '../model/tap-keys.js';
import type { TestCardWork } from '../model/test-card.js';
import type { Picture } from '../worker/message.js';
import type { ObservedEvent, ObservedSwing } from '../worker/sheet-message.js';
import { define, View } from './base.js';
import { conditionFields } from './condition-fields.js';
import { gaugeFields } from './gauge-fields.js';
import { shared } from './shared.styles.js';
import { supplyFields } from './supply-fields.js';
import { swingEntryStyles } from './swing-entry.styles.js';

/** What is seldom noted of a row: what never came, the order, other gauges, the supply, how it stood. */
export class SwingMore extends View {
  static override properties: PropertyDeclarations = {
    ...View.properties,
    work: { attribute: false },
    added: { state: true },
  };
  static override styles = [
    shared,
    swingEntryStyles,
    css`
      details {
        display: grid;
        gap: 0.5rem;
      }
      summary {
        cursor: pointer;
        min-height: 44px;
        align-content: center;
        font-size: 0.9rem;
      }
      fieldset {
        margin-bottom: 0.5rem;
      }
      ol {
        margin: 0;
        padding-left: 1.6rem;
        font-size: 0.88rem;
      }
      li button {
        min-width: 44px;
        min-height: 44px;
        border: 0;
        background: none;
      }
      select {
        min-height: 44px;
        max-width: 100%;
      }
    `,
  ];

  declare work: TestCardWork;
  /** Points a gauge was added at that nothing was read of yet. */
  declare added: readonly string[];

  protected readonly watches: readonly (keyof State)[] = ['picture', 'testCard', 'system'];

  constructor() {
    super();
    this.added = [];
  }

  protected override render(): TemplateResult {
    const { picture, testCard } = this.state;
    const swing = testCard.draft?.sheet.swings[testCard.picked];
    if (picture === undefined || swing === undefined) return html``;
    const events = timedEvents(picture, expectedOf(testCard.expectation, swing.direction), swing);
    return html`<details>
      <summary>More of this row</summary>
      ${this.#never(swing, events)} ${this.#order(swing, events)} ${this.#gauges(swing, picture)}
      ${this.#supply(swing)}
      <fieldset class="gauges">
        <legend>Where this swing was made otherwise than the rest</legend>
        ${conditionFields(
          this.store,
          swing.conditions,
          (key, value) => this.#change((s) => withCondition(s, key, value)),
          ' of this row',
        )}
      </fieldset>
    </details>`;
  }

  #change(change: (swing: ObservedSwing) => ObservedSwing): void {
    this.work.changeRow(this.state.testCard.picked, change);
  }

  #never(swing: ObservedSwing, events: readonly ObservedEvent[]): TemplateResult {
    const is = (e: ObservedEvent): boolean => swing.never?.some(sameEvent(e)) === true;
    return html`<fieldset class="remarks" data-never>
      <legend>Waited for, and it did not come</legend>
      ${events
        .filter((e) => swing.times[e.unit]?.[e.event] === undefined)
        .map(
          (e) =>
            html`<label
              ><input
                type="checkbox"
                .checked=${is(e)}
                @change=${(c: Event) => {
                  const { checked } = c.target as HTMLInputElement;
                  this.#change((s) => withNever(s, e, checked));
                }}
              />
              ${wordOf(e)}</label
            >`,
        )}
    </fieldset>`;
  }

  #order(swing: ObservedSwing, events: readonly ObservedEvent[]): TemplateResult {
    const left = events.filter((e) => e.unit !== GEAR && !swing.order.some(sameEvent(e)));
    return html`<fieldset data-order>
      <legend>Order in which they were seen</legend>
      <ol>
        ${swing.order.map(
          (e) =>
            html`<li>
              ${wordOf(e)}
              <button
                aria-label=${`Strike ${wordOf(e)} out of the order`}
                @click=${() => this.#change((s) => withOrder(s, e, false))}
              >
                ✕
              </button>
            </li>`,
        )}
      </ol>
      ${this.#choose(
        'Then came',
        left.map((e) => [`${e.unit} ${e.event}`, wordOf(e)]),
        (name) => {
          const e = left.find(({ unit, event }) => `${unit} ${event}` === name);
          if (e !== undefined) this.#change((s) => withOrder(s, e, true));
        },
      )}
    </fieldset>`;
  }

  #gauges(swing: ObservedSwing, picture: Picture): TemplateResult {
    const first = gaugeOf(swing, this.state.testCard.expectation);
    const shown = [...new Set([...Object.keys(swing.gauges), ...this.added])];
    const others = shown.filter((node) => node !== first);
    const points = picture.channels.flatMap(({ name }) =>
      name.endsWith('.pressure') ? name.slice(0, -'.pressure'.length) : [],
    );
    return html`${others.map((node) =>
      gaugeFields(
        this.store,
        node,
        swing.gauges[node],
        (moment, value) => this.#change((s) => withGauge(s, node, moment, value)),
        `at ${plain(node)} `,
      ),
    )}
    ${this.#choose(
      'Another gauge, at',
      points.filter((n) => n !== first && !shown.includes(n)).map((n) => [n, plain(n)]),
      (node) => (this.added = [...this.added, node]),
    )}`;
  }

  #supply(swing: ObservedSwing): TemplateResult {
    const expected = expectedOf(this.state.testCard.expectation, swing.direction)?.supply ?? {};
    return supplyFields(this.store, swing.supply ?? {}, expected, (device, reading, value) =>
      this.#change((s) => withSupply(s, device, reading, value)),
    );
  }

  /** A choice that does something and is then empty again. */
  #choose(
    word: string,
    choices: readonly (readonly [string, string])[],
    chosen: (name: string) => void,
  ): TemplateResult {
    return html`<label
      >${word}
      <select
        @change=${(e: Event) => {
          const select = e.target as HTMLSelectElement;
          chosen(select.value);
          select.value = '';
        }}
      >
        <option value="">…</option>
        ${choices.map(([name, title]) => html`<option value=${name}>${title}</option>`)}
      </select>
    </label>`;
  }
}

define('ww-swing-more', SwingMore);
