import { evaluateDense, type Recorder } from '../solver/index.js';

/** Memory of records that were given back: for new ones, who then need not have pages made and cleared. */
const spare: Float64Array[] = [];
/** So many are kept: of the run on show and of the one that takes its place. */
const SPARE = 2;

function memory(length: number): Float64Array {
  const at = spare.findIndex((a) => a.length >= length);
  return at < 0 ? new Float64Array(length) : spare.splice(at, 1)[0];
}

function giveBack(data: Float64Array): void {
  spare.push(data);
  spare.sort((a, b) => b.length - a.length).splice(SPARE);
}

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
  private released = false;

  constructor(
    private readonly size: number,
    private readonly epochs: { readonly length: number },
    capacity = 1024,
  ) {
    this.times = new Float64Array(3 * capacity);
    this.data = memory(4 * size * capacity);
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

  /** Lets go of its memory: nothing can be read of it any more. */
  release(): void {
    if (this.released) return;
    this.released = true;
    giveBack(this.data);
    this.data = new Float64Array();
  }

  /** Itself. @throws Error when it was released */
  kept(): this {
    if (this.released) throw new Error('this run was released: it has no more channels to read');
    return this;
  }

  private grow(): void {
    const double = <T extends Float64Array | Int32Array>(a: T, b: T): T => {
      b.set(a);
      return b;
    };
    this.times = double(this.times, new Float64Array(2 * this.times.length));
    const { data } = this;
    const wanted = 2 * 4 * this.size * this.epoch.length;
    if (data.length < wanted) {
      this.data = double(data, memory(wanted));
      giveBack(data);
    }
    this.epoch = double(this.epoch, new Int32Array(2 * this.epoch.length));
  }
}
