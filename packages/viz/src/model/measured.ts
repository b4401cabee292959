/** Times taken by hand on the aircraft, to be laid over those of the run. */
import type { LogEntry, Picture } from '../worker/message.js';
import { isStart } from './history.js';
import { plain, seconds } from './sentence.js';
import type { Store } from './store.js';

/** One reading of a watch. */
export interface MeasuredTime {
  /** Unit, device or mechanism as the log names it: `left`, `left-door`. */
  readonly on: string;
  /** What was seen of it, in the log's words: `down and locked`, `at open`. */
  readonly event: string;
  /** The operator's deed at which the watch was started: `selector down`; empty for the start of the run. */
  readonly since: string;
  /** What the watch read, s. */
  readonly time: number;
  /** Reading error, s: the true time lies within `time` ± `error`. */
  readonly error: number;
}

/** A hand on a watch, on the lever's call and on the event: common practice, no source, s. */
export const USUAL_ERROR = 0.2;

/** An hour: longer is a slip of the finger, s. */
const LONGEST = 3600;

/** Where a reading stands in the run on show. */
export interface Placed {
  readonly measured: MeasuredTime;
  /** In the run's time, s. */
  readonly t: number;
  /** The event of the run it was taken of; undefined when the run has none. */
  readonly entry: LogEntry | undefined;
  /** Measured less simulated, s; NaN without such an event. */
  readonly difference: number;
}

/** A deed of the operator that a watch can be started at. */
export interface Deed {
  readonly name: string;
  readonly t: number;
  /** The next deed of the same part: the reading belongs before it, s. */
  readonly until: number;
}

/** The operator's deeds, each at its first time. */
export function deeds(picture: Picture): readonly Deed[] {
  const all = picture.log.filter((e) => e.kind === 'operator');
  const found = new Map<string, Deed>();
  for (const e of all) {
    const name = `${e.device} ${e.to}`;
    const next = all.find((o) => o.device === e.device && o.index > e.index);
    if (!found.has(name)) found.set(name, { name, t: e.t, until: next?.t ?? Infinity });
  }
  return [...found.values()];
}

const START: Deed = { name: '', t: 0, until: Infinity };

function deedOf(picture: Picture, since: string): Deed | undefined {
  return since === '' ? START : deeds(picture).find((d) => d.name === since);
}

/** The events that can be timed from a deed on, each at its first time after it. */
export function timeable(picture: Picture, since: string): readonly LogEntry[] {
  const deed = deedOf(picture, since);
  if (deed === undefined) return [];
  const seen = new Set<string>();
  return picture.log.filter((e) => {
    const key = `${e.device}\n${e.to}`;
    if (isStart(e) || e.kind === 'operator' || e.kind === 'note') return false;
    if (e.t < deed.t || e.t >= deed.until || seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** Undefined when this run has no such deed. */
export function placed(picture: Picture, measured: MeasuredTime): Placed | undefined {
  const deed = deedOf(picture, measured.since);
  if (deed === undefined) return undefined;
  const t = deed.t + measured.time;
  const entry = timeable(picture, measured.since).find(
    (e) => e.device === measured.on && e.to === measured.event,
  );
  return { measured, t, entry, difference: entry === undefined ? NaN : t - entry.t };
}

/** Whether the simulated time lies within the reading error. */
export function agrees(p: Placed): boolean {
  return Math.abs(p.difference) <= p.measured.error;
}

export function sentenceOfMeasured(m: MeasuredTime): string {
  const from = m.since === '' ? 'from the start' : `from ${plain(m.since)}`;
  return `${plain(m.on)} ${m.event}: ${seconds(m.time)} ± ${seconds(m.error)} ${from}`;
}

/** Why a reading cannot be taken down; empty when it can. */
export function wrongWith(m: MeasuredTime): string {
  if (m.on === '' || m.event === '') return 'Say what was timed.';
  if (!(m.time >= 0 && m.time <= LONGEST)) return 'The time has to be a number of seconds.';
  if (!(m.error >= 0 && m.error <= LONGEST)) return 'The error has to be a number of seconds.';
  return '';
}

const same = (a: MeasuredTime, b: MeasuredTime): boolean =>
  a.on === b.on && a.event === b.event && a.since === b.since;

/** The verbs of the list, on the page's one store. */
export class MeasuredWork {
  readonly #store: Store;

  constructor(store: Store) {
    this.#store = store;
  }

  /** Takes a reading down, in place of a former one of the same; the reason when it cannot be. */
  put(reading: MeasuredTime): string {
    const wrong = wrongWith(reading);
    if (wrong !== '') return wrong;
    const kept = this.#store.state.measured.filter((m) => !same(m, reading));
    this.#store.set({
      measured: [...kept, reading],
      said: `Taken down: ${sentenceOfMeasured(reading)}.`,
    });
    return '';
  }

  remove(reading: MeasuredTime): void {
    this.#store.set({
      measured: this.#store.state.measured.filter((m) => !same(m, reading)),
      said: `Crossed out: ${sentenceOfMeasured(reading)}.`,
    });
  }

  clear(): void {
    this.#store.set({ measured: [], said: 'All measured times are crossed out.' });
  }
}
