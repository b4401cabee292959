/** A cell of the map, a leg's verdict, in words and the user's units. */
import type { Cell, Telling } from '../model/blow-down.js';
import { margin, plain, seconds, withUnit } from '../model/sentence.js';
import type { BlowDownLeg, Condition, RampCase, Told } from '../worker/blow-down-message.js';
import type { Picture, System } from '../worker/message.js';

/** '1800 psi at 68.0 °F'. */
export function conditionText(c: Condition, picture: Picture, system: System): string {
  return `${withUnit(c.charge, 'gauge-pressure', picture, system)} at ${degrees(c.temperature, picture, system)}`;
}

/** A temperature without decimals. */
export function degrees(kelvin: number, picture: Picture, system: System): string {
  const d = picture.display[system].temperature;
  if (d === undefined) return `${kelvin.toFixed(0)}\u00a0K`;
  const value = (kelvin * d.factor + d.shift)
    .toFixed(0)
    .replace('-', '\u2212')
    .replace(/^−0$/, '0');
  return `${value}\u00a0${unitOf(d.unit)}`;
}

/** A unit as it is written: degF -> °F. */
export function unitOf(unit: string): string {
  return unit
    .replace(/^deg([CF])$/, '°$1')
    .replaceAll('^2', '²')
    .replaceAll('^3', '³');
}

export function percent(share: number): string {
  return Number.isFinite(share) ? `${(100 * share).toFixed(0)}\u00a0%` : 'not known';
}

const VERDICT_WORD = {
  unknown: 'not computed yet',
  locked: 'all down and locked',
  'not locked': 'not every leg locks',
  failed: 'the run failed',
} as const;

function figureOf(cell: Cell, telling: Telling, picture: Picture, system: System): string {
  if (telling === 'gas') return `${percent(cell.gas)} of the gas left`;
  if (telling === 'margin') return `${margin(cell.margin, 'moment', picture, system)} in hand`;
  return Number.isFinite(cell.time) ? `after ${seconds(cell.time)}` : '';
}

/** A cell in one line; `who` when it is not about the worst of all. */
export function cellSentence(
  cell: Cell,
  telling: Telling,
  who: string,
  picture: Picture,
  system: System,
): string {
  const { verdict, computed } = cell;
  const played = verdict === 'locked' || verdict === 'not locked';
  const figure = played ? figureOf(cell, telling, picture, system) : '';
  const told =
    who === '' || telling === 'gas' || figure === '' ? figure : `${plain(who)} ${figure}`;
  const parts = [VERDICT_WORD[verdict], ...(told === '' ? [] : [told])].join(', ');
  const how = played && !computed ? ' (filled in)' : '';
  return `${conditionText(cell.condition, picture, system)}: ${parts}${how}.`;
}

/** `free`: no lock held it all the time. */
export function legSentence(
  leg: BlowDownLeg,
  free: boolean,
  picture: Picture,
  system: System,
): string {
  const how = leg.locked
    ? `down and locked ${seconds(leg.time)} after the handle`
    : 'NOT down and locked';
  if (!free) return `${plain(leg.unit)}: ${how}; its lock never let go.`;
  if (!Number.isFinite(leg.margin)) return `${plain(leg.unit)}: ${how}.`;
  const at = withUnit(leg.at, 'angle', picture, system);
  return `${plain(leg.unit)}: ${how}; least in hand ${margin(leg.margin, 'moment', picture, system)}, at ${at}.`;
}

/** Running text with its figures in the user's units. */
export function toldText(told: Told, picture: Picture, system: System): string {
  return told
    .map((part) =>
      typeof part === 'string' ? part : withUnit(part.value, part.quantity, picture, system),
    )
    .join('');
}

export function rampSentence(r: RampCase, picture: Picture, system: System): string {
  const when = r.broken ? 'shortening link broken' : 'were its shortening link to break';
  const how =
    r.margin > 0
      ? 'the ramp in the bay frees the tyre, with'
      : 'the ramp in the bay holds the tyre, its angle does not beat the friction:';
  return `${plain(r.unit)}, ${when}: ${how} ${margin(r.moment, 'moment', picture, system)}, ${percent(r.margin)} of the strut’s push.`;
}
