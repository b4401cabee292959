/** What is asked about the run made last, beyond what the picture holds. */
import { followUp } from '@wheelwell/core';
import type { Run, Series } from '@wheelwell/core';
import type { AfterRequest, Reply, SeriesRequest, Trace } from './message.js';

let held: { readonly id: number; readonly run: Run } | undefined;

/** Keeps a run, in place of the one before. */
export function remember(id: number, run: Run): void {
  if (held?.run !== run) held?.run.release();
  held = { id, run };
}

/** A swing on the normal system after the blow-down that is held. */
export function afterOf({ run: id }: AfterRequest): Reply {
  return { id, kind: 'after', after: held?.id === id ? followUp(held.run) : undefined };
}

/** The run, while it is kept. */
function remembered(id: number): Run | undefined {
  return held?.id === id ? held.run : undefined;
}

/** What there is of the channels asked for; nothing of a run that is no longer here. */
export function seriesOf({ run: id, names, fine }: SeriesRequest): {
  readonly reply: Reply;
  readonly transfer: Transferable[];
} {
  const run = remembered(id);
  const found = run === undefined ? [] : read(run, names, fine);
  // Many channels share their times: converted, and sent, once.
  const times = new Map<Float64Array, Float32Array>();
  const traces = found.map(([name, { t, v }]): [string, Trace] => {
    const own = times.get(t) ?? Float32Array.from(t);
    times.set(t, own);
    return [name, { run: id, fine, t: own, v: Float32Array.from(v) }];
  });
  const transfer = [...times.values(), ...traces.map(([, trace]) => trace.v)].map((a) => a.buffer);
  return { reply: { id, kind: 'series', traces }, transfer };
}

function read(run: Run, names: readonly string[], fine: boolean): (readonly [string, Series])[] {
  if (!fine) return [...run.look(names)];
  return names.flatMap((name) => {
    const series = run.series(name);
    return series === undefined ? [] : [[name, series] as const];
  });
}
