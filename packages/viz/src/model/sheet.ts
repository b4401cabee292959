/** Fits the drawing of the bay onto its paper; long empty stretches between units are cut out. */
import type { Flat, Projection } from '../drawing/projection.js';
import { boxOf, project } from '../drawing/projection.js';
import type { OutlineSamples, Picture } from '../worker/message.js';
import { swept } from './place.js';

export interface Sheet {
  readonly viewBox: string;
  /** Millimetres of aircraft to one pixel. */
  readonly mm: number;
  /** How far a mechanism is moved to the right to close the gaps, mm (zero or negative). */
  readonly shiftOf: (mechanism: string) => number;
  /** The highest point it reaches anywhere on its way, or its well's roof, mm down the paper. */
  readonly topOf: (mechanism: string) => number;
  /** The lowest point that anything reaches, mm down the paper. */
  readonly bottom: number;
  /** Signs where something was cut out; `gap` is its true width, m. */
  readonly breaks: readonly {
    readonly x: number;
    readonly y: number;
    readonly path: string;
    readonly gap: number;
  }[];
}

/** Gaps wider than this are cut down to this, mm; or px where the drawing is small. */
const GAP = { mm: 420, px: 64 };
/** Room for captions and labels, px. */
const MARGIN = { top: 82, side: 18, bottom: 22 };

interface Extent {
  readonly name: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Extents do not change during a run: kept for as long as the picture lives. */
const kept = new WeakMap<Picture, Map<string, Extent[]>>();

function extents(picture: Picture, onto: Projection): Extent[] {
  const views = kept.get(picture) ?? new Map<string, Extent[]>();
  kept.set(picture, views);
  const known = views.get(onto.name);
  if (known !== undefined) return known;
  const found = picture.outlines.flatMap((o: OutlineSamples): Extent[] => {
    const box = boxOf([...swept([o], onto), ...wellCorners(picture, o.mechanism, onto)]);
    return box === undefined ? [] : [{ name: o.mechanism, ...box }];
  });
  views.set(onto.name, found);
  return found;
}

/** The well belongs to its leg: shown with it, and moved with it. */
function wellCorners(picture: Picture, mechanism: string, onto: Projection): Flat[] {
  const bay = picture.units.find((u) => u.leg === mechanism)?.bay;
  const across = onto.name === 'side' ? bay?.ends : bay?.walls;
  return bay === undefined || across === undefined
    ? []
    : across.map((a) => project({ x: a, y: a, z: bay.roof }, onto));
}

/** `width` x `height` is the size of the figure, px. */
export function layOut(
  picture: Picture,
  onto: Projection,
  width: number,
  height: number,
): Sheet | undefined {
  const all = [...extents(picture, onto)].sort((a, b) => a.left - b.left);
  const first = all[0];
  if (first === undefined || width <= 0 || height <= 0) return undefined;
  const top = Math.min(...all.map((e) => e.top));
  const bottom = Math.max(...all.map((e) => e.bottom));
  // At least: the width may ask for more.
  const coarse = (bottom - top) / Math.max(height - MARGIN.top - MARGIN.bottom, 40);
  const room = Math.max(GAP.mm, GAP.px * coarse);
  const shifts = new Map<string, number>();
  const cuts: { at: number; gap: number }[] = [];
  let shift = 0;
  let end = first.left;
  for (const e of all) {
    if (e.left - end > room) {
      const cut = e.left - end - room;
      cuts.push({ at: end + shift + room / 2, gap: e.left - end });
      shift -= cut;
    }
    end = Math.max(end, e.right);
    shifts.set(e.name, shift);
  }
  const right = end + shift;
  const mm = Math.max(
    (right - first.left) / Math.max(width - 2 * MARGIN.side, 40),
    (bottom - top) / Math.max(height - MARGIN.top - MARGIN.bottom, 40),
  );
  const x = (first.left + right) / 2 - (width * mm) / 2;
  const spare = height * mm - (MARGIN.top + MARGIN.bottom) * mm - (bottom - top);
  const y = top - MARGIN.top * mm - spare / 2;
  const middle = (top + bottom) / 2;
  return {
    viewBox: `${x} ${y} ${width * mm} ${height * mm}`,
    mm,
    shiftOf: (mechanism) => shifts.get(mechanism) ?? 0,
    topOf: (mechanism) => all.find((e) => e.name === mechanism)?.top ?? top,
    bottom,
    breaks: cuts.map((c) => ({
      x: c.at,
      y: middle + 44 * mm,
      path: [-4, 4]
        .map((d) => `M${c.at + (d - 5) * mm},${middle + 26 * mm}l${10 * mm},${-52 * mm}`)
        .join(''),
      gap: c.gap / 1000,
    })),
  };
}
