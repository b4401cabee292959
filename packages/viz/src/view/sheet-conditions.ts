import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { withCondition } from '../model/observed.js';
import type { State } from '../model/state.js';
import type { TestCardWork } from '../model/test-card.js';
import type { EntryKind } from '../model/entry.js';
import type { ObservationConditions, ObservationSheet } from '../worker/sheet-message.js';
import type { Quantity } from '../worker/message.js';
import { define, View } from './base.js';
import './number-field.js';
import { shared } from './shared.styles.js';

type Numbers = 'supplyFlow' | 'supplyPressure' | 'temperature' | 'attitude';
const FIELDS: readonly (readonly [Numbers, string, EntryKind & Quantity])[] = [
  ['supplyFlow', 'Supply flow', 'flow'],
  ['supplyPressure', 'Supply pressure', 'gauge-pressure'],
  ['temperature', 'Oil temperature', 'temperature'],
  ['attitude', 'Attitude, nose up', 'angle'],
];

/** What holds for the whole sheet: who, when, and how the aircraft stood. What is left empty is not known. */
export class SheetConditions extends View {
  static override properties = { ...View.properties, work: { attribute: false } };
  static override styles = [
    shared,
    css`
      :host {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(8.5rem, 1fr));
        gap: 0.4rem 0.7rem;
        font-size: 0.84rem;
      }
      .wide {
        grid-column: 1 / -1;
      }
      label > input,
      select {
        width: 100%;
        min-height: 44px;
        min-width: 0;
        padding: 0 0.4rem;
        color: var(--ink);
        background: var(--sunk);
        border: 1px solid var(--rule-strong);
        border-radius: var(--round);
      }
    `,
  ];

  declare work: TestCardWork;

  protected readonly watches: readonly (keyof State)[] = ['picture', 'testCard', 'system'];

  protected override render(): TemplateResult {
    const { picture, testCard, system } = this.state;
    const sheet = testCard.draft?.sheet;
    if (picture === undefined || sheet === undefined) return html``;
    const unit = (q: Quantity): string => picture.display[system][q]?.unit ?? '';
    const { conditions } = sheet;
    return html`
      ${this.#text('Date', sheet.date, 'date')} ${this.#text('Watch read by', sheet.by, 'by')}
      <div>
        <span>Reading error, s</span>
        <ww-number-field
          .store=${this.store}
          label="Reading error of a time, s"
          .kind=${'error' as const}
          .value=${sheet.readingError}
          @number=${(e: CustomEvent<number | undefined>) => this.#set({ readingError: e.detail ?? 0.2 })}
        ></ww-number-field>
      </div>
      ${FIELDS.map(
        ([key, word, kind]) =>
          html`<div>
            <span>${word}, ${unit(kind)}</span>
            <ww-number-field
              .store=${this.store}
              .label=${`${word}, ${unit(kind)}`}
              .kind=${kind}
              .value=${conditions[key]}
              @number=${(e: CustomEvent<number | undefined>) => this.#condition(key, e.detail)}
            ></ww-number-field>
          </div>`,
      )}
      ${this.#choice('Fluid', 'fluid', testCard.expectation?.fluids ?? [])}
      ${this.#choice('Doors', 'doors', [
        ['connected', 'connected'],
        ['disconnected', 'disconnected'],
      ])}
      ${this.#text('Notes', sheet.note, 'note', 'wide')}
    `;
  }

  #set(patch: Partial<ObservationSheet>): void {
    this.work.changeSheet((sheet) => ({ ...sheet, ...patch }));
  }

  #condition<K extends keyof ObservationConditions>(
    key: K,
    value: ObservationConditions[K] | undefined,
  ): void {
    this.work.changeSheet((sheet) => withCondition(sheet, key, value));
  }

  #text(word: string, value: string, key: 'date' | 'by' | 'note', place = ''): TemplateResult {
    return html`<label class=${place}
      >${word}
      <input
        type="text"
        maxlength=${key === 'note' ? 2000 : 60}
        autocomplete="off"
        .value=${value}
        @change=${(e: Event) => this.#set({ [key]: (e.target as HTMLInputElement).value })}
      />
    </label>`;
  }

  #choice(
    word: string,
    key: 'fluid' | 'doors',
    choices: readonly (readonly [string, string])[],
  ): TemplateResult {
    const now = this.state.testCard.draft?.sheet.conditions[key];
    return html`<label
      >${word}
      <select
        @change=${(e: Event) => {
          const { value } = e.target as HTMLSelectElement;
          this.#condition(key, value === '' ? undefined : (value as 'connected'));
        }}
      >
        <option value="" .selected=${live(now === undefined)}>not noted</option>
        ${choices.map(([name, title]) => html`<option value=${name} .selected=${live(now === name)}>${title}</option>`)}
      </select>
    </label>`;
  }
}

define('ww-sheet-conditions', SheetConditions);
