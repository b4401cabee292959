import type { Network } from '../network/index.js';
import type { Modes } from './mode.js';

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

/** A rebound within this share of the travel leaves the part where it has arrived. */
const BOUNCE_SHARE = 0.03;

/** What can happen to a coordinate; cause.ts has the words. */
export type MotionEvent =
  /** Sets off from rest. */
  | 'starts'
  /** Turns round under way. */
  | 'turns'
  /** Comes to rest under way. */
  | 'stops'
  /** Comes to rest at a bound. */
  | 'arrives'
  | 'rebounds'
  /** The bound it rested at is gone. */
  | 'freed';

/** What happened to a coordinate at a transition. */
export interface MotionChange {
  readonly event: MotionEvent;
  /** Direction it moves in afterwards: 1 rising, -1 falling, 0 at rest. */
  readonly direction: number;
  /** Speed of an impact, rad/s, else 0. */
  readonly speed: number;
}

export class Motion {
  readonly mode: Int8Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
  private noted: readonly number[] = [];
  /** 1 from a rebound until the part has come to rest. */
  private readonly rebounding: Uint8Array;
  private readonly staticRatio: Float64Array;
  private readonly restitution: Float64Array;

  constructor(private readonly network: Network) {
    const { coordinates } = network.plan;
    this.mode = new Int8Array(coordinates.length);
    this.low = Float64Array.from(coordinates, (c) => c.data.low);
    this.high = Float64Array.from(coordinates, (c) => c.data.high);
    this.rebounding = new Uint8Array(coordinates.length);
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

  /** Largest guard of all coordinates at the point last evaluated. */
  crossing(): number {
    let most = -Infinity;
    for (let c = 0; c < this.mode.length; c++) {
      const v = this.guard(c);
      if (v > most) most = v;
    }
    return most;
  }

  /** Notes the coordinates whose guards are above zero at the point last evaluated. */
  mark(): void {
    this.noted = Array.from(this.mode.keys()).filter((c) => this.guard(c) > 0);
  }

  /** Largest guard of the noted coordinates at the point last evaluated. */
  marked(): number {
    return Math.max(-Infinity, ...this.noted.map((c) => this.guard(c)));
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
    const stop = (to: number, event: MotionEvent, speed = 0): MotionChange => {
      y[speedState[c]] = 0;
      this.rebounding[c] = 0;
      this.set(c, to);
      return { event, direction: 0, speed };
    };
    const go = (direction: number, event: MotionEvent, speed = 0): MotionChange => {
      this.set(c, direction > 0 ? RISING : FALLING);
      return { event, direction, speed };
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
          this.rebounding[c] = 1;
          return go(-sign, 'rebounds', speed);
        }
        return stop(mode === RISING ? AT_HIGH : AT_LOW, 'arrives', speed);
      }
      y[speedState[c]] = 0;
      return -sign * drive > this.hold(c) ? go(-sign, 'turns') : stop(HELD, 'stops');
    }
    if (mode === AT_LOW && w.angle[c] - this.low[c] > 1e-9) return stop(HELD, 'freed');
    if (mode === AT_HIGH && this.high[c] - w.angle[c] > 1e-9) return stop(HELD, 'freed');
    return go(mode === AT_LOW || (mode === HELD && drive > 0) ? 1 : -1, 'starts');
  }

  /** Bounds from the end stops and the engaged locks. */
  bound(modes: Modes, y: Float64Array): void {
    const { frames, plan, wiring } = this.network;
    plan.coordinates.forEach((p, c) => {
      this.low[c] = p.data.low;
      this.high[c] = p.data.high;
    });
    frames.forEach((frame, i) => {
      const bounds = modes.bounds(i);
      if (bounds === undefined) return;
      const link = Object.keys(frame.definition.links ?? {}).indexOf(bounds.link);
      const attachment = plan.instances[i].attachments[link];
      if (attachment < 0) return;
      const c = plan.attachments[attachment].coordinate;
      const angle = y[wiring.angleState[c]];
      // Bounds are in the link's own measure, which may run against the coordinate's.
      const turned = this.network.senseOf(attachment) < 0;
      const at = (bound: number): number => this.network.coordinateAngle(attachment, bound);
      const low = turned ? bounds.high : bounds.low;
      const high = turned ? bounds.low : bounds.high;
      // A lock holds what it caught: it never pushes the part along.
      if (low) this.low[c] = Math.min(Math.max(this.low[c], at(low(frame))), angle);
      if (high) this.high[c] = Math.max(Math.min(this.high[c], at(high(frame))), angle);
    });
    this.network.refresh();
  }

  /** How the log calls a coordinate's motion. */
  word(c: number, y: Float64Array): string {
    switch (this.mode[c]) {
      case RISING:
        return 'rising';
      case FALLING:
        return 'falling';
      case AT_LOW:
      case AT_HIGH:
        return this.endWord(c, y);
      default:
        return 'held';
    }
  }

  /** The word for phases: a part that rebounds a little at its end has arrived there. */
  phaseWord(c: number, y: Float64Array): string {
    const { data } = this.network.plan.coordinates[c];
    const angle = y[this.network.wiring.angleState[c]];
    const gap = Math.min(Math.abs(angle - this.low[c]), Math.abs(this.high[c] - angle));
    const bounces = this.rebounding[c] === 1 && gap < BOUNCE_SHARE * (data.high - data.low);
    return bounces ? this.endWord(c, y) : this.word(c, y);
  }

  /** `at` the end that is nearer. */
  endWord(c: number, y: Float64Array): string {
    const { data, definition } = this.network.plan.coordinates[c];
    const angle = y[this.network.wiring.angleState[c]];
    return `at ${definition.ends[angle - data.low < data.high - angle ? 0 : 1]}`;
  }
}
