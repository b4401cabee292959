import { spline, type Curve, type Network } from '../network/index.js';
import { FALLING, RISING, type Motion } from './motion.js';

/** A stretch of the leader's travel over which a driven mechanism moves one way, or rests. */
interface Piece {
  readonly from: number;
  readonly to: number;
  /** 1 rises with the leader, -1 falls, 0 rests. */
  readonly sense: number;
}

interface Follower {
  readonly member: number;
  readonly name: string;
  readonly coordinate: number;
  readonly angle: Curve;
  readonly pieces: readonly Piece[];
}

/** Points over the leader's travel at which the pieces are looked for. */
const POINTS = 361;
/** A ratio below this share of the mean one is rest. */
const REST = 0.02;
/** Nearer than this share of its travel to an end, a driven mechanism is at that end. */
const AT_END = 5e-3;

/** The words of driven mechanisms: they have no motion of their own, but the log tells theirs too. */
export class Followers {
  private readonly list: readonly Follower[];
  /** Driven mechanisms in declared order. */
  readonly names: readonly string[];
  private readonly piece: Int32Array;
  private noted: readonly number[] = [];

  constructor(
    private readonly network: Network,
    private readonly motion: Motion,
  ) {
    const { members, coordinates } = network.plan;
    this.list = members.flatMap((m, member): Follower[] => {
      if (m.angle === undefined) return [];
      const { low, high } = coordinates[m.coordinate].data;
      const angle = spline(m.angle);
      const share = (m.data.high - m.data.low) / (high - low);
      return [
        {
          member,
          name: m.name,
          coordinate: m.coordinate,
          angle,
          pieces: piecesOf((q) => angle(q).slope, low, high, REST * share),
        },
      ];
    });
    this.names = this.list.map((f) => f.name);
    this.piece = new Int32Array(this.list.length);
  }

  /** Coordinate that moves the follower at a place of {@link names}. */
  leaderOf(i: number): number {
    return this.list[i].coordinate;
  }

  /** Above zero when a follower has come to another piece of its leader's travel. */
  crossing(): number {
    let most = -Infinity;
    for (let i = 0; i < this.list.length; i++) {
      const v = this.guard(i);
      if (v > most) most = v;
    }
    return most;
  }

  /** Notes the followers whose guards are above zero at the point last evaluated. */
  mark(): void {
    this.noted = Array.from(this.piece.keys()).filter((i) => this.guard(i) > 0);
  }

  /** Largest guard of the noted followers at the point last evaluated. */
  marked(): number {
    return Math.max(-Infinity, ...this.noted.map((i) => this.guard(i)));
  }

  private guard(i: number): number {
    const { coordinate, pieces } = this.list[i];
    if (pieces.length === 1) return -Infinity;
    const angle = this.network.workspace.angle[coordinate];
    const piece = pieces[this.piece[i]];
    const mode = this.motion.mode[coordinate];
    if (mode === RISING && this.piece[i] < pieces.length - 1) return angle - piece.to;
    if (mode === FALLING && this.piece[i] > 0) return piece.from - angle;
    return -Infinity;
  }

  /** Takes the pieces that fit the angles; at the start and where a leader has jumped. */
  settle(y: Float64Array): void {
    this.list.forEach(({ coordinate, pieces }, i) => {
      const angle = y[this.network.wiring.angleState[coordinate]];
      const found = pieces.findIndex((p) => angle < p.to);
      this.piece[i] = found < 0 ? pieces.length - 1 : found;
    });
  }

  /** Moves on where a guard has fired; true when one had. */
  advance(): boolean {
    let moved = false;
    for (let i = 0; i < this.list.length; i++) {
      if (!(this.guard(i) > 0)) continue;
      this.piece[i] += this.motion.mode[this.list[i].coordinate] === RISING ? 1 : -1;
      moved = true;
    }
    return moved;
  }

  /** Motion word of a follower. */
  word(i: number, y: Float64Array): string {
    const { member, coordinate, angle, pieces } = this.list[i];
    const { data, definition } = this.network.plan.members[member];
    const { sense } = pieces[this.piece[i]];
    const mode = this.motion.mode[coordinate];
    if (sense !== 0 && (mode === RISING || mode === FALLING)) {
      return sense > 0 === (mode === RISING) ? 'rising' : 'falling';
    }
    const at = angle(y[this.network.wiring.angleState[coordinate]]).value;
    const near = AT_END * (data.high - data.low);
    if (at - data.low < near) return `at ${definition.ends[0]}`;
    if (data.high - at < near) return `at ${definition.ends[1]}`;
    return 'held';
  }

  /** Speed of a follower for its leader's speed, rad/s. */
  speed(i: number, y: Float64Array, leader: number): number {
    const { coordinate, angle } = this.list[i];
    return Math.abs(angle(y[this.network.wiring.angleState[coordinate]]).slope) * leader;
  }
}

function piecesOf(
  slope: (q: number) => number,
  low: number,
  high: number,
  rest: number,
): readonly Piece[] {
  const width = (high - low) / POINTS;
  const pieces: { from: number; to: number; sense: number }[] = [];
  for (let i = 0; i < POINTS; i++) {
    const s = slope(low + (i + 0.5) * width);
    const sense = Math.abs(s) < rest ? 0 : Math.sign(s);
    const last = pieces.at(-1);
    if (last?.sense === sense) last.to = low + (i + 1) * width;
    else pieces.push({ from: low + i * width, to: low + (i + 1) * width, sense });
  }
  return pieces;
}
