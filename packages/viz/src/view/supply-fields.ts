/** What was read at each supply, as fields: what the sound run has readings of, and what the row has. */
import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { plain } from '../model/sentence.js';
import type { Store } from '../model/store.js';
import type { SupplyReading, SupplyReadings } from '../worker/sheet-message.js';
import './number-field.js';
import type { NumberEntered } from './number-field.js';

/** As core has them: the page's main thread does not load core. */
const READINGS: Readonly<Record<SupplyReading, readonly [string, 'flow' | 'time' | 'count']>> = {
  'moving-flow': ['flow while it moves', 'flow'],
  'dead-head-flow': ['flow at dead-head', 'flow'],
  strokes: ['strokes until it is home', 'count'],
  'cut-out': ['from cut-in to cut-out', 'time'],
  'cut-in': ['from cut-out to cut-in', 'time'],
};

type BySupply = Readonly<Record<string, SupplyReadings>>;

export function supplyFields(
  store: Store,
  own: BySupply,
  expected: BySupply,
  change: (device: string, reading: SupplyReading, value: number | undefined) => void,
): TemplateResult {
  const { picture, system } = store.state;
  const devices = Object.keys({ ...expected, ...own });
  return html`${devices.map((device) => {
    const readings = Object.keys({ ...expected[device], ...own[device] }) as SupplyReading[];
    return html`<fieldset class="gauges">
      <legend>Read at ${plain(device)}</legend>
      ${readings.map((reading) => {
        const [word, kind] = READINGS[reading];
        const unit = picture?.display[system][kind]?.unit ?? '';
        const name = unit === '' ? word : `${word}, ${unit}`;
        return html`<div>
          <span>${name}</span>
          <ww-number-field
            .store=${store}
            .label=${`${plain(device)}: ${name}`}
            .kind=${kind}
            .value=${own[device]?.[reading]}
            @number=${(e: NumberEntered) => change(device, reading, e.value)}
          ></ww-number-field>
        </div>`;
      })}
    </fieldset>`;
  })}`;
}
