import type { Network } from '../network/index.js';

/**
 * Motion of the coordinates as modes: held (by friction or on a balance), rising, falling,
 * resting at the low or the high bound. Bounds are the end stops, narrowed by engaged locks.
 *
 * Sticking is a true mode: a held coordinate does not creep, and breaks away when the moment
 * exceeds static friction. Reaching a bound is an impact with a coefficient of restitution;
 * below a small speed the part comes to rest (Brogliato, Nonsmooth Mechanics, on unilateral
 * contact).
 */
export const HELD = 0;
export const RISING = 1;
export const FALLING = 2;
export const AT_LOW = 3;
export const AT_HIGH = 4;

/** An impact slower than this does not rebound, rad/s. */
const REST_SPEED = 0.05;

/** What happened to a coordinate at a transition. */
export interface MotionChange {
  readonly to: number;
  readonly cause: string;
  /** Speed of an impact, rad/s, else 0. */
  readonly speed: number;
}

export class Motion {
  readonly mode: Int8Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
  private readonly staticRatio: Float64Array;
  private readonly restitution: Float64Array;

  constructor(private readonly network: Network) {
    const { coordinates } = network.plan;
    this.mode = new Int8Array(coordinates.length);
    this.low = Float64Array.from(coordinates, (c) => c.data.low);
    this.high = Float64Array.from(coordinates, (c) => c.data.high);
    this.staticRatio = Float64Array.from(coordinates, (c) => Math.max(1, c.data.staticRatio));
    this.restitution = Float64Array.from(coordinates, (c) => c.data.restitution);
  }

  get count(): number {
    return this.mode.length;
  }

  set(c: number, mode: number): void {
    this.mode[c] = mode;
    this.network.workspace.direction[c] = mode === RISING ? 1 : mode === FALLING ? -1 : 0;
    this.network.refresh();
  }

  /** Sets the mode that fits the angle at the start of a run. */
  settle(c: number, angle: number): void {
    this.set(c, angle <= this.low[c] ? AT_LOW : angle >= this.high[c] ? AT_HIGH : HELD);
  }

  /** Largest guard of a coordinate at the point last evaluated; above zero: a transition is due. */
  guard(c: number): number {
    const w = this.network.workspace;
    switch (this.mode[c]) {
      case RISING:
        return Math.max(w.angle[c] - this.high[c], -w.speed[c]);
      case FALLING:
        return Math.max(this.low[c] - w.angle[c], w.speed[c]);
      case AT_LOW:
        return this.breakaway(c, w.drive[c], w.angle[c] - this.low[c]);
      case AT_HIGH:
        return this.breakaway(c, -w.drive[c], this.high[c] - w.angle[c]);
      default:
        return Math.abs(w.drive[c]) - this.hold(c);
    }
  }

  private hold(c: number): number {
    return this.network.workspace.capacity[c] * this.staticRatio[c];
  }

  /** At a bound: breaks away from it, or the bound itself has moved away. */
  private breakaway(c: number, drive: number, gap: number): number {
    return gap > 1e-9 ? 1 : drive - this.hold(c);
  }

  /**
   * Performs the transition that is due at the point last evaluated; writes angle and speed
   * into `y`. Undefined when none is.
   */
  change(c: number, y: Float64Array): MotionChange | undefined {
    if (!(this.guard(c) > 0)) return undefined;
    const w = this.network.workspace;
    const { angleState, speedState } = this.network.wiring;
    const mode = this.mode[c];
    const stop = (to: number, cause: string, speed = 0): MotionChange => {
      y[speedState[c]] = 0;
      this.set(c, to);
      return { to, cause, speed };
    };
    const start = (to: number, cause: string): MotionChange => {
      this.set(c, to);
      return { to, cause, speed: 0 };
    };
    const drive = w.drive[c];
    if (mode === RISING || mode === FALLING) {
      const sign = mode === RISING ? 1 : -1;
      const bound = mode === RISING ? this.high[c] : this.low[c];
      if (sign * (w.angle[c] - bound) > 0) {
        const speed = Math.abs(w.speed[c]);
        const rebound = this.restitution[c] * speed;
        y[angleState[c]] = bound;
        if (rebound > REST_SPEED) {
          y[speedState[c]] = -sign * rebound;
          const to = mode === RISING ? FALLING : RISING;
          this.set(c, to);
          return { to, cause: 'rebounds from the stop', speed };
        }
        return stop(mode === RISING ? AT_HIGH : AT_LOW, 'reached the stop', speed);
      }
      y[speedState[c]] = 0;
      if (-sign * drive > this.hold(c)) {
        return start(mode === RISING ? FALLING : RISING, 'load overcomes the drive');
      }
      return stop(HELD, 'drive and load balance within friction');
    }
    if (mode === AT_LOW && w.angle[c] - this.low[c] > 1e-9) return stop(HELD, 'let go');
    if (mode === AT_HIGH && this.high[c] - w.angle[c] > 1e-9) return stop(HELD, 'let go');
    const up = mode === AT_LOW || (mode === HELD && drive > 0);
    return start(up ? RISING : FALLING, 'drive exceeds friction and load');
  }
}
