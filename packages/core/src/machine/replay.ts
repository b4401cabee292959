import type { Network } from '../network/index.js';
import type { Machine } from './machine.js';
import type { Record } from './record.js';

/**
 * Puts a network back at any time of its recorded run, with the modes of that time.
 *
 * At the ends of a step the recorded state is exact. Within a step the cubics of contents and of
 * angles are good each by itself, but a small mismatch between them is a large pressure in firm
 * oil. So there the pressures go straight between those at the step's ends, and contents follow.
 */
export class Replay {
  /** State at the time last looked at. */
  readonly y: Float64Array;
  readonly rate: Float64Array;
  private readonly before: Float64Array;
  private readonly after: Float64Array;
  private readonly between: Float64Array;
  private step = -1;
  private epoch = -1;
  /** Whether `before` and `after` are those of the step. */
  private ends = false;

  constructor(
    private readonly network: Network,
    private readonly machine: Machine,
    private readonly record: Record,
  ) {
    this.y = new Float64Array(network.size);
    this.rate = new Float64Array(network.size);
    const pressures = (): Float64Array => new Float64Array(network.workspace.pressure.length);
    this.before = pressures();
    this.after = pressures();
    this.between = pressures();
  }

  /** Evaluates the network at `t` within a step. */
  look(step: number, t: number): void {
    const { network, record, y, rate } = this;
    if (step !== this.step) this.enter(step);
    const t0 = record.start(step);
    const t1 = record.end(step);
    if (t <= t0 || t >= t1) {
      record.at(step, t, y);
      network.derivatives(t, y, rate);
      return;
    }
    if (!this.ends) this.lookAtEnds(t0, t1);
    const { before, after, between } = this;
    const s = (t - t0) / (t1 - t0);
    for (let i = 0; i < between.length; i++) between[i] = before[i] + s * (after[i] - before[i]);
    record.at(this.step, t, y);
    network.atPressures(t, y, rate, between);
  }

  private enter(step: number): void {
    const epoch = this.record.epochOf(step);
    if (epoch !== this.epoch && epoch >= 0) {
      this.machine.restore(this.machine.epochs[epoch]);
      this.epoch = epoch;
    }
    this.step = step;
    this.ends = false;
  }

  private lookAtEnds(t0: number, t1: number): void {
    const { network, record, y, rate } = this;
    record.at(this.step, t0, y);
    network.derivatives(t0, y, rate);
    this.before.set(network.workspace.pressure);
    record.at(this.step, t1, y);
    network.derivatives(t1, y, rate);
    this.after.set(network.workspace.pressure);
    this.ends = true;
  }
}
