import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { withCondition } from '../model/observed.js';
import type { State } from '../model/state.js';
import type { TestCardWork } from '../model/test-card.js';
import type { ObservationSheet } from '../worker/sheet-message.js';
import { define, View } from './base.js';
import { conditionFields } from './condition-fields.js';
import './number-field.js';
import type { NumberEntered } from './number-field.js';
import { shared } from './shared.styles.js';

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
    const { picture, testCard } = this.state;
    const sheet = testCard.draft?.sheet;
    if (picture === undefined || sheet === undefined) return html``;
    return html`
      ${this.#text('Date', sheet.date, 'date')} ${this.#text('Watch read by', sheet.by, 'by')}
      <div>
        <span>Reading error, s</span>
        <ww-number-field
          .store=${this.store}
          label="Reading error of a time, s"
          .kind=${'error' as const}
          .value=${sheet.readingError}
          @number=${(e: NumberEntered) => this.#set({ readingError: e.value ?? 0.2 })}
        ></ww-number-field>
      </div>
      ${conditionFields(this.store, sheet.conditions, (key, value) =>
        this.work.changeSheet((s) => withCondition(s, key, value)),
      )}
      ${this.#text('Notes', sheet.note, 'note', 'wide')}
    `;
  }

  #set(patch: Partial<ObservationSheet>): void {
    this.work.changeSheet((sheet) => ({ ...sheet, ...patch }));
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
}

define('ww-sheet-conditions', SheetConditions);
