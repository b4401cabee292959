/** What is drawn over legs and doors: struts' lengths, clearances, braces; and ramps and linkages under them. */
import { nothing, svg } from 'lit';
import type { SVGTemplateResult } from 'lit';
import { besides, dimension } from '../drawing/dimension.js';
import type { Dimension } from '../drawing/dimension.js';
import { SIGN } from '../drawing/glyph.js';
import { pathOf, project } from '../drawing/projection.js';
import type { Flat } from '../drawing/projection.js';
import { armOf, braceLine, isShortening, rampLine, strutLength } from '../model/fixture.js';
import { leastOf, nearestAt } from '../model/nearest.js';
import { angleAt, placeAt } from '../model/place.js';
import { seconds, withUnit } from '../model/sentence.js';
import type { BraceFacts, ClearanceFacts, GapFacts, RampFacts } from '../worker/bay-message.js';
import type { OutlineSamples, UnitFacts } from '../worker/message.js';
import { isFar, outlineOf, placeNow, shiftOf } from './bay-scene.js';
import type { Mover, Scene } from './bay-scene.js';
import { setter } from './setter.js';
import type { Setter } from './setter.js';

/** A length is dimensioned where at least this share of it is seen. */
const SEEN = 0.95;
/** From a leg's middle to its dimension line, px; letters, px. */
const BESIDE = 20;
const LETTERS = 11;
const ORIGIN = { x: 0, y: 0, z: 0 };

/** Chains and linkages between the parts they join, and ramps: all that stands still. */
export function under(scene: Scene): SVGTemplateResult {
  const { drives, ramps } = scene.picture.bay;
  return svg`${drives.map(({ device, from, to }) => drive(scene, device, from, to))}
    ${ramps.map((r) => ramp(scene, r))}`;
}

function drive(scene: Scene, device: string, from: string, to: string): unknown {
  const { picture, onto } = scene;
  const [a, b] = [from, to].map((name): Flat | undefined => {
    const o = outlineOf(picture, name);
    if (o === undefined) return undefined;
    const [u, v] = project(armOf(placeAt(o, o.low)).pivot, onto);
    const [du, dv] = scene.sheet.shiftOf(name);
    return [u + du, v + dv];
  });
  if (a === undefined || b === undefined || isFar(scene, to)) return nothing;
  return svg`<path class="drive ${device === '' ? 'linkage' : 'chain'}" data-drive=${to} d=${pathOf([a, b])}></path>`;
}

/** Thickness of a ramp behind its face, as a share of its distance from the leg's pivot. */
const BACK = 0.05;

function ramp(scene: Scene, r: RampFacts): unknown {
  const { picture, onto } = scene;
  const o = outlineOf(picture, r.on);
  if (o === undefined || onto.view !== 'side' || isFar(scene, r.on)) return nothing;
  const [pu, pv] = project(armOf(placeAt(o, o.low)).pivot, onto);
  const face = rampLine(r).map((p) => project(p, onto));
  const far = face.reduce((most, [u, v]) => Math.max(most, Math.hypot(u - pu, v - pv)), 1);
  // Its back lies on a circle behind the farthest point of the face.
  const back = face.map(([u, v]): Flat => {
    const f = (far * (1 + BACK)) / Math.hypot(u - pu, v - pv);
    return [pu + (u - pu) * f, pv + (v - pv) * f];
  });
  return svg`<g data-ramp=${r.on} transform=${shiftOf(scene, r.on)}>
    <title>Ramp in the bay</title>
    <path class="ramp" d=${pathOf([...face, ...back.reverse()], true)}></path>
  </g>`;
}

/** The frames of what moves. */
export function over(scene: Scene): SVGTemplateResult {
  const { picture } = scene;
  return svg`${picture.bay.braces.map((b) => (isFar(scene, b.on) ? nothing : svg`<g data-brace=${b.device} transform=${shiftOf(scene, b.on)}><title>Folding brace</title><path class="brace"></path></g>`))}
    ${picture.outlines.map((o) => (isShortening(picture, o) ? measure(scene, `strut ${o.mechanism}`, o.mechanism, isFar(scene, o.mechanism) ? 'strut far' : 'strut') : nothing))}
    ${units(scene).map((u) => [measure(scene, `least ${u.name}`, u.leg, 'gap least'), measure(scene, `gap ${u.name}`, u.leg, 'gap')])}`;
}

/** Units whose clearances this view shows: walls fore and aft from the side, the rest from ahead. */
const units = (scene: Scene): readonly UnitFacts[] =>
  scene.onto.view === 'plan' ? [] : scene.picture.units.filter((u) => !isFar(scene, u.leg));

function measure(scene: Scene, key: string, of: string, kind: string): SVGTemplateResult {
  const { mm } = scene.sheet;
  return svg`<g data-measure=${key} class="measure ${kind} none" transform=${shiftOf(scene, of)}>
    <path class="halo"></path><path class="line"></path><path class="warning"></path>
    <text font-size=${LETTERS * mm} stroke-width=${3 * mm}></text>
  </g>`;
}

export function markMovers(root: Element, scene: Scene): Mover[] {
  const { picture } = scene;
  const found = (key: string, make: (group: Element) => Mover): Mover[] => {
    const group = root.querySelector(`[data-${key}]`);
    return group === null ? [] : [make(group)];
  };
  return [
    ...picture.bay.ramps.flatMap((r) => found(`ramp="${r.on}"`, (g) => rampMover(g, scene, r))),
    ...picture.bay.braces.flatMap((b) =>
      found(`brace="${b.device}"`, (g) => braceMover(g, scene, b)),
    ),
    ...picture.outlines.flatMap((o) =>
      found(`measure="strut ${o.mechanism}"`, (g) => strutMover(g, scene, o)),
    ),
    ...picture.units.flatMap((u) => gapMover(root, scene, u)),
  ];
}

function rampMover(group: Element, { picture }: Scene, r: RampFacts): Mover {
  const set = setter(group);
  const o = outlineOf(picture, r.on);
  return ({ time }) => {
    const bears = o !== undefined && angleAt(picture, o, time) >= (r.bears ?? Infinity);
    set('.ramp', 'class', `ramp ${bears ? 'bears' : ''}`);
    set('title', 'text', bears ? 'Ramp in the bay: the tyre is pressed on it' : 'Ramp in the bay');
  };
}

function braceMover(group: Element, { picture, onto }: Scene, b: BraceFacts): Mover {
  const set = setter(group);
  const o = outlineOf(picture, b.on);
  return ({ time, mark }) => {
    if (o === undefined) return;
    const line = braceLine(b, placeNow(picture, o, time)).map((p) => project(p, onto));
    set('.brace', 'd', pathOf(line));
    set('.brace', 'class', `brace ${mark(b.device)}`);
  };
}

/** Writes a dimension between two points. */
function write(set: Setter, line: Dimension, figure: string): void {
  set('.halo', 'd', line.path);
  set('.line', 'd', line.path);
  set('text', 'x', line.label[0].toFixed(1));
  set('text', 'y', line.label[1].toFixed(1));
  set('text', 'text-anchor', line.anchor);
  set('text', 'text', figure);
}

/** Struts that differ by more than this are not alike, m. */
const UNLIKE = 0.004;

function strutMover(group: Element, scene: Scene, o: OutlineSamples): Mover {
  const set = setter(group);
  const { picture, onto, sheet, system } = scene;
  const far = isFar(scene, o.mechanism);
  const kind = far ? 'strut far' : 'strut';
  // Those behind on the other side, so that both can be read; seen from ahead all away from the middle.
  const [middle] = project(ORIGIN, onto);
  const outward = (foot: Flat): boolean => onto.view === 'front' && foot[0] > middle;
  const name = far ? `${picture.units.find((u) => u.leg === o.mechanism)?.name ?? ''} ` : '';
  // In a small drawing the one behind counts only when it is not like the one before it.
  const near = picture.units.find((u) => u.side === 'left')?.leg;
  const twin = !far || sheet.fine ? undefined : outlineOf(picture, near ?? '');
  return ({ time }) => {
    const place = placeNow(picture, o, time);
    const [pivot, foot] = place.line.map((p) => project(p, onto));
    const length = strutLength(place);
    const alike =
      twin !== undefined && Math.abs(strutLength(placeNow(picture, twin, time)) - length) < UNLIKE;
    const seen =
      !alike &&
      pivot !== undefined &&
      foot !== undefined &&
      Math.hypot(foot[0] - pivot[0], foot[1] - pivot[1]) >= SEEN * 1000 * length;
    set('', 'class', `measure ${kind} ${seen ? '' : 'none'}`);
    if (!seen) return;
    const side = far || outward(pivot) ? -1 : 1;
    const [a, b] = besides(pivot, foot, side * BESIDE, sheet.mm);
    // Those behind have theirs further along, clear of the others'.
    const line = dimension(a, b, sheet.mm, side, far ? 0.75 : 0.5);
    write(set, line, `${name}${withUnit(length, 'length', picture, system)}`);
  };
}

/** A point of a clearance on the paper of its own view. */
function flat([u, z]: readonly [number, number], { onto }: Scene): Flat {
  return project({ x: u, y: u, z }, onto);
}

function drawGap(
  set: Setter,
  scene: Scene,
  c: ClearanceFacts,
  gap: GapFacts,
  kind: string,
  figure: string,
): void {
  const { mm } = scene.sheet;
  const short = gap.distance < c.asked;
  const [a, b] = [flat(gap.from, scene), flat(gap.to, scene)];
  set('', 'class', `measure ${kind} ${short ? 'short' : ''}`);
  // The figure stands above or outside; its sign before it.
  const line = dimension(a, b, mm, b[0] >= a[0] ? -1 : 1);
  write(set, line, short ? `\u2003 ${figure}` : figure);
  const sign = line.anchor === 'end' ? -(figure.length * 0.55 + 1.4) * LETTERS : 0.5 * LETTERS;
  set('.warning', 'd', short ? SIGN.fail : '');
  set(
    '.warning',
    'transform',
    `translate(${line.label[0] + sign * mm} ${line.label[1] - 4 * mm}) scale(${(mm * LETTERS) / 16})`,
  );
}

/** Nearer to the least of all than this, in time or in distance, the line of the moment says it, s and m. */
const SAME = { time: 0.1, distance: 0.002 };

/** The smallest clearance of a unit at the moment, and of the whole run. */
function gapMover(root: Element, scene: Scene, unit: UnitFacts): Mover[] {
  const [now, least] = ['gap', 'least'].map((key) =>
    root.querySelector(`[data-measure="${key} ${unit.name}"]`),
  );
  if (!now || !least) return [];
  const [setNow, setLeast] = [setter(now), setter(least)];
  const { picture, system, sheet } = scene;
  const plane = scene.onto.view === 'side' ? 'lengthwise' : 'transverse';
  const fits = (c: ClearanceFacts): boolean => c.unit === unit.name && c.plane === plane;
  const all = leastOf(picture, fits);
  // In a small drawing only what is too near.
  const worth = all !== undefined && (sheet.fine || all.least.gap.distance < all.asked);
  return [
    ({ time }) => {
      const found = nearestAt(picture, time, fits);
      if (found === undefined) setNow('', 'class', 'measure gap none');
      else {
        const figure = withUnit(found.gap.distance, 'length', picture, system);
        drawGap(setNow, scene, found.of, found.gap, 'gap', figure);
      }
      const said =
        all !== undefined &&
        found?.of === all &&
        (Math.abs(time - all.least.t) < SAME.time ||
          Math.abs(found.gap.distance - all.least.gap.distance) < SAME.distance);
      if (!worth || said) setLeast('', 'class', 'measure gap least none');
      else drawGap(setLeast, scene, all, all.least.gap, 'gap least', `at ${seconds(all.least.t)}`);
    },
  ];
}
