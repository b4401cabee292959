import type { Flag, Run, Series, Statistics, Timing } from '../define/index.js';
import { judge, timings } from '../monitor/index.js';
import { accountOf, type Account } from './account.js';
import type { ReadableChannel } from './channel.js';
import { PlayedCard, type PlayedParts } from './played.js';
import type { Record } from './record.js';
import { Traces } from './trace.js';

/** What a run is made of; see simulate.ts. */
export interface RunParts extends PlayedParts {
  readonly record: Record;
  readonly tick: number;
}

/** A step is read in two pieces at least, and in as many of this length, s, up to so many: motions bend within it. */
const PIECE = 0.01;
const MOST_PIECES = 8;

/** After an event the right-hand side of the jump is read this much later, s. */
const AFTER = 1e-9;

/**
 * A simulated run. Log and outcome are there at once; traces, timings and flags are worked out
 * when first asked for, from the recorded dense output, and kept.
 */
export class SimulatedRun extends PlayedCard implements Run {
  readonly cardName: string;
  readonly tick: number;
  readonly ticks: number;
  readonly tolerance: Run['tolerance'];
  readonly statistics: Statistics;
  private readonly readable: readonly ReadableChannel[];
  private native: Traces | undefined;
  private ticked: Traces | undefined;
  private knownTimings: readonly Timing[] | undefined;
  private knownFlags: readonly Flag[] | undefined;

  constructor(private readonly parts: RunParts) {
    super(parts);
    this.cardName = parts.cardName;
    this.tick = parts.tick;
    this.ticks = Math.floor(this.duration / parts.tick + 1e-9) + 1;
    this.tolerance = parts.tolerance;
    this.statistics = parts.statistics;
    this.readable = parts.channels;
  }

  get timings(): readonly Timing[] {
    return (this.knownTimings ??= timings(this));
  }

  get flags(): readonly Flag[] {
    return (this.knownFlags ??= judge(this));
  }

  override series(channel: string): Series | undefined {
    this.native ??= this.traces(this.nativeTimes());
    return this.native.get(channel);
  }

  /** Some channels at the ends of steps only, quicker than {@link series} where few are wanted. A channel that there is not is left out. */
  look(names: readonly string[]): ReadonlyMap<string, Series> {
    const { network, machine, record } = this.parts;
    const wanted = this.readable.filter((c) => names.includes(c.info.name));
    const ends = Float64Array.from({ length: record.count }, (_, i) => record.end(i));
    const traces = new Traces(ends, wanted, network, machine, record);
    return new Map(wanted.map(({ info: { name } }) => [name, traces.get(name)!]));
  }

  sampled(channel: string): Series | undefined {
    this.ticked ??= this.traces(Float64Array.from({ length: this.ticks }, (_, i) => i * this.tick));
    return this.ticked.get(channel);
  }

  /** Oil and energy balance of the run; works it out each time it is called. */
  account(): Account {
    const { network, machine, record } = this.parts;
    return accountOf(network, machine, record.kept());
  }

  release(): void {
    this.parts.record.release();
  }

  /** Ends of every step and some places in between, and just after every jump; strictly rising. */
  private nativeTimes(): Float64Array {
    const { record } = this.parts;
    const times: number[] = [];
    const push = (t: number): void => {
      if (times.length === 0 || t > times[times.length - 1]) times.push(t);
    };
    for (let i = 0; i < record.count; i++) {
      const t0 = record.start(i);
      const t1 = record.end(i);
      if (i === 0) push(t0);
      else if (record.epochOf(i) !== record.epochOf(i - 1)) push(Math.min(t0 + AFTER, t1));
      const pieces = Math.min(Math.max(2, Math.ceil((t1 - t0) / PIECE)), MOST_PIECES);
      for (let k = 1; k < pieces; k++) push(t0 + (k / pieces) * (t1 - t0));
      push(t1);
    }
    return Float64Array.from(times);
  }

  private traces(times: Float64Array): Traces {
    const { network, machine, record } = this.parts;
    return new Traces(times, this.readable, network, machine, record);
  }
}
