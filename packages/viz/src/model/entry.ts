/** Numbers written by hand: text to SI within what a sheet may hold. */
import type { Picture, Quantity, System } from '../worker/message.js';

/** What reading a sheet takes, in SI. */
const RANGES = {
  time: [0, 3600],
  error: [0.001, 60],
  'gauge-pressure': [-1.1e5, 1e8],
  flow: [0, 0.05],
  temperature: [203.15, 423.15],
  angle: [-1.6, 1.6],
  left: [0.1, 86_400],
  count: [0, 10_000],
} as const;
export type EntryKind = keyof typeof RANGES;

const quantityOf = (kind: EntryKind): Quantity =>
  kind === 'error' || kind === 'left' ? 'time' : kind;

/** An SI value as it stands in its field; empty for what is missing. */
export function written(
  value: number | undefined,
  kind: EntryKind,
  picture: Picture,
  system: System,
): string {
  if (value === undefined) return '';
  const d = picture.display[system][quantityOf(kind)];
  const shown = value * (d?.factor ?? 1) + (d?.shift ?? 0);
  return String(Number(shown.toPrecision(6)));
}

export type Entry =
  { readonly value: number | undefined; readonly wrong: '' } | { readonly wrong: string };

/** A number as people write one, also with a decimal comma; nothing at all is what is missing. */
export function entered(text: string, kind: EntryKind, picture: Picture, system: System): Entry {
  const plain = text.trim().replace(',', '.').replace('\u2212', '-');
  if (plain === '') return { value: undefined, wrong: '' };
  const d = picture.display[system][quantityOf(kind)];
  const number = /^-?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : NaN;
  if (!Number.isFinite(number)) return { wrong: `“${text.trim().slice(0, 30)}” is not a number` };
  const value = (number - (d?.shift ?? 0)) / (d?.factor ?? 1);
  const [low, high] = RANGES[kind];
  if (value >= low && value <= high) return { value, wrong: '' };
  const end = (v: number): string => written(v, kind, picture, system);
  return {
    wrong: `${plain} is out of bounds: ${end(low)} to ${end(high)} ${d?.unit ?? ''} belongs here`,
  };
}
