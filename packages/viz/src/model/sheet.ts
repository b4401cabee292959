/** Fits a drawing of the bay onto its paper; long empty stretches between units are cut out. */
import type { Box, Flat, Projection } from '../drawing/projection.js';
import { boxOf, project } from '../drawing/projection.js';
import type { OutlineSamples, Picture } from '../worker/message.js';
import { rampLine } from './fixture.js';
import { swept } from './place.js';

export interface Sheet {
  readonly viewBox: string;
  /** Millimetres of aircraft to one pixel. */
  readonly mm: number;
  /** How far a mechanism is moved to close the gaps, mm (zero or negative), right and down. */
  readonly shiftOf: (mechanism: string) => Flat;
  /** Where it reaches anywhere on its way, with its well, before that move, mm. */
  readonly reachOf: (mechanism: string) => Box;
  /** What holds everything after the move, mm. */
  readonly frame: Box;
  readonly breaks: readonly Break[];
  /** Large enough for what only helps those who look closely. */
  readonly fine: boolean;
}

/** A sign where something was cut out; `gap` is its true width, m, where there is room to say so. */
export interface Break {
  readonly x: number;
  readonly y: number;
  readonly path: string;
  readonly gap?: number;
}

/** Gaps wider than this are cut down to this, mm; or px where the drawing is small. */
const GAP = { mm: 420, px: 48 };
/** Room for captions and labels, px. */
const MARGIN = { top: 54, side: 50, bottom: 14 };
/** Buttons for fingers stand higher, px. */
const FINGERS = 16;
/** The words of the phases need more below, and so do the figures of a plan. */
const WORDED = 36;
const FIGURES = 30;

/** Finer than this, mm to a pixel, a drawing has room for every figure. */
const FINE = 8;

interface Extent extends Box {
  readonly name: string;
}

/** They do not change with the run: kept for as long as what is drawn is the same. */
const kept = new WeakMap<Drawn['outlines'], Drawn & { readonly views: Map<string, Extent[]> }>();
type Drawn = Pick<Picture, 'outlines' | 'bay' | 'units'>;

function extents(picture: Picture, onto: Projection): Extent[] {
  const { outlines, bay, units } = picture;
  const before = kept.get(outlines);
  const same = before?.bay === bay && before.units === units;
  const views = same ? before.views : new Map<string, Extent[]>();
  if (!same) kept.set(outlines, { outlines, bay, units, views });
  const known = views.get(onto.name);
  if (known !== undefined) return known;
  const found = picture.outlines.flatMap((o: OutlineSamples): Extent[] => {
    const ramps = picture.bay.ramps.filter((r) => r.on === o.mechanism).flatMap(rampLine);
    const box = boxOf([
      ...swept([o], onto),
      ...wellCorners(picture, o.mechanism, onto),
      ...ramps.map((p) => project(p, onto)),
    ]);
    return box === undefined ? [] : [{ name: o.mechanism, ...box }];
  });
  views.set(onto.name, found);
  return found;
}

/** The well belongs to its leg: shown with it, and moved with it. */
function wellCorners(picture: Picture, mechanism: string, onto: Projection): Flat[] {
  const bay = picture.units.find((u) => u.leg === mechanism)?.bay;
  if (bay === undefined) return [];
  const { roof: z, walls } = bay;
  if (onto.view === 'front') return walls.map((y) => project({ x: 0, y, z }, onto));
  return (bay.ends ?? []).flatMap((x) => walls.map((y) => project({ x, y, z }, onto)));
}

interface Closing {
  readonly shifts: ReadonlyMap<string, number>;
  readonly cuts: readonly { readonly at: number; readonly gap: number }[];
  readonly from: number;
  readonly to: number;
}

/** Closes gaps along one direction of the paper. */
function closed(
  all: readonly Extent[],
  from: 'left' | 'top',
  to: 'right' | 'bottom',
  room: number,
): Closing {
  const sorted = [...all].sort((a, b) => a[from] - b[from]);
  const first = sorted[0]?.[from] ?? 0;
  const shifts = new Map<string, number>();
  const cuts: { at: number; gap: number }[] = [];
  let [shift, end] = [0, first];
  for (const e of sorted) {
    const gap = e[from] - end;
    if (gap > room) {
      cuts.push({ at: end + shift + room / 2, gap: gap / 1000 });
      shift -= gap - room;
    }
    end = Math.max(end, e[to]);
    shifts.set(e.name, shift);
  }
  return { shifts, cuts, from: first, to: end + shift };
}

/** `width` x `height` is the size of the figure, px; `worded`: with phases below; `coarse`: with buttons for fingers. */
export function layOut(
  picture: Picture,
  onto: Projection,
  width: number,
  height: number,
  { worded = false, coarse = false } = {},
): Sheet | undefined {
  const all = extents(picture, onto);
  if (all.length === 0 || width <= 0 || height <= 0) return undefined;
  const bottom = onto.view === 'plan' ? FIGURES : worded ? WORDED : MARGIN.bottom;
  const across = Math.max(width - 2 * MARGIN.side, 40);
  const above = MARGIN.top + (coarse ? FINGERS : 0);
  const down = Math.max(height - above - bottom, 40);
  // A first guess of the scale; the gaps themselves may ask for a coarser one.
  const tall = closed(all, 'top', 'bottom', onto.view === 'plan' ? GAP.mm : Infinity);
  const wide = closed(all, 'left', 'right', GAP.mm);
  const scale = (tall.to - tall.from) / down;
  const x = closed(all, 'left', 'right', Math.max(GAP.mm, GAP.px * scale));
  const room = (GAP.px * (wide.to - wide.from)) / across;
  const y = onto.view === 'plan' ? closed(all, 'top', 'bottom', Math.max(GAP.mm, room)) : tall;
  const mm = Math.max((x.to - x.from) / across, (y.to - y.from) / down);
  const frame: Box = { left: x.from, right: x.to, top: y.from, bottom: y.to };
  const left = (x.from + x.to) / 2 - (width * mm) / 2;
  const spare = height * mm - (above + bottom) * mm - (y.to - y.from);
  const top = y.from - above * mm - spare / 2;
  return {
    viewBox: `${left} ${top} ${width * mm} ${height * mm}`,
    mm,
    shiftOf: (name) => [x.shifts.get(name) ?? 0, y.shifts.get(name) ?? 0],
    reachOf: (name) => all.find((e) => e.name === name) ?? frame,
    frame,
    fine: mm < FINE,
    breaks: [
      ...x.cuts.map((c) =>
        upright(
          c,
          mm,
          y.cuts.length > 0 ? 12 : Math.min(26, (0.3 * (frame.bottom - frame.top)) / mm),
          // In a plan names stand in rows of their own above each well: it goes beside the last well.
          y.cuts.length > 0 ? frame.bottom - 26 * mm : (frame.top + frame.bottom) / 2,
        ),
      ),
      ...y.cuts.map((c) => level(c, x.cuts[0]?.at ?? frame.left, mm)),
    ],
  };
}

type Cut = Closing['cuts'][number];

/** Two slanting strokes, `half` px up and down from `middle`, and the width below them. */
function upright({ at, gap }: Cut, mm: number, half: number, middle: number): Break {
  const path = [-4, 4]
    .map((d) => `M${at + (d - 5) * mm},${middle + half * mm}l${10 * mm},${-2 * half * mm}`)
    .join('');
  return { x: at, y: middle + (half + 14) * mm, path, gap };
}

/** The same across a gap from top to bottom. */
function level({ at }: Cut, x: number, mm: number): Break {
  const path = [-3, 3]
    .map((d) => `M${x - 12 * mm},${at + (d + 2) * mm}l${24 * mm},${-4 * mm}`)
    .join('');
  return { x, y: at, path };
}
