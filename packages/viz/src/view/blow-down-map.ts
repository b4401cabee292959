/** The heat map's drawing: cells, hatching, boundary, marks, scale of colours. */
import { html, nothing, svg } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { boundary, cellBox, grid, spanOf } from '../drawing/heat-map.js';
import type { Grid } from '../drawing/heat-map.js';
import { heat } from '../drawing/heat.js';
import { cellAt, valueOf } from '../model/blow-down.js';
import type { Cell, Telling } from '../model/blow-down.js';
import { figure } from '../model/sentence.js';
import type { BlowDownFacts, Condition, Least, MapPicture } from '../worker/blow-down-message.js';
import type { Picture, Quantity, System } from '../worker/message.js';
import { degrees, unitOf } from './blow-down-words.js';

/** Room around the cells, in the drawing's units. */
export const MAP_EDGE = { left: 46, right: 92, top: 24, bottom: 40 } as const;

export interface MapView {
  readonly picture: Picture;
  readonly facts: BlowDownFacts;
  readonly map: MapPicture;
  readonly least: Least | undefined;
  readonly telling: Telling;
  readonly unit: number;
  readonly system: System;
  readonly width: number;
  readonly height: number;
  readonly cursor: readonly [number, number];
}

function shown(value: number, quantity: Quantity, picture: Picture, system: System): number {
  const d = picture.display[system][quantity];
  return d === undefined ? value : value * d.factor + d.shift;
}

/** The cells laid out, axes in the user's units. */
export function gridOf(
  map: MapPicture,
  picture: Picture,
  system: System,
  width: number,
  height: number,
): Grid {
  return grid(
    map.charge.map((c) => shown(c, 'gauge-pressure', picture, system)),
    map.temperature.map((t) => shown(t, 'temperature', picture, system)),
    Math.max(width - MAP_EDGE.left - MAP_EDGE.right, 20),
    Math.max(height - MAP_EDGE.top - MAP_EDGE.bottom, 20),
  );
}

export function heatMap(v: MapView): SVGTemplateResult {
  const { picture, system, map, width, height } = v;
  const g = gridOf(map, picture, system, width, height);
  return svg`<svg viewBox="0 0 ${width} ${height}" width="100%" height="100%" aria-hidden="true">
    <defs>
      <pattern id="no-lock" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect class="no-lock-ground" width="7" height="7"></rect>
        <rect class="no-lock-line" width="2" height="7"></rect>
      </pattern>
    </defs>
    <g transform="translate(${MAP_EDGE.left} ${MAP_EDGE.top})">
      ${guard([map, v.telling, v.unit, v.system, width, height], () => cells(v, g))}
      ${axes(v, g)}
      ${marks(v, g)}
    </g>
  </svg>`;
}

function cells(v: MapView, g: Grid): SVGTemplateResult {
  const { map, telling, unit } = v;
  const all = map.temperature.flatMap((_, j) =>
    map.charge.map((_, i) => [i, j, cellAt(map, i, j, unit)] as const),
  );
  const told = (c: Cell): number => valueOf(c, telling);
  const span = spanOf(all.map(([, , c]) => told(c)));
  const share = (value: number): number => {
    const s = span === undefined ? 0.5 : (value - span[0]) / (span[1] - span[0]);
    // Soon is good; so is much in hand.
    return telling === 'time' ? 1 - s : s;
  };
  const rect = (i: number, j: number, c: Cell): SVGTemplateResult | typeof nothing => {
    if (c.verdict === 'unknown') return nothing;
    const { x, y, width, height } = cellBox(g, i, j);
    const value = told(c);
    const ground = Number.isFinite(value) ? heat(share(value)) : undefined;
    const box = (cls: string, fill: string): SVGTemplateResult =>
      svg`<rect class=${cls} data-cell="${i},${j}" x=${x} y=${y} width=${width + 0.4} height=${height + 0.4} fill=${fill}></rect>`;
    const mark =
      c.verdict === 'failed'
        ? svg`<text class="failed" x=${x + width / 2} y=${y + height / 2 + 4} text-anchor="middle">?</text>`
        : nothing;
    return svg`${ground === undefined ? nothing : box('ground', ground)}${c.verdict === 'locked' ? nothing : box(ground === undefined ? 'hatch' : 'hatch over', 'url(#no-lock)')}${mark}`;
  };
  const line = boundary(g, (i, j) => {
    const { verdict } = cellAt(map, i, j, -1);
    return verdict === 'locked' ? true : verdict === 'not locked' ? false : undefined;
  });
  return svg`
    ${all.map(([i, j, c]) => rect(i, j, c))}
    <path class="bound-casing" d=${line}></path><path class="bound" data-boundary d=${line}></path>
    ${span === undefined ? nothing : legend(v, g, span, share)}
  `;
}

const LEGEND_STEPS = 24;

/** The scale of colours, best at the top. */
function legend(
  v: MapView,
  g: Grid,
  [low, high]: readonly [number, number],
  share: (value: number) => number,
): SVGTemplateResult {
  const { telling, picture, system } = v;
  const x = (g.toX.range()[1] ?? 0) + 14;
  const tall = (g.toY.range()[0] ?? 0) - 4;
  const step = tall / LEGEND_STEPS;
  const quantity: Quantity =
    telling === 'time' ? 'time' : telling === 'margin' ? 'moment' : 'ratio';
  const factor = picture.display[system][quantity]?.factor ?? 1;
  const unit = telling === 'gas' ? '%' : (picture.display[system][quantity]?.unit ?? '');
  const text = (value: number): string =>
    telling === 'gas' ? (100 * value).toFixed(0) : figure(value * factor);
  const marks = [0, 0.5, 1].map((s) => {
    const value = low + (high - low) * s;
    return { y: (1 - share(value)) * tall + 4, word: text(value) };
  });
  return svg`<g class="legend">
    <text x=${x} y="-10">${telling === 'time' ? 's' : unitOf(unit)}</text>
    ${Array.from({ length: LEGEND_STEPS }, (_, k) => svg`<rect x=${x} y=${k * step} width="16" height=${step + 0.4} fill=${heat(1 - k / (LEGEND_STEPS - 1))}></rect>`)}
    ${marks.map((m) => svg`<text x=${x + 21} y=${Math.min(m.y + 4, tall + 4)}>${m.word}</text>`)}
  </g>`;
}

function axes(v: MapView, g: Grid): SVGTemplateResult {
  const { picture, system, facts } = v;
  const [, width = 0] = g.toX.range();
  const [tall = 0] = g.toY.range();
  const pressure = unitOf(picture.display[system]['gauge-pressure']?.unit ?? 'Pa');
  const warmth = unitOf(picture.display[system].temperature?.unit ?? 'K');
  const across = g.toX.ticks(Math.max(2, Math.floor(width / 80)));
  const up = g.toY.ticks(Math.max(2, Math.floor(tall / 40)));
  const word = (n: number): string => String(n).replace('-', '\u2212');
  return svg`<g class="axes">
    <rect class="frame" width=${width} height=${tall}></rect>
    ${across.map((t) => svg`<path class="tick" d="M${g.toX(t)},${tall}v5"></path><text x=${g.toX(t)} y=${tall + 17} text-anchor="middle">${word(t)}</text>`)}
    ${up.map((t) => svg`<path class="tick" d="M0,${g.toY(t)}h-5"></path><text x="-8" y=${g.toY(t) + 4} text-anchor="end">${word(t)}</text>`)}
    <text x=${width / 2} y=${tall + 34} text-anchor="middle">charge on the gauge at ${degrees(facts.chargeTemperature, picture, system)}, ${pressure}</text>
    <text x="-40" y="-10">temperature of the run, ${warmth}</text>
  </g>`;
}

function marks(v: MapView, g: Grid): SVGTemplateResult {
  const { picture, system, facts, least, cursor } = v;
  const x = (charge: number): number => g.toX(shown(charge, 'gauge-pressure', picture, system));
  const y = (t: number): number => g.toY(shown(t, 'temperature', picture, system));
  const [, width = 0] = g.toX.range();
  const [tall = 0] = g.toY.range();
  const inside = (c: Condition): boolean =>
    x(c.charge) >= 0 && x(c.charge) <= width && y(c.temperature) >= 0 && y(c.temperature) <= tall;
  const { own, run } = facts;
  const played = run?.condition;
  const moved =
    played !== undefined &&
    (played.charge !== own.charge || played.temperature !== own.temperature);
  const [i, j] = cursor;
  const box = cellBox(g, i, j);
  const found = least?.kind === 'found' ? least : undefined;
  const bar = found === undefined ? 0 : y(found.temperature);
  const high = Math.max(cellBox(g, 0, 0).height, 12);
  return svg`<g class="marks">
    <rect class="cursor-casing" x=${box.x} y=${box.y} width=${box.width} height=${box.height}></rect>
    <rect class="cursor" x=${box.x} y=${box.y} width=${box.width} height=${box.height}></rect>
    ${
      found === undefined || !inside(found)
        ? nothing
        : svg`<g data-mark="least">
          <path class="casing" d="M${x(found.charge)},${bar - high}v${2 * high}"></path>
          <path class="least" d="M${x(found.charge)},${bar - high}v${2 * high}"></path>
          ${inside(own) ? svg`<path class="casing" d="M${x(found.charge)},${bar}H${x(own.charge)}"></path><path class="in-hand" d="M${x(found.charge)},${bar}H${x(own.charge)}"></path>` : nothing}
        </g>`
    }
    ${inside(own) ? svg`<g data-mark="own" transform="translate(${x(own.charge)} ${y(own.temperature)})"><circle class="casing" r="7"></circle><circle class="own" r="7"></circle><circle class="own-dot" r="2.2"></circle></g>` : nothing}
    ${moved && inside(played) ? svg`<path class="played" data-mark="played" transform="translate(${x(played.charge)} ${y(played.temperature)})" d="M0,-8L8,0L0,8L-8,0Z"></path>` : nothing}
  </g>`;
}

/** What the marks mean. */
export function mapKey(): TemplateResult {
  const key = (drawn: SVGTemplateResult, word: string, ground = heat(0.7)): TemplateResult =>
    html`<span class="key"
      ><svg viewBox="0 0 24 16" aria-hidden="true">
        <rect width="24" height="16" fill=${ground}></rect>
        ${drawn}</svg
      >${word}</span
    >`;
  return html`<div class="key-row">
    ${key(svg`<rect class="no-lock-ground" width="24" height="16"></rect><path class="no-lock-stroke" d="M2,16L14,0M12,16L24,0"></path>`, 'not all lock', 'none')}
    ${key(svg`<path class="bound-casing" d="M0,14H12V2H24"></path><path class="bound" d="M0,14H12V2H24"></path>`, 'edge')}
    ${key(svg`<circle class="casing" cx="12" cy="8" r="5.5"></circle><circle class="own" cx="12" cy="8" r="5.5"></circle><circle class="own-dot" cx="12" cy="8" r="2"></circle>`, 'as on the card')}
    ${key(svg`<path class="casing" d="M6,2V14M6,8H24"></path><path class="least" d="M6,2V14"></path><path class="in-hand" d="M6,8H24"></path>`, 'least charge, and what is in hand')}
    ${key(svg`<path class="played" d="M12,2L18,8L12,14L6,8Z"></path>`, 'played')}
  </div>`;
}
