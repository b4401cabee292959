/** What one gauge was seen to say, as fields: of the row's own gauge, and of others. */
import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { plain } from '../model/sentence.js';
import type { Store } from '../model/store.js';
import type { GaugeMoment, GaugeReadings } from '../worker/sheet-message.js';
import './number-field.js';
import type { NumberEntered } from './number-field.js';

const MOMENTS: readonly (readonly [GaugeMoment, string])[] = [
  ['static', 'static'],
  ['moving', 'while moving'],
  ['dead-head', 'dead-head'],
  ['peak', 'peak'],
  ['after', 'after it was left'],
];

/** @param at what stands before each field's name for those who cannot see, where there are several gauges */
export function gaugeFields(
  store: Store,
  node: string,
  readings: GaugeReadings | undefined,
  change: (moment: GaugeMoment, value: number | undefined) => void,
  at = '',
): TemplateResult {
  const { picture, system } = store.state;
  const unit = picture?.display[system]['gauge-pressure']?.unit ?? '';
  return html`<fieldset class="gauges">
    <legend>Gauge at ${plain(node)}, ${unit}</legend>
    ${MOMENTS.map(
      ([moment, word]) =>
        html`<div>
          <span>${word}</span>
          <ww-number-field
            .store=${store}
            .label=${`Gauge ${at}${word}, ${unit}`}
            .kind=${'gauge-pressure' as const}
            .value=${readings?.[moment]}
            @number=${(e: NumberEntered) => change(moment, e.value)}
          ></ww-number-field>
        </div>`,
    )}
  </fieldset>`;
}
