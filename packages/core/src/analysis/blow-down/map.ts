/**
 * The map of a blow-down over charge and temperature, without a run for every cell: a coarse grid
 * first; a square of it is halved where its corners differ in what locks, or where its middle misses what
 * the corners foretell; what is left between is filled in, and says so.
 */
import type { Catalogues, Scenario } from '../../define/index.js';
import { blowDownCard } from './card.js';
import { playCell } from './cell.js';
import type {
  BlowDownCell,
  BlowDownCondition,
  BlowDownLeg,
  BlowDownMap,
  BlowDownOptions,
  BlowDownPool,
  BlowDownRanges,
} from './shapes.js';

/** Cells between the corners of the first grid. */
const COARSE = 8;
/** Cells: an edge up to this long, with ends alike, is taken to be alike all along. */
const SHORT = 4;
/** What a foretold time may miss, as a share and s; and a moment, as a share of what is available, and N m. */
const TIME_SHARE = 0.04;
const TIME_LEAST = 0.1;
const MOMENT_SHARE = 0.1;
const MOMENT_LEAST = 10;

interface Square {
  readonly i0: number;
  readonly i1: number;
  readonly j0: number;
  readonly j1: number;
}

/** Plays here, a condition at a time, letting others have a turn in between. */
export function ownPool(catalogues: Catalogues, scenario: Scenario, card: string): BlowDownPool {
  return {
    async play(conditions, onCell, signal) {
      for (let i = 0; i < conditions.length && !stopped(signal); i++) {
        onCell(i, playCell(catalogues, scenario, card, conditions[i]));
        // A turn for events and timers, or nobody could cancel or see progress.
        await new Promise((resume) => setTimeout(resume, 0));
      }
    },
  };
}

/**
 * The map. Cancelled, it gives what it has.
 *
 * @throws RangeError when the scenario has no bottle or card for it, or a range is empty or not rising.
 */
export async function blowDownMargin(
  catalogues: Catalogues,
  scenario: Scenario,
  ranges: BlowDownRanges,
  options: BlowDownOptions = {},
): Promise<BlowDownMap> {
  const card = blowDownCard(scenario, catalogues, options.card);
  rising('charge', ranges.charge);
  rising('temperature', ranges.temperature);
  const pool = options.pool ?? ownPool(catalogues, scenario, card);
  const thirds = ranges.third?.values ?? [undefined];
  const layer = ranges.charge.length * ranges.temperature.length;
  const cells: (BlowDownCell | undefined)[] = Array.from({ length: layer * thirds.length });
  let runs = 0;
  for (let k = 0; k < thirds.length && !stopped(options.signal); k++) {
    const value = thirds[k];
    const third =
      ranges.third === undefined || value === undefined
        ? undefined
        : { path: ranges.third.path, value };
    const report = (share: number): void =>
      options.onProgress?.((k + share) / thirds.length, cells);
    const done = new Layer(cells, k * layer, ranges, third);
    runs += await done.fill(pool, report, options.signal);
  }
  const whole = cells.every((c) => c !== undefined);
  return { card, ranges, cells, runs, whole };
}

function rising(name: string, values: readonly number[]): void {
  if (values.length === 0) throw new RangeError(`no ${name} to look at`);
  if (values.some((v, i) => i > 0 && !(v > values[i - 1])))
    throw new RangeError(`values of ${name} must rise`);
}

/** One map of charge and temperature. */
class Layer {
  private readonly wide: number;
  private readonly high: number;
  private known = 0;

  constructor(
    private readonly cells: (BlowDownCell | undefined)[],
    private readonly offset: number,
    private readonly ranges: BlowDownRanges,
    private readonly third: BlowDownCondition['third'],
  ) {
    this.wide = ranges.charge.length;
    this.high = ranges.temperature.length;
  }

  /** Plays and fills in; the number of runs. */
  async fill(
    pool: BlowDownPool,
    report: (share: number) => void,
    signal: BlowDownOptions['signal'],
  ): Promise<number> {
    const columns = marks(this.wide);
    const rows = marks(this.high);
    let wanted = rows.flatMap((j) => columns.map((i) => [i, j] as const));
    let squares: Square[] = [];
    for (let b = 0; b + 1 < Math.max(rows.length, 2); b++)
      for (let a = 0; a + 1 < Math.max(columns.length, 2); a++)
        squares.push({
          i0: columns[a],
          i1: columns[Math.min(a + 1, columns.length - 1)],
          j0: rows[b],
          j1: rows[Math.min(b + 1, rows.length - 1)],
        });
    let runs = 0;
    while (!stopped(signal)) {
      runs += await this.play(pool, wanted, report, signal);
      if (stopped(signal)) break;
      // Middles of squares that may still hide something.
      const open = squares.filter((s) => s.i1 - s.i0 > 1 || s.j1 - s.j0 > 1);
      const middles = open.map((s) => [half(s.i0, s.i1), half(s.j0, s.j1)] as const);
      const foretold = open.map((s, k) => this.between(s, ...middles[k]));
      runs += await this.play(pool, middles, report, signal);
      if (stopped(signal)) break;
      const split: Square[] = [];
      open.forEach((s, k) => {
        const found = this.at(...middles[k]);
        if (found !== undefined && this.fits(foretold[k], found)) this.settle(s);
        else split.push(s);
        if (foretold[k] === undefined) this.settleEdges(s);
      });
      if (split.length === 0) break;
      squares = split.flatMap(quarters);
      wanted = squares.flatMap((s) => corners(s));
    }
    return runs;
  }

  private async play(
    pool: BlowDownPool,
    wanted: readonly (readonly [number, number])[],
    report: (share: number) => void,
    signal: BlowDownOptions['signal'],
  ): Promise<number> {
    const places = [...new Set(wanted.map(([i, j]) => j * this.wide + i))].filter(
      (p) => this.cells[this.offset + p] === undefined,
    );
    let runs = 0;
    await pool.play(
      places.map((p) => this.condition(p % this.wide, Math.floor(p / this.wide))),
      (index, cell) => {
        runs++;
        if (this.cells[this.offset + places[index]] === undefined) this.known++;
        this.cells[this.offset + places[index]] = cell;
        report(this.known / (this.wide * this.high));
      },
      signal,
    );
    return runs;
  }

  private condition(i: number, j: number): BlowDownCondition {
    const { charge, temperature } = this.ranges;
    const third = this.third;
    return { charge: charge[i], temperature: temperature[j], ...(third && { third }) };
  }

  private at(i: number, j: number): BlowDownCell | undefined {
    return this.cells[this.offset + j * this.wide + i];
  }

  /** What the corners foretell for a place inside; undefined where they differ in what locks. */
  private between(s: Square, i: number, j: number): BlowDownCell | undefined {
    const { charge, temperature } = this.ranges;
    const u = s.i1 === s.i0 ? 0 : (charge[i] - charge[s.i0]) / (charge[s.i1] - charge[s.i0]);
    const v =
      s.j1 === s.j0
        ? 0
        : (temperature[j] - temperature[s.j0]) / (temperature[s.j1] - temperature[s.j0]);
    const four = corners(s).map(([a, b]) => this.at(a, b));
    const [first] = four;
    if (first === undefined || !four.every((c) => c !== undefined && alike(c, first)))
      return undefined;
    const weights = [(1 - u) * (1 - v), u * (1 - v), (1 - u) * v, u * v];
    const mix = (of: (c: BlowDownCell) => number): number =>
      four.reduce((sum, c, k) => sum + weights[k] * of(c!), 0);
    const legs = first.legs.map((leg, n): BlowDownLeg => ({
      unit: leg.unit,
      locked: leg.locked,
      // Oil thickens by so much a degree: times go by ratios.
      time: Math.exp(mix((c) => Math.log(c.legs[n].time))),
      margin: mix((c) => c.legs[n].margin),
      at: mix((c) => c.legs[n].at),
      available: mix((c) => c.legs[n].available),
      needed: mix((c) => c.legs[n].needed),
    }));
    return {
      ...this.condition(i, j),
      verdict: first.verdict,
      legs,
      gasLeft: mix((c) => c.gasLeft),
      endPressure: mix((c) => c.endPressure),
      computed: false,
    };
  }

  /** Whether a middle is what was foretold. */
  private fits(foretold: BlowDownCell | undefined, found: BlowDownCell): boolean {
    if (foretold === undefined || !alike(foretold, found)) return false;
    if (found.verdict !== 'locked') return true;
    return found.legs.every((leg, n) => {
      const other = foretold.legs[n];
      const late = Math.abs(leg.time - other.time);
      const off = Math.abs(leg.margin - other.margin);
      return (
        !(late > TIME_LEAST + TIME_SHARE * leg.time) &&
        !(off > MOMENT_LEAST + MOMENT_SHARE * Math.abs(leg.available))
      );
    });
  }

  /**
   * Fills in the middles of those edges of a small square, cut by a border, whose ends are alike: a
   * border that crosses a short edge twice is not looked for.
   */
  private settleEdges(s: Square): void {
    const i = half(s.i0, s.i1);
    const j = half(s.j0, s.j1);
    const edges: readonly Square[] = [
      { ...s, j1: s.j0 },
      { ...s, j0: s.j1 },
      { ...s, i1: s.i0 },
      { ...s, i0: s.i1 },
    ];
    for (const edge of edges) {
      if (edge.i1 - edge.i0 > SHORT || edge.j1 - edge.j0 > SHORT) continue;
      this.put(edge.i0 === edge.i1 ? edge.i0 : i, edge.j0 === edge.j1 ? edge.j0 : j, edge);
    }
  }

  /** Fills in a place from the corners of a square, where it is not known and they are alike. */
  private put(i: number, j: number, from: Square): void {
    if (this.at(i, j) !== undefined) return;
    const cell = this.between(from, i, j);
    if (cell === undefined) return;
    this.cells[this.offset + j * this.wide + i] = cell;
    this.known++;
  }

  /** Fills in a square. */
  private settle(s: Square): void {
    for (let j = s.j0; j <= s.j1; j++) for (let i = s.i0; i <= s.i1; i++) this.put(i, j, s);
  }
}

/** Asked anew each time: somebody else sets it. */
function stopped(signal: BlowDownOptions['signal']): boolean {
  return signal?.aborted === true;
}

const half = (a: number, b: number): number => Math.floor((a + b) / 2);

/** Places of the first grid along one side. */
function marks(count: number): number[] {
  const list = [];
  for (let i = 0; i < count - 1; i += COARSE) list.push(i);
  list.push(count - 1);
  return list;
}

function corners({ i0, i1, j0, j1 }: Square): (readonly [number, number])[] {
  return [
    [i0, j0],
    [i1, j0],
    [i0, j1],
    [i1, j1],
  ];
}

/** The four (or two) parts of a square that has been halved. */
function quarters(s: Square): Square[] {
  const i = half(s.i0, s.i1);
  const j = half(s.j0, s.j1);
  const columns =
    s.i1 - s.i0 > 1
      ? [
          [s.i0, i],
          [i, s.i1],
        ]
      : [[s.i0, s.i1]];
  const rows =
    s.j1 - s.j0 > 1
      ? [
          [s.j0, j],
          [j, s.j1],
        ]
      : [[s.j0, s.j1]];
  return rows.flatMap(([j0, j1]) => columns.map(([i0, i1]) => ({ i0, i1, j0, j1 })));
}

/** Whether the same legs lock. */
function alike(a: BlowDownCell, b: BlowDownCell): boolean {
  return a.verdict === b.verdict && a.legs.every((leg, n) => leg.locked === b.legs[n].locked);
}
