/** The map in words: a table for whoever cannot see it, or wants the figures. */
import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { cellAt } from '../model/blow-down.js';
import type { Cell, Telling } from '../model/blow-down.js';
import { figure, margin, withUnit } from '../model/sentence.js';
import type { MapPicture } from '../worker/blow-down-message.js';
import type { Picture, System } from '../worker/message.js';
import { degrees, percent } from './blow-down-words.js';

export function blowDownTable(
  map: MapPicture,
  telling: Telling,
  unit: number,
  picture: Picture,
  system: System,
): TemplateResult {
  const words = (c: Cell): string => {
    if (c.verdict === 'unknown') return '…';
    if (c.verdict === 'failed') return 'failed';
    const no = c.verdict === 'not locked' ? 'no lock' : '';
    if (telling === 'time')
      return Number.isFinite(c.time) ? `${figure(c.time)} s${no === '' ? '' : `, ${no}`}` : no;
    const value = telling === 'gas' ? percent(c.gas) : margin(c.margin, 'moment', picture, system);
    return no === '' ? value : `${value}, ${no}`;
  };
  // The highest temperature first, as on the map.
  const rows = map.temperature.map((_, j) => map.temperature.length - 1 - j);
  return html`<table>
    <thead>
      <tr>
        <th scope="col">At</th>
        ${map.charge.map((c) => html`<th scope="col">${withUnit(c, 'gauge-pressure', picture, system)}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        (j) =>
          html`<tr>
            <th scope="row">${degrees(map.temperature[j] ?? NaN, picture, system)}</th>
            ${map.charge.map((_, i) => html`<td>${words(cellAt(map, i, j, unit))}</td>`)}
          </tr>`,
      )}
    </tbody>
  </table>`;
}
