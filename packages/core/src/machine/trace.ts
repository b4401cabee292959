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
      this.record.kept();
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

  /**
   * Reads the channels that are no states at the ends of every step; in between they go straight.
   * (Within a step a small mismatch between the cubics of contents and angles is a large pressure.)
   */
  private replay(): void {
    if (this.replayed) return;
    this.replayed = true;
    const { network, machine, record } = this;
    const open = [...this.channels.values()].filter((c) => c.state === undefined);
    const columns = open.map(() => new Float64Array(this.times.length));
    const replay = new Replay(network, machine, record);
    let before = new Float64Array(open.length);
    let after = new Float64Array(open.length);
    let known = -1;
    const read = (step: number, t: number, into: Float64Array): void => {
      replay.look(step, t);
      for (let c = 0; c < open.length; c++) into[c] = open[c].read();
    };
    this.walk((i, step, t) => {
      const t0 = record.start(step);
      const t1 = record.end(step);
      if (step !== known) {
        // Where no mode has changed, a step begins as the one before it ended.
        const goesOn = step === known + 1 && record.epochOf(step) === record.epochOf(known);
        if (goesOn) [before, after] = [after, before];
        else read(step, t0, before);
        read(step, t1, after);
        known = step;
      }
      const s = (t - t0) / (t1 - t0);
      for (let c = 0; c < open.length; c++) columns[c][i] = before[c] + s * (after[c] - before[c]);
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
