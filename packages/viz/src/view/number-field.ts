import { css, html } from 'lit';
import type { PropertyDeclarations, TemplateResult } from 'lit';
import { entered, written } from '../model/entry.js';
import type { EntryKind } from '../model/entry.js';
import type { State } from '../model/state.js';
import { define, View } from './base.js';
import { shared } from './shared.styles.js';
import { sign } from './sign.js';

/** `number`: what stands in a field now. A custom event would make null of what is missing. */
export class NumberEntered extends Event {
  /** @param value SI; undefined for what is missing */
  constructor(readonly value: number | undefined) {
    super('number');
  }
}

/** A number in the user's unit. What is no number stays to be mended, and nothing is changed by it. */
export class NumberField extends View {
  static override properties: PropertyDeclarations = {
    ...View.properties,
    label: {},
    kind: {},
    value: { attribute: false },
    wrong: { state: true },
    text: { state: true },
  };
  static override styles = [
    shared,
    css`
      input {
        width: 100%;
        min-width: 0;
        min-height: 44px;
        padding: 0 0.4rem;
        background: var(--sunk);
        border: 1px solid var(--rule-strong);
        border-radius: var(--round);
        font-variant-numeric: tabular-nums;
      }
      input[aria-invalid='true'] {
        border: 2px solid var(--fail);
      }
      p {
        color: var(--fail);
        font-size: 0.8rem;
        white-space: normal;
      }
    `,
  ];

  declare label: string;
  declare kind: EntryKind;
  /** SI; undefined for what is missing. */
  declare value: number | undefined;
  declare wrong: string;
  /** As written, while it is wrong. */
  declare text: string;

  protected readonly watches: readonly (keyof State)[] = ['system'];

  constructor() {
    super();
    this.wrong = '';
    this.text = '';
  }

  protected override render(): TemplateResult {
    const { picture, system } = this.state;
    if (picture === undefined) return html``;
    const wrong = this.wrong !== '';
    const shown = wrong ? this.text : written(this.value, this.kind, picture, system);
    return html`<input
        type="text"
        inputmode="decimal"
        autocomplete="off"
        aria-label=${this.label}
        aria-invalid=${wrong}
        aria-describedby="wrong"
        .value=${shown}
        @change=${this.#changed}
      />
      <p id="wrong" role="alert">${wrong ? html`${sign('fail')} ${this.wrong}` : ''}</p>`;
  }

  #changed = (e: Event): void => {
    const { picture, system } = this.state;
    if (picture === undefined) return;
    this.text = (e.target as HTMLInputElement).value;
    const entry = entered(this.text, this.kind, picture, system);
    this.wrong = entry.wrong;
    if (entry.wrong !== '' || !('value' in entry)) return;
    this.dispatchEvent(new NumberEntered(entry.value));
  };
}

define('ww-number-field', NumberField);
