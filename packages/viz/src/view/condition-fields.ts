/** How the aircraft stood, as fields: of the whole sheet, or of one row where it stood otherwise. */
import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { EntryKind } from '../model/entry.js';
import type { Store } from '../model/store.js';
import type { Quantity } from '../worker/message.js';
import type { ObservationConditions } from '../worker/sheet-message.js';
import './number-field.js';
import type { NumberEntered } from './number-field.js';

type Numbers = 'supplyFlow' | 'supplyPressure' | 'temperature' | 'attitude' | 'leftFor';
type Words = 'fluid' | 'doors';
const FIELDS: readonly (readonly [Numbers, string, EntryKind, Quantity])[] = [
  ['supplyFlow', 'Supply flow', 'flow', 'flow'],
  ['supplyPressure', 'Supply pressure', 'gauge-pressure', 'gauge-pressure'],
  ['temperature', 'Oil temperature', 'temperature', 'temperature'],
  ['attitude', 'Attitude, nose up', 'angle', 'angle'],
  ['leftFor', 'Left in neutral', 'left', 'time'],
];
const DOORS = [
  ['connected', 'connected'],
  ['disconnected', 'disconnected'],
] as const;

type Set = <K extends Numbers | Words>(key: K, value: ObservationConditions[K] | undefined) => void;

/** @param of what stands behind each name for those who cannot see, where the page has them twice */
export function conditionFields(
  store: Store,
  own: ObservationConditions,
  set: Set,
  of = '',
): TemplateResult {
  const { picture, system, testCard } = store.state;
  const unit = (q: Quantity): string => picture?.display[system][q]?.unit ?? '';
  const choice = (
    word: string,
    key: Words,
    choices: readonly (readonly [string, string])[],
  ): TemplateResult =>
    html`<label
      >${word}<span class="aside">${of}</span>
      <select
        @change=${(e: Event) => {
          const { value } = e.target as HTMLSelectElement;
          set(key, value === '' ? undefined : (value as 'connected'));
        }}
      >
        <option value="" .selected=${live(own[key] === undefined)}>not noted</option>
        ${choices.map(([name, title]) => html`<option value=${name} .selected=${live(own[key] === name)}>${title}</option>`)}
      </select>
    </label>`;
  return html`${FIELDS.map(
    ([key, word, kind, q]) =>
      html`<div>
        <span>${word}, ${unit(q)}</span>
        <ww-number-field
          .store=${store}
          .label=${`${word}${of}, ${unit(q)}`}
          .kind=${kind}
          .value=${own[key]}
          @number=${(e: NumberEntered) => set(key, e.value)}
        ></ww-number-field>
      </div>`,
  )}
  ${choice('Fluid', 'fluid', testCard.expectation?.fluids ?? [])} ${choice('Doors', 'doors', DOORS)}`;
}
