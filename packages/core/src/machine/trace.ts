import type { Series } from '../define/index.js';
import type { Network } from '../network/index.js';
import type { ReadableChannel } from './channel.js';
import type { Machine } from './machine.js';
import type { Record } from './record.js';
import { Replay } from './replay.js';

/**
 * The channels of a run at given times, read from its record when first asked for. A channel
 * that is a state comes straight from the cubics; the first other one replays the network over
 * all times and fills all of them.
 */
export class Traces {
  private readonly known = new Map<string, Series>();
  private readonly channels: ReadonlyMap<string, ReadableChannel>;
  private replayed = false;

  /** `times`: strictly rising, s. */
  constructor(
    private readonly times: Float64Array,
    channels: readonly ReadableChannel[],
    private readonly network: Network,
    private readonly machine: Machine,
    private readonly record: Record,
  ) {
    this.channels = new Map(channels.map((c) => [c.info.name, c]));
  }

  get(name: string): Series | undefined {
    const channel = this.channels.get(name);
    if (channel === undefined) return undefined;
    if (!this.known.has(name)) {
      if (channel.state !== undefined)
        this.known.set(name, this.ofState(channel.state, channel.from));
      else this.replay();
    }
    return this.known.get(name);
  }

  private ofState(state: number, from?: (state: number) => number): Series {
    const v = new Float64Array(this.times.length);
    this.walk((i, step, t) => (v[i] = this.record.stateAt(step, t, state)));
    if (from !== undefined) v.forEach((x, i) => (v[i] = from(x)));
    return { t: this.times, v };
  }

  private replay(): void {
    if (this.replayed) return;
    this.replayed = true;
    const { network, machine, record } = this;
    const open = [...this.channels.values()].filter((c) => c.state === undefined);
    const columns = open.map(() => new Float64Array(this.times.length));
    const replay = new Replay(network, machine, record);
    this.walk((i, step, t) => {
      replay.look(step, t);
      for (let c = 0; c < columns.length; c++) columns[c][i] = open[c].read();
    });
    open.forEach((c, i) => this.known.set(c.info.name, { t: this.times, v: columns[i] }));
  }

  /** Visits the times with the step that holds each. */
  private walk(visit: (i: number, step: number, t: number) => void): void {
    const { record, times } = this;
    if (record.count === 0) return;
    for (let i = 0, step = 0; i < times.length; i++) {
      while (step < record.count - 1 && times[i] > record.end(step)) step++;
      visit(i, step, Math.min(times[i], record.end(step)));
    }
  }
}
