/** One drawing of the bay: what stands still, the frames of what moves, and the movers. */
import { nothing, svg } from 'lit';
import type { SVGTemplateResult } from 'lit';
import { project } from '../drawing/projection.js';
import { dot } from '../drawing/vector.js';
import { stateAt, stretches } from '../model/history.js';
import { angleAt, placeAt } from '../model/place.js';
import { withUnit } from '../model/sentence.js';
import type { OutlineSamples, UnitFacts } from '../worker/message.js';
import { markMovers, over, under } from './bay-marks.js';
import { door, doorMover, ghost, leg, legMover, spanOf, well } from './bay-parts.js';
import { isFar, outlineOf, shiftOf } from './bay-scene.js';
import type { Mover, Scene } from './bay-scene.js';
import { fixtures, locks, signMovers } from './bay-signs.js';
import { setter } from './setter.js';
import { rowsFor } from '../model/rows.js';

const ORIGIN = { x: 0, y: 0, z: 0 };

export function bayBody(scene: Scene): SVGTemplateResult {
  const { picture, onto, sheet, system } = scene;
  const { mm } = sheet;
  const depth = (o: OutlineSamples): number => dot(placeAt(o, o.low).line[0] ?? ORIGIN, onto.near);
  const order = [...picture.outlines].sort((a, b) => depth(a) - depth(b));
  const far = (o: OutlineSamples): boolean => isFar(scene, o.mechanism);
  return svg`
    ${picture.units.map((u) => wellOf(scene, u))}
    ${under(scene)}
    ${order.map((o) => (far(o) ? nothing : svg`<g transform=${shiftOf(scene, o.mechanism)}>${[o.low, o.high].map((a) => ghost(placeAt(o, a), onto))}</g>`))}
    ${sheet.breaks.map((b) => svg`<path class="break" d=${b.path}></path>${b.gap === undefined ? nothing : svg`<text x=${b.x} y=${b.y} font-size=${11 * mm} stroke-width=${3 * mm} text-anchor="middle" class="cut">${withUnit(b.gap, 'length', picture, system)}</text>`}`)}
    ${order.map((o) => svg`<g data-mechanism=${o.mechanism} class=${far(o) ? 'far' : ''} transform=${shiftOf(scene, o.mechanism)}>${o.shape === 'leg' ? leg(placeAt(o, o.low)) : door(placeAt(o, o.low), onto)}</g>`)}
    ${over(scene)}
    ${fixtures(scene)}
    ${locks(scene)}
    ${scene.large && onto.view !== 'plan' ? phases(scene) : nothing}`;
}

/** The well as a thin outline down to the hinges of its doors, or else to the leg's pivot. */
function wellOf(scene: Scene, unit: UnitFacts): unknown {
  const { picture, onto } = scene;
  if (unit.bay === undefined || isFar(scene, unit.leg)) return nothing;
  const names = unit.doors.length > 0 ? unit.doors : [unit.leg];
  const hinges = picture.outlines
    .filter((o) => names.includes(o.mechanism))
    .map((o) => (placeAt(o, o.low).line[0] ?? ORIGIN).z);
  return svg`<g transform=${shiftOf(scene, unit.leg)}>${well(unit.bay, Math.min(...hinges), onto)}</g>`;
}

/** Letters of the phases, px. */
const LETTERS = 12;
/** Width of a letter as a share of its height, on the safe side. */
const WIDE = 0.58;

/** The phase of each unit below it, in rows that no words of one run into those of another. */
function phases(scene: Scene): SVGTemplateResult {
  const { picture, onto, sheet } = scene;
  const { mm, frame } = sheet;
  const words = picture.units.flatMap((unit) => {
    const o = outlineOf(picture, unit.leg);
    if (o === undefined || isFar(scene, unit.leg)) return [];
    const longest = Math.max(
      ...stretches(picture, unit.name, 'phase').map((s) => s.state.length),
      0,
    );
    const [px] = project(placeAt(o, o.high).line[0] ?? ORIGIN, onto);
    const half = (longest * WIDE * LETTERS * mm) / 2;
    const [left = 0, , width = 0] = sheet.viewBox.split(' ').map(Number);
    const [du] = sheet.shiftOf(unit.leg);
    const x = Math.min(Math.max(px + du, left + half), left + width - half);
    return [{ unit: unit.name, x, from: x - half, to: x + half }];
  });
  const rows = rowsFor(words);
  return svg`${words.map(({ unit, x }, i) => svg`<g data-phase=${unit}><text class="cut" x=${x} y=${frame.bottom + (15 + 15 * (rows[i] ?? 0)) * mm} text-anchor="middle" font-size=${LETTERS * mm} stroke-width=${3 * mm}></text></g>`)}`;
}

/** The movers of a drawing that has just been made. */
export function bayMovers(root: Element, scene: Scene): Mover[] {
  const { picture } = scene;
  return [
    ...picture.outlines.flatMap((o) => {
      const group = root.querySelector(`[data-mechanism="${o.mechanism}"]`);
      return group === null ? [] : [partMover(group, scene, o)];
    }),
    ...markMovers(root, scene),
    ...signMovers(root, scene),
    ...picture.units.flatMap((u): Mover[] => {
      const group = root.querySelector(`[data-phase="${u.name}"]`);
      if (group === null) return [];
      const set = setter(group);
      const list = stretches(picture, u.name, 'phase');
      return [({ time }) => set('text', 'text', stateAt(list, time))];
    }),
  ];
}

/** How a part stands on the page; another run's movers find it so. */
const standing = new WeakMap<Element, readonly unknown[]>();

/** Parts that stand still are left alone. */
function partMover(group: Element, { picture, onto }: Scene, o: OutlineSamples): Mover {
  const move = o.shape === 'leg' ? legMover(group, onto, reach(o)) : doorMover(group, onto);
  return ({ time, mark }) => {
    const angle = angleAt(picture, o, time);
    const flagged = mark(o.mechanism);
    const now = [o, onto, angle, flagged];
    const before = standing.get(group);
    if (before !== undefined && now.every((part, i) => part === before[i])) return;
    standing.set(group, now);
    move(placeAt(o, angle), flagged);
  };
}

/** A leg's longest length over its travel, m. */
function reach(o: OutlineSamples): number {
  return Math.max(spanOf(placeAt(o, o.low)), spanOf(placeAt(o, o.high)));
}
