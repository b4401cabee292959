/** How the figures of a sheet scatter: by reading errors, by the unknowns of a sound gear, and more where it is slow. */
import type { FigureEntry } from './entry.js';
import { evenSize, Gaussian, Room } from './gaussian.js';

/** What the model itself is off, as a share of a time and of a pressure; a choice. */
const MODEL_SHARE = 0.015;
/** And as a share of what a time comes later than on a healthy aircraft; a choice: what waits for a pressure to build up is off by more. */
const DELAY_SHARE = 0.04;

/**
 * What an unknown adds to the flow that is left it adds to a rate, 1/t, whatever a leak takes away: a time
 * that comes out so many times as long as the healthy one scatters by the square of that. Simulated
 * draws of leaks have exponents of 1.9 to 2.7, restrictions of 0.9 to 1.5. Up to a tenth longer it is
 * left out; at most it scatters so many times as much.
 */
const SLOWER = 1.1;
const MOST = 40;

/** What the unknowns do to each figure, one standard deviation of each: figures x unknowns. */
export type Scatter = readonly (readonly number[])[];

/** Of every figure: by how much more than on a healthy aircraft it scatters with the others, and what variance it has of its own. */
export interface Slowness {
  readonly more: Float64Array;
  readonly own: Float64Array;
}

export class Scattering {
  /** What figures scatter together by the unknowns, figures x figures. */
  private readonly together: readonly Float64Array[];
  /** Variance of every figure by itself, where nothing is slow; and how much more it then scatters: no more. */
  private readonly own: Float64Array;
  private readonly sound: Float64Array;
  private readonly slowness: Slowness;
  /** Places of the figures that are times. */
  private readonly times: readonly number[];

  /** @param healthy what is foretold of a sound gear for every figure */
  constructor(
    figures: readonly FigureEntry[],
    scatter: Scatter,
    private readonly healthy: readonly number[],
  ) {
    this.together = scatter.map((own) =>
      Float64Array.from(scatter, (other) => own.reduce((sum, s, u) => sum + s * other[u], 0)),
    );
    this.own = Float64Array.from(figures, ownVariance);
    this.sound = new Float64Array(figures.length).fill(1);
    this.slowness = { more: this.sound.slice(), own: this.sound.slice() };
    this.times = figures.flatMap(({ kind }, i) => (kind === 'time' ? [i] : []));
  }

  /** @returns undefined where none scatters more than on a healthy aircraft; it holds until it is asked anew. */
  slownessOf(foretold: readonly number[]): Slowness | undefined {
    const { healthy, times, slowness } = this;
    let slow: Slowness | undefined;
    for (const i of times) {
      const ratio = foretold[i] / healthy[i];
      if (!(ratio > SLOWER)) continue;
      if (slow === undefined) {
        slow = slowness;
        slow.more.fill(1);
        slow.own.fill(0);
      }
      slow.more[i] = Math.min(MOST, ratio * ratio);
      slow.own[i] = (DELAY_SHARE * (foretold[i] - healthy[i])) ** 2;
    }
    return slow;
  }

  /** Of the figures at these places. */
  gaussian(
    places: readonly number[],
    slowness?: Slowness,
    room = new Room(places.length),
  ): Gaussian {
    const n = places.length;
    const size = evenSize(n);
    const out = room.covariance;
    const more = slowness?.more ?? this.sound;
    // The lower triangle is all that is looked at.
    for (let a = 0; a < n; a++) {
      const place = places[a];
      const row = this.together[place];
      const by = more[place];
      const at = a * size;
      for (let b = 0; b <= a; b++) out[at + b] = by * more[places[b]] * row[places[b]];
      out[at + a] += this.own[place] + (slowness?.own[place] ?? 0);
    }
    return new Gaussian(room);
  }
}

function ownVariance(f: FigureEntry): number {
  return f.spread ** 2 + (MODEL_SHARE * f.value) ** 2;
}
