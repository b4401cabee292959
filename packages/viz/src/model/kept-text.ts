/** Kept work as text and back; what does not look as it should is refused whole. */
import type { Edit, FaultEntry } from '../worker/message.js';
import type { Change } from './changes.js';
import type { Held } from './held.js';
import type { MeasuredTime } from './measured.js';
import { wrongWith } from './measured.js';

/** Of the text's form; another one is not read. */
const VERSION = 1;

export interface Kept {
  /** ms since 1970. */
  readonly when: number;
  readonly file: string;
  /** The source; absent for one that comes with the page. */
  readonly text?: string;
  readonly card: string;
  readonly edits: readonly Edit[];
  readonly faults: readonly FaultEntry[];
  /** The card's own faults. */
  readonly own: readonly FaultEntry[];
  readonly measured: readonly MeasuredTime[];
  /** What can be taken back, the latest last; absent in what former pages kept. */
  readonly past?: readonly Change[];
  /** The run that others are set beside; absent where none is held. */
  readonly held?: Held;
  readonly time: number;
  readonly span: readonly [number, number];
  readonly bench: string;
  readonly large: boolean;
}

export function encode(kept: Kept): string {
  return JSON.stringify({ version: VERSION, ...kept });
}

type Raw = Readonly<Record<string, unknown>>;

const isRaw = (v: unknown): v is Raw => typeof v === 'object' && v !== null && !Array.isArray(v);
const words = (v: Raw, ...keys: string[]): boolean => keys.every((k) => typeof v[k] === 'string');
const numbers = (v: Raw, ...keys: string[]): boolean => keys.every((k) => Number.isFinite(v[k]));
const all = (v: unknown, good: (each: Raw) => boolean): boolean =>
  Array.isArray(v) && v.every((each: unknown) => isRaw(each) && good(each));

const isEdit = (v: Raw): boolean => words(v, 'path', 'value');
const isFault = (v: Raw): boolean => words(v, 'fault', 'on') && numbers(v, 'severity');
const isChange = (v: Raw): boolean => {
  const good = v.kind === 'faults' ? isFault : isEdit;
  return (
    words(v, 'what', 'gesture', ...(v.kind === 'faults' ? ['card'] : [])) &&
    (v.kind === 'faults' || v.kind === 'edits') &&
    all(v.before, good) &&
    all(v.after, good)
  );
};
const isMeasured = (v: Raw): boolean =>
  words(v, 'on', 'event', 'since') &&
  numbers(v, 'time', 'error') &&
  wrongWith(v as unknown as MeasuredTime) === '';

const isTiming = (v: Raw): boolean =>
  words(v, 'unit', 'side', 'direction') && TIMES.every((k) => isTime(v[k]));
const TIMES = ['start', 'moving', 'locked', 'doors', 'total'] as const;
/** What never came is no number, and JSON writes that as null. */
const isTime = (v: unknown): boolean => v === null || Number.isFinite(v);
const isArrival = (v: Raw): boolean => words(v, 'movement', 'device', 'to') && numbers(v, 't');
const isHeld = (v: unknown): boolean =>
  isRaw(v) &&
  words(v, 'title') &&
  numbers(v, 'flags') &&
  (v.least === undefined || Number.isFinite(v.least)) &&
  all(v.timings, isTiming) &&
  all(v.order, isArrival);

/** Undefined when it is anything else than what {@link encode} makes. */
export function decode(text: string): Kept | undefined {
  let v: unknown;
  try {
    v = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (!isRaw(v) || v.version !== VERSION) return undefined;
  const { version: _, ...kept } = v;
  const good =
    words(v, 'file', 'card', 'bench') &&
    numbers(v, 'when', 'time') &&
    (v.text === undefined || typeof v.text === 'string') &&
    typeof v.large === 'boolean' &&
    Array.isArray(v.span) &&
    v.span.length === 2 &&
    v.span.every(Number.isFinite) &&
    all(v.edits, isEdit) &&
    all(v.faults, isFault) &&
    all(v.own, isFault) &&
    all(v.measured, isMeasured) &&
    (v.past === undefined || all(v.past, isChange)) &&
    (v.held === undefined || isHeld(v.held));
  return good ? withTimes(kept as unknown as Kept) : undefined;
}

function withTimes(kept: Kept): Kept {
  const { held } = kept;
  if (held === undefined) return kept;
  const timings = held.timings.map((t) => ({
    ...t,
    ...Object.fromEntries(TIMES.map((k) => [k, t[k] ?? NaN])),
  }));
  return { ...kept, held: { ...held, timings } };
}
