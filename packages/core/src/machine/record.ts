import { evaluateDense, type Recorder } from '../solver/index.js';

/**
 * The dense output of a whole run: every accepted step's cubics. Grows by doubling; this is the only
 * memory that a run's length costs.
 */
export class Record implements Recorder {
  private times: Float64Array;
  private data: Float64Array;
  /** Number of epochs that had begun when the step was taken, minus one. */
  private epoch: Int32Array;
  count = 0;

  constructor(
    private readonly size: number,
    private readonly epochs: { readonly length: number },
    capacity = 1024,
  ) {
    this.times = new Float64Array(3 * capacity);
    this.data = new Float64Array(4 * size * capacity);
    this.epoch = new Int32Array(capacity);
  }

  step(t0: number, t1: number, h: number, coefficients: Float64Array): void {
    if (!(t1 > t0)) return;
    const at = this.count;
    if (at === this.epoch.length) this.grow();
    this.times[3 * at] = t0;
    this.times[3 * at + 1] = t1;
    this.times[3 * at + 2] = h;
    this.data.set(coefficients, 4 * this.size * at);
    this.epoch[at] = this.epochs.length - 1;
    this.count++;
  }

  start(step: number): number {
    return this.times[3 * step];
  }
  end(step: number): number {
    return this.times[3 * step + 1];
  }
  epochOf(step: number): number {
    return this.epoch[step];
  }

  /** State at `t` within a step, into `y`. */
  at(step: number, t: number, y: Float64Array): void {
    const s = (t - this.times[3 * step]) / this.times[3 * step + 2];
    evaluateDense(this.data, 4 * this.size * step, s, y);
  }

  /** One state at `t` within a step. */
  stateAt(step: number, t: number, state: number): number {
    const s = (t - this.times[3 * step]) / this.times[3 * step + 2];
    const c = 4 * (this.size * step + state);
    const { data } = this;
    return data[c] + s * (data[c + 1] + s * (data[c + 2] + s * data[c + 3]));
  }

  private grow(): void {
    const double = <T extends Float64Array | Int32Array>(a: T, b: T): T => {
      b.set(a);
      return b;
    };
    this.times = double(this.times, new Float64Array(2 * this.times.length));
    this.data = double(this.data, new Float64Array(2 * this.data.length));
    this.epoch = double(this.epoch, new Int32Array(2 * this.epoch.length));
  }
}
