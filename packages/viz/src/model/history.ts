/** Questions about a run's past and future, asked of the picture: pure functions of it. */
import { bisector } from 'd3-array';
import type { Flag, LogEntry, Picture, Severity } from '../worker/message.js';
import { devicesOf } from './bearers.js';

/** A stretch of time a device spends in one state. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly state: string;
  /** Log entry that began it; -1 for the state at the start. */
  readonly index: number;
}

/** How far the run got, s. */
export function reached(picture: Picture): number {
  return Math.min(picture.outcome.time, picture.duration);
}

/** True for the entries that tell how things stood at the start: states, not events. */
export function isStart(e: LogEntry): boolean {
  return e.from === '' && e.t === 0;
}

const entries = new WeakMap<Picture['log'], Map<string, LogEntry[]>>();

/** What the log tells of a device, mechanism or unit. */
export function entriesOf({ log }: Picture, device: string): readonly LogEntry[] {
  let all = entries.get(log);
  if (all === undefined) {
    all = new Map();
    for (const e of log) {
      const own = all.get(e.device);
      if (own === undefined) all.set(e.device, [e]);
      else own.push(e);
    }
    entries.set(log, all);
  }
  return all.get(device) ?? [];
}

/** Stretches do not change during a run: kept for as long as its picture lives. */
const known = new WeakMap<Picture, Map<string, readonly Stretch[]>>();

/** The states of one kind (`mode`, `motion`, `phase`) a device goes through, first to last. */
export function stretches(
  picture: Picture,
  device: string,
  kind: LogEntry['kind'],
): readonly Stretch[] {
  const kept = known.get(picture) ?? new Map<string, readonly Stretch[]>();
  known.set(picture, kept);
  const key = `${kind} ${device}`;
  const list = kept.get(key) ?? findStretches(picture, device, kind);
  kept.set(key, list);
  return list;
}

function findStretches(picture: Picture, device: string, kind: LogEntry['kind']): Stretch[] {
  const end = reached(picture);
  const own = entriesOf(picture, device).filter((e) => e.kind === kind);
  const out: Stretch[] = [];
  const unchanged =
    kind === 'mode' ? picture.devices.find((d) => d.name === device)?.first : undefined;
  const firstFrom = own[0]?.from ?? unchanged ?? '';
  if (firstFrom !== '') out.push({ from: 0, to: own[0]?.t ?? end, state: firstFrom, index: -1 });
  own.forEach((e, i) => {
    out.push({ from: e.t, to: own[i + 1]?.t ?? end, state: e.to, index: e.index });
  });
  return out.filter((s) => s.to > s.from || s.index >= 0);
}

/** The state at a time; the latest of several beginning at one instant. */
export function stateAt(list: readonly Stretch[], time: number): string {
  let state = list[0]?.state ?? '';
  for (const s of list) {
    if (s.from > time) break;
    state = s.state;
  }
  return state;
}

/** A mechanism's angle at a time, between its samples, rad; undefined when the run has none. */
export function angleOf(picture: Picture, mechanism: string, time: number): number | undefined {
  const v = picture.angles.find((a) => a.mechanism === mechanism)?.v;
  if (v === undefined || v.length === 0) return undefined;
  const at = Math.min(Math.max(time / picture.tick, 0), v.length - 1);
  const i = Math.min(Math.floor(at), v.length - 1);
  const a = v[i] ?? 0;
  const b = v[Math.min(i + 1, v.length - 1)] ?? a;
  return a + (b - a) * (at - i);
}

/** Instants closer than this count as one when stepping, s. */
const SAME = 1e-9;

const byTime = bisector((e: LogEntry) => e.t);

/** Index of the event after the selected one (or after the time when none is selected there); -1 at the end. */
export function eventAfter(log: readonly LogEntry[], time: number, selected: number): number {
  const current = log[selected];
  if (current !== undefined && Math.abs(current.t - time) <= SAME) {
    return selected + 1 < log.length ? selected + 1 : -1;
  }
  const i = byTime.right(log, time + SAME);
  return i < log.length ? i : -1;
}

export function eventBefore(log: readonly LogEntry[], time: number, selected: number): number {
  const current = log[selected];
  if (current !== undefined && Math.abs(current.t - time) <= SAME) return selected - 1;
  let i = log.length - 1;
  while (i >= 0 && (log[i]?.t ?? 0) >= time - SAME) i -= 1;
  return i;
}

/** The last event at or before a time; -1 before the first. */
export function eventAt(log: readonly LogEntry[], time: number): number {
  return byTime.right(log, time + SAME) - 1;
}

/** The chain of causes of an event, nearest first, without the event itself. */
export function causesOf(log: readonly LogEntry[], index: number): number[] {
  const out: number[] = [];
  let at = log[index]?.by ?? -1;
  while (at >= 0 && !out.includes(at) && out.length < log.length) {
    out.push(at);
    at = log[at]?.by ?? -1;
  }
  return out;
}

/** The events an event brought about directly. */
export function effectsOf(log: readonly LogEntry[], index: number): number[] {
  return log.filter((e) => e.by === index).map((e) => e.index);
}

/** Flags by time. */
export function flagsInOrder(flags: readonly Flag[]): number[] {
  return flags
    .map((_, i) => i)
    .sort((a, b) => (flags[a]?.from ?? 0) - (flags[b]?.from ?? 0) || a - b);
}

/**
 * The next flag (or the former, `by` -1) that is not a mere note, from the one picked out or
 * else from the time; wraps round. -1 when there is none.
 */
export function flagAfter(
  flags: readonly Flag[],
  time: number,
  selected: number,
  by: -1 | 1,
): number {
  const order = flagsInOrder(flags).filter((i) => flags[i].severity !== 'note');
  if (order.length === 0) return -1;
  const at = order.indexOf(selected);
  const passed = order.filter((i) => flags[i].from <= time).length;
  const next = at >= 0 ? at + by : by > 0 ? passed : passed - 1;
  return order[(next + order.length) % order.length];
}

const RANK: Readonly<Record<Severity, number>> = { fail: 0, caution: 1, note: 2 };

/** Flags worst first, then by time. */
export function flagsBySeverity(flags: readonly Flag[]): number[] {
  const rank = (i: number): number => RANK[flags[i]?.severity ?? 'note'];
  return flagsInOrder(flags).sort((a, b) => rank(a) - rank(b));
}

/** How long a flag of no length stays marked on the drawing, s. */
const LINGER = 0.75;

type FlagsByDevice = Map<string, (readonly [index: number, flag: Flag])[]>;

/** A quick run has the flags of the one before it, until its own come. */
const byDevice = new WeakMap<Picture['flags'], FlagsByDevice>();

/** The flags on each device, with their indices. */
function flagsByDevice(picture: Picture): FlagsByDevice {
  const { flags } = picture;
  const known = byDevice.get(flags);
  if (known !== undefined) return known;
  const found: FlagsByDevice = new Map();
  for (const [i, flag] of flags.entries())
    for (const device of devicesOf(picture, flag)) {
      const own = found.get(device) ?? [];
      found.set(device, own);
      own.push([i, flag]);
    }
  byDevice.set(flags, found);
  return found;
}

/** The worst flag on a device at a time (or selected); undefined when there is none. */
export function flagOn(
  picture: Picture,
  device: string,
  time: number,
  selected: number,
): Flag | undefined {
  let worst: Flag | undefined;
  for (const [i, f] of flagsByDevice(picture).get(device) ?? []) {
    if (f.severity === 'note' && i !== selected) continue;
    const now = time >= f.from - SAME && time <= Math.max(f.to, f.from + LINGER);
    if ((now || i === selected) && (worst === undefined || RANK[f.severity] < RANK[worst.severity]))
      worst = f;
  }
  return worst;
}
