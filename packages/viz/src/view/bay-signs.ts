/** Signs of the bay: locks of a unit, hooks on doors, plungers of sequence valves; where they are and how they stand. */
import { nothing, svg } from 'lit';
import type { SVGTemplateResult } from 'lit';
import { SIGN } from '../drawing/glyph.js';
import { project } from '../drawing/projection.js';
import type { Flat } from '../drawing/projection.js';
import { dot } from '../drawing/vector.js';
import { armOf, catchPoint, plungerPoint, plungerState, PLUNGER_WORD } from '../model/fixture.js';
import { stateAt, stretches } from '../model/history.js';
import { lockState } from '../model/lock.js';
import { angleAt, placeAt } from '../model/place.js';
import { plain } from '../model/sentence.js';
import type { CatchFacts, PlungerFacts } from '../worker/bay-message.js';
import { isFar, outlineOf, shiftOf } from './bay-scene.js';
import type { Mover, Scene } from './bay-scene.js';
import { setter } from './setter.js';

/** Size of a sign, and how far a hook's sign stands off its door, px. */
const SIZE = 14;
const OFF = 11;

/** A padlock with its letter, as a frame; the mover shuts and opens it. */
function padlock(scene: Scene, device: string, [x, y]: Flat, letter: string): SVGTemplateResult {
  const { mm } = scene.sheet;
  return svg`<g data-lock=${device}>
    <title>${plain(device)}</title>
    <circle class="ring" cx=${x} cy=${y} r=${SIZE * 0.72 * mm}></circle>
    <path class="sign-at" transform="translate(${x} ${y}) scale(${mm * (SIZE / 16)})"></path>
    <text class="cut" x=${x + SIZE * 0.6 * mm} y=${y + SIZE * 0.42 * mm} font-size=${10 * mm} stroke-width=${3 * mm}>${letter}</text>
  </g>`;
}

/** Sets a padlock and the ring around it. */
function padlockMover(group: Element, holds: (time: number) => boolean): Mover {
  const set = setter(group);
  const device = group.getAttribute('data-lock') ?? '';
  return ({ time, mark }) => {
    const sign = holds(time) ? 'engaged' : 'open';
    set('.sign-at', 'd', SIGN[sign]);
    set('.sign-at', 'class', `sign-at ${sign}`);
    set('.ring', 'class', `ring ${mark(device) || 'none'}`);
  };
}

/** Letters of a unit's name, px, and the width of one as a share of that. */
const NAME = 13;
const WIDE = 0.6;

/** Half of a unit's row beside its name, and the height of one, px. */
const LOCKS = 28;
const ROW = 18;

/** Where the middle of each unit's name stands, before its move: above all that the unit reaches, clear of other names. */
function nameSpots(scene: Scene): ReadonlyMap<string, Flat> {
  const { sheet, picture } = scene;
  const { mm } = sheet;
  const placed: { readonly x: number; readonly y: number; readonly half: number }[] = [];
  const spots = new Map<string, Flat>();
  const units = picture.units
    .filter((u) => outlineOf(picture, u.leg) !== undefined && !isFar(scene, u.leg))
    .map((u) => {
      const { left, right, top } = sheet.reachOf(u.leg);
      const [du, dv] = sheet.shiftOf(u.leg);
      return { u, du, dv, x: (left + right) / 2 + du, y: top + dv - 15 * mm };
    })
    .sort((a, b) => b.y - a.y);
  for (const { u, du, dv, x, y: low } of units) {
    const half = ((u.name.length * NAME * WIDE) / 2 + LOCKS) * mm;
    const meets = (y: number): boolean =>
      placed.some((p) => Math.abs(p.x - x) < p.half + half && Math.abs(p.y - y) < ROW * mm);
    let y = low;
    while (meets(y)) y -= ROW * mm;
    placed.push({ x, y, half });
    spots.set(u.name, [x - du, y - dv]);
  }
  return spots;
}

/** Each unit's name, its downlock before it and its uplock behind. */
export function locks(scene: Scene): SVGTemplateResult {
  const { mm } = scene.sheet;
  const spots = nameSpots(scene);
  return svg`${scene.picture.units.map((unit) => {
    const spot = spots.get(unit.name);
    if (spot === undefined) return nothing;
    const [x, y] = spot;
    const half = (unit.name.length * NAME * WIDE * mm) / 2;
    return svg`<g data-locks=${unit.name} transform=${shiftOf(scene, unit.leg)}>
      <text x=${x} y=${y + 5 * mm} text-anchor="middle" font-size=${NAME * mm} stroke-width=${3 * mm}>${unit.name}</text>
      ${unit.downlock === '' ? nothing : svg`<g data-which="downlock">${padlock(scene, unit.downlock, [x - half - 20 * mm, y], 'D')}</g>`}
      ${unit.uplock === '' ? nothing : svg`<g data-which="uplock">${padlock(scene, unit.uplock, [x + half + 11 * mm, y], 'U')}</g>`}
    </g>`;
  })}`;
}

/** Signs that are none of a unit's own locks. */
export function fixtures(scene: Scene): SVGTemplateResult {
  const { catches, plungers } = scene.picture.bay;
  // A small plan has no room for them; the other views show them all.
  if (scene.onto.view === 'plan' && !scene.sheet.fine) return svg``;
  return svg`${catches.map((c) => hook(scene, c))}${plungers.map((p) => plunger(scene, p))}`;
}

function hook(scene: Scene, c: CatchFacts): unknown {
  const { picture, onto, sheet } = scene;
  const o = outlineOf(picture, c.on);
  if (o === undefined || isFar(scene, c.on)) return nothing;
  const [x, y] = project(catchPoint(o, c), onto);
  const { along } = armOf(placeAt(o, c.at));
  const away: Flat = [dot(along, onto.right), -dot(along, onto.up)];
  const off = OFF * sheet.mm;
  // Two that meet edge to edge would lie on each other: theirs stand below, a little back.
  const at: Flat = [x - away[0] * off, y + (Math.abs(away[1]) > 0.5 ? away[1] : 1) * off];
  return svg`<g data-hook transform=${shiftOf(scene, c.on)}>${padlock(scene, c.device, at, 'H')}</g>`;
}

/** Ends of the stem and of the body, px along the way of the striker; how far the stem is in. */
const STEM = { free: 0, pushed: 3, opening: 5, open: 6.5 };
const BODY = [8, 17, 5] as const;
/** Seen from less than this share of its length a plunger does not show. */
const SEEN = 0.5;

function plunger(scene: Scene, p: PlungerFacts): unknown {
  const { picture, onto, sheet } = scene;
  const o = outlineOf(picture, p.on);
  if (o === undefined || isFar(scene, p.on)) return nothing;
  const { at, towards } = plungerPoint(o, p);
  const way: Flat = [dot(towards, onto.right), -dot(towards, onto.up)];
  if (Math.hypot(...way) < SEEN) return nothing;
  const turn = (Math.atan2(way[1], way[0]) * 180) / Math.PI;
  const [x, y] = project(at, onto);
  const [from, to, half] = BODY;
  return svg`<g data-plunger=${p.device} class="plunger"
    transform="${shiftOf(scene, p.on)} translate(${x} ${y}) rotate(${turn}) scale(${sheet.mm})">
    <title></title>
    <circle class="ring none" cx=${(from + to) / 2} r="9"></circle>
    <path class="stem"></path>
    <path class="body" d="M${from},${-half}H${to}V${half}H${from}Z"></path>
  </g>`;
}

/** The movers of everything in here, from the drawing just made. */
export function signMovers(root: Element, scene: Scene): Mover[] {
  const { picture } = scene;
  const out: Mover[] = [];
  for (const unit of picture.units) {
    for (const which of ['downlock', 'uplock'] as const) {
      const group = root.querySelector(
        `[data-locks="${unit.name}"] [data-which=${which}] [data-lock]`,
      );
      if (group !== null)
        out.push(padlockMover(group, (time) => lockState(picture, unit, which, time).holds));
    }
  }
  for (const c of picture.bay.catches) {
    const group = root.querySelector(`[data-hook] [data-lock="${c.device}"]`);
    if (group === null) continue;
    const list = stretches(picture, c.device, 'mode');
    out.push(padlockMover(group, (time) => stateAt(list, time) === 'engaged'));
  }
  for (const p of picture.bay.plungers) {
    const group = root.querySelector(`[data-plunger="${p.device}"]`);
    if (group !== null) out.push(plungerMover(group, scene, p));
  }
  return out;
}

function plungerMover(group: Element, { picture }: Scene, p: PlungerFacts): Mover {
  const set = setter(group);
  const o = outlineOf(picture, p.on);
  return ({ time, mark }) => {
    if (o === undefined) return;
    const state = plungerState(picture, p, angleAt(picture, o, time), time);
    const flagged = mark(p.device);
    set('title', 'text', `${plain(p.device)}: ${PLUNGER_WORD[state]}`);
    set('.stem', 'd', `M${BODY[0]},0H${STEM[state]}M${STEM[state]},-4V4`);
    set('.body', 'class', `body ${state}`);
    set('.ring', 'class', `ring ${flagged || 'none'}`);
  };
}
