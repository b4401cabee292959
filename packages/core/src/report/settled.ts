import type { LogEntry, Run } from '../define/index.js';

/** A change of state as a reader wants it: what it was before, and which line brought it about. */
export interface Change {
  readonly entry: LogEntry;
  readonly from: string;
  readonly to: string;
  /** Index of the log entry that brought it about, among those that are told; -1 when none is known. */
  readonly by: number;
}

export interface Settled {
  /** States at the start: state -> who is in it. */
  readonly start: ReadonlyMap<string, readonly string[]>;
  readonly changes: readonly Change[];
  /** States shorter than this are left out, s; how many entries that leaves out. */
  readonly least: number;
  readonly left: number;
}

/** Shorter than anyone could see, s. */
const FLICKER = 0.05;
/** By hand pump all moves in strokes; this is longer than one there and back, s. */
const STROKE = 1.5;
const MANY_STROKES = 10;
/** A state that is left and taken up again for longer than that. */
const TO_AND_FRO = 'to and fro';

/** The log as one would tell it; with `whole` every entry. */
export function settle(run: Run, whole: boolean): Settled {
  const least = whole ? 0 : shortest(run);
  const start = new Map<string, string[]>();
  const streams = new Map<string, LogEntry[]>();
  for (const e of run.log) {
    if (e.from === '' && e.t === 0 && e.kind !== 'operator') {
      start.set(e.to, [...(start.get(e.to) ?? []), e.device]);
    }
    // The operator's acts and the machine's notes stand alone: each is a stream of its own.
    const alone = e.kind === 'operator' || e.kind === 'note';
    const key = `${e.kind} ${e.device} ${alone ? e.index : ''}`;
    streams.set(key, [...(streams.get(key) ?? []), e]);
  }
  const told = [...streams.values()].flatMap((entries) => steady(entries, least));
  const changes = told.filter(
    ({ entry, from }) => !(from === '' && start.get(entry.to)?.includes(entry.device)),
  );
  const kept = new Set(changes.map(({ entry }) => entry.index));
  return {
    start,
    changes: changes
      .map((change) => ({ ...change, by: origin(run.log, change.entry.by, kept) }))
      .sort((a, b) => a.entry.index - b.entry.index),
    least,
    left: run.log.length - told.length,
  };
}

function shortest(run: Run): number {
  const strokes = run.log.filter((e) => e.kind === 'mode' && run.role(e.device) === 'hand-supply');
  return strokes.length > MANY_STROKES ? STROKE : FLICKER;
}

/** One device's entries without states shorter than `least`; a state begins where it was first reached. */
function steady(entries: readonly LogEntry[], least: number): Omit<Change, 'by'>[] {
  const kept: Omit<Change, 'by'>[] = [];
  const keep = (entry: LogEntry, to: string): void => {
    const from = kept.at(-1)?.to ?? entry.from;
    if (from !== to) kept.push({ entry, from, to });
  };
  let flicker: LogEntry[] = [];
  entries.forEach((e, i) => {
    const next = entries[i + 1] as LogEntry | undefined;
    if (i > 0 && next !== undefined && next.t - e.t < least) {
      flicker.push(e);
      return;
    }
    const long = flicker.length > 0 && e.t - flicker[0].t >= least;
    if (long) keep(flicker[0], TO_AND_FRO);
    const first = long ? undefined : flicker.find((f) => f.to === e.to);
    keep(first ?? e, e.to);
    flicker = [];
  });
  return kept;
}

/** The nearest told entry on the chain of causes. */
function origin(log: readonly LogEntry[], by: number, kept: ReadonlySet<number>): number {
  let index = by;
  while (index >= 0 && !kept.has(index)) index = log[index].by;
  return index;
}
