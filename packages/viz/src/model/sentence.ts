/** Numbers and records as words, in the user's units. */
import { format } from 'd3-format';
import type { FaultEntry, Flag, Picture, Quantity, Severity, System } from '../worker/message.js';
import { words } from '../worker/words.js';

export const SEVERITY_WORD: Readonly<Record<Severity, string>> = {
  fail: 'Fail',
  caution: 'Caution',
  note: 'Within limits',
};

const grouped = format(',');
const hundredths = format('.2f');

/** A number with about three figures that mean something. */
export function figure(value: number): string {
  const size = Math.abs(value);
  if (!Number.isFinite(value)) return 'none';
  const digits = size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3;
  const rounded = Number(value.toFixed(digits));
  const text = size >= 10000 ? grouped(rounded) : rounded.toFixed(digits);
  return text.replace('-', '\u2212');
}

/** A unit as it is written on paper: 'cm^3' -> 'cm³'. */
export function written(unit: string): string {
  return unit.replaceAll('^2', '²').replaceAll('^3', '³');
}

/** A value with its unit. */
export function withUnit(
  value: number,
  quantity: Quantity,
  picture: Picture,
  system: System,
): string {
  const d = picture.display[system][quantity];
  if (d === undefined) return figure(value);
  const shown = figure(value * d.factor + d.shift);
  return d.unit === '' ? shown : `${shown}\u00a0${written(d.unit)}`;
}

/** The same with no more figures than can be read off a drawing in passing. */
export function brief(value: number, quantity: Quantity, picture: Picture, system: System): string {
  const d = picture.display[system][quantity];
  const shown = value * (d?.factor ?? 1) + (d?.shift ?? 0);
  const text = (Math.abs(shown) < 9.95 ? shown.toFixed(1) : figure(Math.round(shown))).replace(
    /^-0\.0$/,
    '0.0',
  );
  return `${text.replace('-', '\u2212').replace(/\.0+$/, '')}\u00a0${written(d?.unit ?? '')}`;
}

/** A difference (margin, spread): never shifted, always signed. */
export function margin(
  value: number,
  quantity: Quantity,
  picture: Picture,
  system: System,
): string {
  if (!Number.isFinite(value)) return 'no figure';
  const d = picture.display[system][quantity];
  const shown = value * (d?.factor ?? 1);
  const sign = shown > 0 ? '+' : '';
  return `${sign}${figure(shown)}${d === undefined || d.unit === '' ? '' : `\u00a0${written(d.unit)}`}`;
}

/** A difference of times with its sign, to a hundredth: nought has a plus. */
export function signed(seconds: number): string {
  const text = hundredths(seconds);
  return text.startsWith('\u2212') ? text : `+${text}`;
}

export function seconds(t: number, digits = 2): string {
  return Number.isFinite(t) ? `${t.toFixed(digits)}\u00a0s` : 'not reached';
}

/** A name as a heading: 'left-leg' -> 'left leg', 'left-jack.headChamber' -> 'left jack head chamber'. */
export function plain(name: string): string {
  return words(name).replace(/[-.]/g, ' ');
}

export function sentenceOfFlag(flag: Flag, picture: Picture, system: System): string {
  const how = margin(flag.margin, flag.marginQuantity, picture, system);
  return `${SEVERITY_WORD[flag.severity]} at ${seconds(flag.from)}: ${flag.title}, ${flag.devices.map(plain).join(' and ')}, margin ${how}.`;
}

export function count(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

/** A card's title and what was changed about its faults. */
export function titleOfRun(picture: Picture): string {
  const card = picture.cards.find((c) => c.name === picture.card);
  const title = card?.title ?? picture.card;
  const name = (f: FaultEntry): string => `${plain(f.fault)} on ${plain(f.on)}`;
  const own = (card?.faults ?? []).map(name);
  const now = picture.faults.map(name);
  const more = now.filter((f) => !own.includes(f));
  const less = own.filter((f) => !now.includes(f));
  const figures = picture.edits.length === 0 ? [] : [count(picture.edits.length, 'changed figure')];
  const faults = [...more.map((f) => `with ${f}`), ...less.map((f) => `without ${f}`)];
  return [title, ...faults, ...figures].join(', ');
}

export function sentenceOfRun(picture: Picture): string {
  const of = (s: Severity): number => picture.flags.filter((f) => f.severity === s).length;
  const verdict =
    of('fail') + of('caution') === 0
      ? 'no flags'
      : `${count(of('fail'), 'fail')}, ${count(of('caution'), 'caution')}`;
  const end =
    picture.outcome.kind === 'done'
      ? 'Run finished'
      : `The run ended early: ${picture.outcome.why}`;
  return `${end}: ${verdict}.`;
}
