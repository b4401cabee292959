import { SI_UNIT, type Quantity } from '../define/parameter.js';
import { Unit } from './mathematics.js';

/** A unit as text, ready for use: SI value = (number + offset) * scale. */
export interface UnitScale {
  readonly text: string;
  readonly scale: number;
  readonly offset: number;
  /** Exponents of the base dimensions as one text, for comparing. */
  readonly dimension: string;
  /** Written as gauge (`psig`) or absolute (`psia`); absent when the unit does not say. */
  readonly reference?: 'gauge' | 'absolute';
}

// Units of the trade that mathjs does not know. A revolution is 2 pi rad, US gallon.
Unit.createUnit({
  rev: '1 cycle',
  rpm: '1 cycle/min',
  gpm: '1 gal/min',
  lpm: '1 L/min',
  cSt: '1 mm^2/s',
  ksi: '1000 psi',
  slug: '1 lbf s^2/ft',
  ozf: '0.0625 lbf',
  knot: '0.514444444444444444 m/s',
  kt: '0.514444444444444444 m/s',
});

/** Longest unit text that is looked at. */
const LONGEST = 40;
const ALLOWED = /^[A-Za-z0-9 ^*/()-]+$/;
const REFERENCED = /^(k?psi|m?bar|[kM]?Pa)(g|a)$/;

const SPELLING: readonly (readonly [RegExp, string])[] = [
  [/°\s*([CF])\b/g, 'deg$1'],
  [/°/g, 'deg'],
  [/²/g, '^2'],
  [/³/g, '^3'],
  [/["″]/g, 'in'],
  [/[·×]/g, ' '],
  [/µ|μ/g, 'u'],
  [/^(1|strokes?|cycles?)?\s*\/\s*(s|min|h)$/, '$2^-1'],
];

const cache = new Map<string, UnitScale | undefined>();
/** Bounds the memory that a hostile file can take. */
const CACHE_SIZE = 500;

/**
 * Looks a unit up by its text, e.g. `gal/min`, `lbf ft`, `in^3/rev`, `degC`, `psig`; undefined when
 * it is none. Results are kept.
 */
export function findUnit(text: string): UnitScale | undefined {
  if (cache.has(text)) return cache.get(text);
  if (cache.size >= CACHE_SIZE) cache.clear();
  const unit = readUnit(text);
  cache.set(text, unit);
  return unit;
}

function readUnit(text: string): UnitScale | undefined {
  if (text.length > LONGEST) return undefined;
  if (text === '%') return { text, scale: 0.01, offset: 0, dimension: '' };
  let plain = text.trim();
  for (const [pattern, by] of SPELLING) plain = plain.replace(pattern, by);
  if (plain === '' || !ALLOWED.test(plain) || !/^[A-Za-z]/.test(plain)) return undefined;
  const referenced = REFERENCED.exec(plain);
  const name = referenced === null ? plain : referenced[1];
  try {
    const zero = Unit.parse(`0 ${name}`);
    const base = zero.toSI().value;
    // A wide span, so that the scale of a unit with an offset keeps its digits.
    const span = base === 0 ? 1 : 900;
    const scale = (Unit.parse(`${span} ${name}`).toSI().value - base) / span;
    const offset = base / scale;
    if (!Number.isFinite(scale) || scale === 0 || !Number.isFinite(offset)) return undefined;
    const unit = { text, scale, offset, dimension: dimensionText(zero.dimensions) };
    if (referenced === null) return unit;
    return { ...unit, reference: referenced[2] === 'g' ? 'gauge' : 'absolute' };
  } catch {
    return undefined;
  }
}

/** `''` for a plain number. */
function dimensionText(exponents: readonly number[]): string {
  return exponents.some((e) => e !== 0) ? exponents.map((e) => e + 0).join(',') : '';
}

const dimensions = new Map<Quantity, string>();

/** The dimension of a quantity, comparable with {@link UnitScale}. */
export function dimensionOf(quantity: Quantity): string {
  let dimension = dimensions.get(quantity);
  if (dimension === undefined) {
    const text = SI_UNIT[quantity];
    dimension =
      text === ''
        ? ''
        : dimensionText(Unit.parse(text === '1/s' ? '1 s^-1' : `1 ${text}`).dimensions);
    dimensions.set(quantity, dimension);
  }
  return dimension;
}
