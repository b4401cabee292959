/** The state of each unit at the play head, in words: what the drawings of the bay show. */
import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { stateAt, stretches } from '../model/history.js';
import { lockState } from '../model/lock.js';
import { angleAt } from '../model/place.js';
import { margin, seconds, withUnit } from '../model/sentence.js';
import type { Flag, Picture, System, UnitFacts } from '../worker/message.js';
import { sign } from './sign.js';

export interface BayTable {
  readonly picture: Picture;
  readonly time: number;
  readonly system: System;
  /** There is no room for it: it is read out only. */
  readonly hidden: boolean;
  /** The worst flag on a device at the play head. */
  readonly flagOn: (device: string) => Flag | undefined;
}

export function bayTable(o: BayTable): TemplateResult {
  const { picture, time } = o;
  return html`<table class=${o.hidden ? 'aside' : ''}>
    <caption class="aside">
      State of each unit at ${seconds(time)}
    </caption>
    <thead>
      <tr>
        <th scope="col">Unit</th>
        <th scope="col" class="phase">Phase</th>
        <th scope="col" class="angle">Leg</th>
        <th scope="col" class="doors">Doors</th>
        <th scope="col" class="lock">Uplock</th>
        <th scope="col" class="lock">Downlock</th>
        <th scope="col" class="flags">Flagged here</th>
      </tr>
    </thead>
    <tbody>
      ${picture.units.map(
        (u) =>
          html`<tr data-unit=${u.name}>
            <th scope="row">${u.name}</th>
            <td>${stateAt(stretches(picture, u.name, 'phase'), time)}</td>
            <td>${angle(o, u.leg)}</td>
            <td>${doors(o, u)}</td>
            <td>${lock(o, u, 'uplock')}</td>
            <td>${lock(o, u, 'downlock')}</td>
            <td class="flags">
              ${flagged(o, [u.name, u.leg, ...u.doors, u.uplock, u.downlock, ...u.others])}
            </td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

function angle(o: BayTable, name: string): string {
  const { picture, time } = o;
  const outline = picture.outlines.find((each) => each.mechanism === name);
  if (outline === undefined) return '';
  const { low, high, ends } = outline;
  const at = angleAt(picture, outline, time);
  const share = (at - low) / (high - low || 1);
  if (share < 0.002) return ends[0];
  return share > 0.998 ? ends[1] : withUnit(at, 'angle', picture, o.system);
}

/** Doors that stand alike are told once; the unit of several angles once too. */
function doors(o: BayTable, unit: UnitFacts): string {
  if (unit.doors.length === 0) return 'none';
  const said = [...new Set(unit.doors.map((name) => angle(o, name)))];
  const ending = /\u00a0.*$/.exec(said.at(-1) ?? '')?.[0];
  return said
    .map((text, i) =>
      ending === undefined || i === said.length - 1 ? text : text.replace(ending, ''),
    )
    .join(', ');
}

function lock(o: BayTable, unit: UnitFacts, which: 'uplock' | 'downlock'): unknown {
  if (unit[which] === '') return 'none';
  const { mode, holds } = lockState(o.picture, unit, which, o.time);
  // 'locked retracted' tells how its jack stands; whose lock it is, the column says.
  const word = mode.startsWith('locked ') ? (holds ? 'locked' : 'open') : mode;
  return html`<span title=${mode}
    >${sign(holds ? 'engaged' : 'open')} <span class="word">${word}</span></span
  >`;
}

/** The worst flag on any of these at the play head, in words. */
function flagged(o: BayTable, names: readonly string[]): unknown {
  const rank = { fail: 0, caution: 1, note: 2 };
  const found = names
    .flatMap((n) => o.flagOn(n) ?? [])
    .sort((a, b) => rank[a.severity] - rank[b.severity])[0];
  if (found === undefined) return nothing;
  const how = margin(found.margin, found.marginQuantity, o.picture, o.system);
  return html`<span class=${found.severity} title="${found.title} (${how})"
    >${sign(found.severity)} ${found.title}</span
  >`;
}
