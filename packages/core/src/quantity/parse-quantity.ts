import type { Quantity } from '../define/parameter.js';
import { nearestName } from './nearest-name.js';
import { dimensionOf, findUnit, type UnitScale } from './unit.js';
import { QUANTITY_WORDS, quantityOfDimension, usualUnit } from './words.js';

/** What is wrong with a text, for an issue: one sentence, what is allowed, what to do. */
export interface Problem {
  readonly problem: string;
  readonly allowed: string;
  readonly hint: string;
}

/** A quantity as read: SI value, and the unit it was written in. */
export interface ReadQuantity {
  readonly value: number;
  /** The unit's text; `''` for a plain number. */
  readonly unit: string;
}

/** Longest text that is looked at; longer is refused unread. */
const LONGEST = 64;
const FRACTIONS: Readonly<Record<string, string>> = {
  ...{ '½': '1/2', '¼': '1/4', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' },
};
// Sign, then `1 3/4`, `1-3/4`, `3/4` or a decimal number; the rest is the unit.
const NUMBER =
  /^([-+\u2212]?)\s*(?:(?:(\d{1,6})[ -]\s*)?(\d{1,6})\/(\d{1,6})|(\d+\.?\d*(?:[eE][-+]?\d{1,3})?|\.\d+(?:[eE][-+]?\d{1,3})?))(?![\d.,])\s*(.*)$/;

const COMMON_UNITS = [
  ...[
    'mm',
    'cm',
    'm',
    'in',
    'ft',
    'mm^2',
    'cm^2',
    'in^2',
    'cm^3',
    'in^3',
    'L',
    'gal',
    's',
    'ms',
    'min',
  ],
  ...[
    'Hz',
    'm/s',
    'ft/s',
    'deg',
    'rad',
    'rad/s',
    'rpm',
    'kg',
    'lb',
    'N',
    'kN',
    'lbf',
    'N m',
    'lbf ft',
  ],
  ...[
    'lbf in',
    'psi',
    'bar',
    'MPa',
    'kPa',
    'Pa',
    'gal/min',
    'gpm',
    'L/min',
    'in^3/rev',
    'cm^3/rev',
  ],
  ...['cSt', 'degC', 'degF', 'K', 'kW', 'hp', 'J', 'knot'],
];

/**
 * Reads a quantity as people write one: `45 mm`, `1 3/4 in`, `3.2 gal/min`, `1500 psi`, `20 degC`,
 * `0.5 %`. The value is in the SI unit of the quantity (gauge pressures: Pa gauge). A number without
 * a unit is taken for ratios and counts only. Cost is bounded whatever the text.
 */
export function parseQuantity(text: string, quantity: Quantity): ReadQuantity | Problem {
  const split = splitNumber(text, quantity);
  if ('problem' in split) return split;
  const { number, unitText } = split;
  const words = QUANTITY_WORDS[quantity];
  const dimension = dimensionOf(quantity);
  if (unitText === '') {
    if (dimension === '') return finite(number, '', quantity);
    return refuse(
      quantity,
      `a unit is missing: ${words.name} belongs here`,
      `write the unit, e.g. ${trim(number)} ${usualUnit(quantity)}`,
    );
  }
  const unit = findUnit(unitText);
  if (unit === undefined) return unknownUnit(unitText, quantity);
  if (unit.dimension !== dimension) {
    const other = quantityOfDimension(unit.dimension);
    const what = other === undefined ? `${unitText} does not fit` : `${unitText} is ${kind(other)}`;
    return refuse(quantity, `${what}: ${words.name} belongs here`, confusion(unit, quantity));
  }
  const wrong = wrongReference(unit, quantity);
  if (wrong !== undefined) return wrong;
  return finite((number + unit.offset) * unit.scale, unitText, quantity);
}

/**
 * Reads a quantity of whatever kind its unit says (for figures whose kind the author chooses, such
 * as a limit of one's own); a pressure is taken as gauge unless written `psia`.
 */
export function parseAnyQuantity(text: string): (ReadQuantity & { quantity: Quantity }) | Problem {
  const split = splitNumber(text, 'ratio');
  if ('problem' in split) return split;
  if (split.unitText === '')
    return { ...finite(split.number, '', 'ratio'), quantity: 'ratio' } as never;
  const unit = findUnit(split.unitText);
  if (unit === undefined) return unknownUnit(split.unitText, 'ratio');
  let quantity = quantityOfDimension(unit.dimension);
  if (quantity === undefined) return refuse('ratio', `${split.unitText} is no unit used here`, '');
  if (unit.reference === 'absolute') quantity = 'pressure';
  const read = parseQuantity(text, quantity);
  return 'problem' in read ? read : { ...read, quantity };
}

/** An SI value in a unit written as text, as people would write it: `1500 psi`. */
export function inUnit(value: number, unitText: string, digits = 6): string {
  if (unitText === '') return trim(value, digits);
  const unit = findUnit(unitText);
  if (unit === undefined) return trim(value, digits);
  return `${trim(value / unit.scale - unit.offset, digits)} ${unitText}`;
}

function trim(value: number, digits = 6): string {
  return String(Number(value.toPrecision(digits)));
}

function splitNumber(
  text: string,
  quantity: Quantity,
): { number: number; unitText: string } | Problem {
  const words = QUANTITY_WORDS[quantity];
  if (text.length > LONGEST) return refuse(quantity, `this is too long for ${words.name}`, '');
  const plain = text
    .trim()
    .replace(/(\d)?\s*([½¼¾⅛⅜⅝⅞])/g, (_, whole: string | undefined, f: string) =>
      whole === undefined ? FRACTIONS[f] : `${whole} ${FRACTIONS[f]}`,
    );
  const match = NUMBER.exec(plain);
  if (match === null) {
    const comma = /^[-+]?\d+,\d/.test(plain);
    const hint = comma
      ? 'write the number without a comma: a point for decimals, nothing between thousands'
      : '';
    return refuse(quantity, `this is not ${words.name}`, hint);
  }
  const [, sign, whole, over, under, decimal, rest] = match;
  const size =
    decimal === undefined ? Number(whole ?? 0) + Number(over) / Number(under) : Number(decimal);
  return { number: sign === '-' || sign === '\u2212' ? -size : size, unitText: rest.trim() };
}

function finite(value: number, unit: string, quantity: Quantity): ReadQuantity | Problem {
  return Number.isFinite(value)
    ? { value, unit }
    : refuse(quantity, 'this number is beyond all bounds', '');
}

function refuse(quantity: Quantity, problem: string, hint: string): Problem {
  const { name, examples } = QUANTITY_WORDS[quantity];
  return { problem, allowed: `${name}, e.g. ${examples.join(' or ')}`, hint };
}

/** The kind of a quantity without saying gauge or absolute: that is not what was mistaken. */
function kind(quantity: Quantity): string {
  return quantity === 'gauge-pressure' || quantity === 'pressure'
    ? 'a pressure'
    : QUANTITY_WORDS[quantity].name;
}

function unknownUnit(unitText: string, quantity: Quantity): Problem {
  const near = nearestName(unitText, COMMON_UNITS);
  const shown = unitText.length > 20 ? `${unitText.slice(0, 20)}…` : unitText;
  const hint = near === undefined ? '' : `did you mean ${near}?`;
  return refuse(quantity, `"${shown}" is not a unit known here`, hint);
}

/** Mix-ups that are common enough to be named. */
function confusion(unit: UnitScale, quantity: Quantity): string {
  if (
    /\blbs?\b/.test(unit.text) &&
    (quantity === 'force' || quantity === 'moment' || quantity === 'stiffness')
  ) {
    return 'lb is a mass; the force is lbf';
  }
  if (quantity === 'temperature' && /^[CF]$/.test(unit.text)) return `write deg${unit.text}`;
  if (quantity === 'displacement' && unit.dimension === dimensionOf('volume'))
    return 'write it per turn, e.g. in^3/rev';
  if (quantity === 'angular-speed' && unit.dimension === dimensionOf('frequency'))
    return 'write rpm, rev/s or rad/s';
  if (quantity === 'frequency' && unit.dimension === dimensionOf('angular-speed'))
    return 'write 1/min or Hz';
  return '';
}

function wrongReference(unit: UnitScale, quantity: Quantity): Problem | undefined {
  if (quantity === 'pressure' && unit.reference === 'gauge') {
    return refuse(
      quantity,
      `${unit.text} is a gauge pressure: an absolute pressure belongs here`,
      'add the pressure of the surrounding air',
    );
  }
  if (quantity === 'gauge-pressure' && unit.reference === 'absolute') {
    return refuse(
      quantity,
      `${unit.text} is an absolute pressure: a gauge pressure belongs here`,
      'take off the pressure of the surrounding air',
    );
  }
  return undefined;
}
