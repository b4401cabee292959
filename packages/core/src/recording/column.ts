import type { ChannelInfo, Quantity } from '../define/index.js';
import { parseAnyQuantity, parseQuantity, type Problem } from '../quantity/index.js';

/** The head of a column: `left-leg.angle (deg)`, `Pressure [psi]`, `flow, gal/min`, `note`. */
export function headOf(cell: string): { readonly title: string; readonly unit: string } {
  const bracketed = /^(.*?)\s*[([]([^()[\]]*(?:\([^()]*\)[^()[\]]*)?)[)\]]$/.exec(cell);
  if (bracketed !== null) return { title: bracketed[1], unit: bracketed[2].trim() };
  const comma = cell.lastIndexOf(',');
  const tail = cell.slice(comma + 1).trim();
  if (comma > 0 && isUnit(tail)) return { title: cell.slice(0, comma).trim(), unit: tail };
  return { title: cell, unit: '' };
}

export function isUnit(text: string): boolean {
  return text !== '' && !('problem' in parseAnyQuantity(`1 ${text}`));
}

/** The channel that a column's title names, whatever the order and spelling of its words; '' for none. */
export function channelNamed(title: string, channels: readonly ChannelInfo[]): string {
  const exact = channels.find((c) => c.name === title);
  if (exact !== undefined) return exact.name;
  const key = wordsOf(title);
  const found =
    channels.find((c) => wordsOf(c.name) === key) ??
    channels.find((c) => wordsOf(`${c.of} ${c.title}`) === key);
  return found?.name ?? '';
}

function wordsOf(text: string): string {
  return text
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^a-z0-9]+/)
    .filter((w) => w !== '')
    .sort()
    .join(' ');
}

/** How a column's numbers become SI: `number * scale + shift`. */
export interface Conversion {
  readonly quantity: Quantity;
  readonly scale: number;
  readonly shift: number;
}

/**
 * The way from a unit to SI. A pressure is what a gauge shows unless its unit says absolute
 * (`psia`, `bara`) or is the plain `Pa` of this library's own SI files; where the channel is an
 * absolute one, `ambient` is added to what a gauge shows. Without a quantity the unit tells it.
 */
export function conversion(
  unit: string,
  quantity: Quantity | undefined,
  ambient: number,
): Conversion | Problem {
  if (quantity === undefined) return free(unit);
  if (quantity !== 'pressure') return line(unit, quantity);
  if (unit === 'Pa') return line(unit, 'pressure');
  const gauge = line(unit, 'gauge-pressure');
  if ('problem' in gauge) {
    const absolute = line(unit, 'pressure');
    // A unit that is neither is told of as the gauge pressure that was most likely meant.
    return 'problem' in absolute ? gauge : absolute;
  }
  return { quantity, scale: gauge.scale, shift: gauge.shift + ambient };
}

function free(unit: string): Conversion | Problem {
  if (unit === '') return { quantity: 'ratio', scale: 1, shift: 0 };
  const read = parseAnyQuantity(`1 ${unit}`);
  return 'problem' in read ? read : line(unit, read.quantity);
}

/** Every unit is a straight line of its SI one: two points give it. */
function line(unit: string, quantity: Quantity): Conversion | Problem {
  const zero = parseQuantity(`0 ${unit}`, quantity);
  // Far out, so that the scale of a unit with an offset keeps its digits.
  const far = parseQuantity(`1000 ${unit}`, quantity);
  if ('problem' in zero) return zero;
  if ('problem' in far) return far;
  return { quantity, scale: (far.value - zero.value) / 1000, shift: zero.value };
}
