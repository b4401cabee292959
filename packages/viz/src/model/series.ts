/** Channels of the run on show: asked for by views, fetched from the worker once a run. */
import { bisectRight } from 'd3-array';
import type { SeriesRequest, Trace } from '../worker/message.js';
import type { State } from './state.js';

/** What it needs of the store. */
interface Holder {
  readonly state: State;
  set(patch: Partial<State>): void;
}

export class SeriesBook {
  /** Names on their way, by run and fineness. */
  #asked = new Set<string>();
  #open: { fine: boolean; names: Set<string> }[] = [];

  constructor(
    private readonly holder: Holder,
    private readonly send: (request: SeriesRequest) => void,
  ) {}

  /**
   * Has the channels come in `state.series`; cheap to call again, e.g. at every new picture. Until
   * those of a new run of the same file are there, the former run's stay. Names that the run does
   * not have are passed over. `fine`: the solver's own points, both sides of every event; else the
   * ends of steps, which is quicker.
   */
  want(names: readonly string[], fine = false): void {
    const { picture, series } = this.holder.state;
    if (picture === undefined) return;
    const missing = names.filter((name) => {
      const have = series.get(name);
      if (have?.run === picture.run && (have.fine || !fine)) return false;
      return !this.#asked.has(keyOf(picture.run, fine, name));
    });
    if (missing.length === 0) return;
    for (const name of missing) this.#asked.add(keyOf(picture.run, fine, name));
    // All that is wanted in one go of drawing is asked for at once: the worker reads it in one pass.
    if (this.#open.length === 0) queueMicrotask(() => this.#flush(picture.run));
    const group = this.#open.find((g) => g.fine === fine);
    if (group === undefined) this.#open.push({ fine, names: new Set(missing) });
    else for (const name of missing) group.names.add(name);
  }

  #flush(run: number): void {
    for (const { fine, names } of this.#open)
      this.send({ kind: 'series', run, names: [...names], fine });
    this.#open = [];
  }

  receive(traces: readonly (readonly [string, Trace])[]): void {
    const { picture, series } = this.holder.state;
    const fresh = traces.filter(([name, { run, fine }]) => {
      if (run !== picture?.run) return false;
      const have = series.get(name);
      return have?.run !== run || fine || !have.fine;
    });
    this.#asked = new Set([...this.#asked].filter((key) => key.startsWith(`${picture?.run} `)));
    if (fresh.length > 0) this.holder.set({ series: new Map([...series, ...fresh]) });
  }
}

const keyOf = (run: number, fine: boolean, name: string): string => `${run} ${fine} ${name}`;

/** A trace's value at a time, straight between its points; at a jump the value after it. NaN when empty. */
export function valueAt({ t, v }: Trace, time: number): number {
  const after = bisectRight(t, time);
  if (after === 0) return v[0] ?? NaN;
  const [t0, v0] = [t[after - 1] ?? NaN, v[after - 1] ?? NaN];
  const [t1, v1] = [t[after] ?? t0, v[after] ?? v0];
  return t1 > t0 ? v0 + ((v1 - v0) * (time - t0)) / (t1 - t0) : v0;
}
