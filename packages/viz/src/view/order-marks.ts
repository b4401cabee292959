/** The marks of the order chart as SVG: bars, events, pins, arrows. No state of their own. */
import { nothing, svg } from 'lit';
import type { SVGTemplateResult } from 'lit';
import { arrowHead, causeArrow } from '../drawing/arrow.js';
import type { TimeScale } from '../drawing/axis.js';
import { FALLING, RISING } from '../drawing/glyph.js';
import { margin } from '../model/sentence.js';
import { causesOf, effectsOf } from '../model/history.js';
import type { Bar, Lane } from '../model/lanes.js';
import type { LogEntry, Picture, System } from '../worker/message.js';
import { signAt } from './sign.js';

/** Height of a lane, px; and of the row under it that holds its flags. */
export const ROW = 19;
export const PINS = 18;
/** Average width of a letter at the size of bar labels, px: labels that would not fit are left out. */
const LETTER = 6.4;

export interface Plot {
  readonly scale: TimeScale;
  readonly width: number;
}

export function bar(b: Bar, y: number, plot: Plot, worded: boolean): SVGTemplateResult {
  const x1 = Math.max(plot.scale(b.from), 0);
  const x2 = Math.min(plot.scale(b.to), plot.width);
  if (x2 <= 0 || x1 >= plot.width) return svg``;
  const wide = Math.max(x2 - x1, 1.5);
  const moving = b.doing === 'rising' || b.doing === 'falling';
  const thin = b.doing === 'rest' && !worded;
  const word = moving && !worded ? '' : b.state;
  const fits = word.length * LETTER + (moving ? 20 : 11) < wide;
  const inset = thin ? 8.5 : 3;
  return svg`
    <rect class=${worded ? `${b.doing} phase` : b.doing} x=${x1} y=${y + inset} width=${wide} height=${ROW - 2 * inset} rx=${thin ? 0 : 2}><title>${b.state}</title></rect>
    ${moving && wide > 16 ? svg`<path class="way" d=${b.doing === 'rising' ? RISING : FALLING} transform="translate(${x1 + 10} ${y + ROW / 2})"></path>` : nothing}
    ${fits && word !== '' && !thin ? svg`<text class="word ${b.doing === 'held' ? 'held' : ''}" x=${x1 + (moving ? 19 : 8)} y=${y + ROW / 2 + 3.6}>${word}</text>` : nothing}`;
}

export function event(
  { index, kind }: LogEntry,
  x: number,
  y: number,
  chosen: string,
  select: (e: MouseEvent) => void,
): SVGTemplateResult {
  const mid = y + ROW / 2;
  // Told apart by shape: a diamond for the operator, a bar for everything that follows.
  const d =
    kind === 'operator'
      ? `M${x},${mid - 6}l6,6l-6,6l-6,-6Z`
      : `M${x - 1.6},${mid - 5.5}h3.2v11h-3.2Z`;
  return svg`<path class="event ${chosen}" data-event=${index} d=${d} @click=${select}></path>`;
}

/** Marks nearer than this to the one before are left out, unless picked out, px. */
const APART = 1.5;

/** The events of a lane worth drawing at this scale. */
export function visible(
  events: readonly LogEntry[],
  plot: Plot,
  wanted: (index: number) => boolean,
): LogEntry[] {
  let last = -Infinity;
  return events.filter((e) => {
    const x = plot.scale(e.t);
    if (x < -8 || x > plot.width + 8) return false;
    if (x - last < APART && !wanted(e.index)) return false;
    last = x;
    return true;
  });
}

/** The flags of a lane that are shown, by time. */
export function pinnedOn(lane: Lane, picture: Picture, chosen: number, notes: boolean): number[] {
  return lane.flags
    .filter((i) => notes || i === chosen || picture.flags[i]?.severity !== 'note')
    .sort((a, b) => (picture.flags[a]?.from ?? 0) - (picture.flags[b]?.from ?? 0));
}

/** Pins under a lane that begins at `y`, with their margins where there is room; a stem and a band lead up to it. */
export function pins(
  shown: readonly number[],
  y: number,
  plot: Plot,
  picture: Picture,
  system: System,
  chosen: number,
  select: (index: number, e: MouseEvent) => void,
): SVGTemplateResult[] {
  const mid = y + ROW + PINS / 2 - 1;
  const items = shown.map((i) => {
    const f = picture.flags[i];
    const text = f === undefined ? '' : margin(f.margin, f.marginQuantity, picture, system);
    return {
      i,
      f,
      text,
      x: f === undefined ? 0 : plot.scale(f.from),
      width: 26 + text.length * 6.8,
    };
  });
  const covers = (a: (typeof items)[number], b: (typeof items)[number]): boolean =>
    a !== b && b.x > a.x - 4 && b.x < a.x + a.width;
  // The one picked out lies on top, with its label.
  items.sort((a, b) => Number(a.i === chosen) - Number(b.i === chosen));
  return items.map((item) => {
    const { i, f, text, x, width } = item;
    if (f === undefined || x < -2 || x > plot.width + 2) return svg``;
    const end = Math.min(plot.scale(f.to), plot.width);
    // A pin at the right edge turns its label to the left.
    const left = x + width > plot.width;
    const labelled =
      i === chosen || (f.severity !== 'note' && !items.some((other) => covers(item, other)));
    const boxX = left ? x - width + 9 : x - 9;
    return svg`<g class="pin ${f.severity} ${i === chosen ? 'chosen' : ''}" data-flag=${i} @click=${(e: MouseEvent) => select(i, e)}>
      <title>${f.title}: ${text}</title>
      ${end - x > 2 && f.severity !== 'note' ? svg`<rect class="band" x=${x} y=${y + 1} width=${end - x} height=${ROW + PINS - 3}></rect>` : nothing}
      <line class="stem" x1=${x} x2=${x} y1=${y + 2} y2=${mid}></line>
      ${labelled ? svg`<rect class="back" x=${boxX} y=${mid - 8} width=${width} height="16" rx="8"></rect><text x=${left ? boxX + 7 : x + 10} y=${mid + 4}>${text}</text>` : svg`<circle class="back" cx=${x} cy=${mid} r=${f.severity === 'note' ? 6.5 : 8}></circle>`}
      ${signAt(f.severity, x, mid, f.severity === 'note' ? 10 : 12)}
    </g>`;
  });
}

/** The chain of causes of an event (whole lines) and its direct effects (dashed). */
export function arrows(
  picture: Picture,
  index: number,
  plot: Plot,
  middleOf: (device: string) => number | undefined,
): SVGTemplateResult[] {
  const chain = [index, ...causesOf(picture.log, index)];
  const links = [
    ...chain.slice(1).map((cause, i): [number, number, string] => [cause, chain[i] ?? index, '']),
    ...effectsOf(picture.log, index).map((effect): [number, number, string] => [
      index,
      effect,
      'effect',
    ]),
  ];
  return links.map(([from, to, kind]) => {
    const [a, b] = [picture.log[from], picture.log[to]];
    const [y1, y2] = [middleOf(a?.device ?? ''), middleOf(b?.device ?? '')];
    if (a === undefined || b === undefined || y1 === undefined || y2 === undefined || from === to)
      return svg``;
    const [x1, x2] = [plot.scale(a.t), plot.scale(b.t)];
    if (Math.abs(x1 - x2) < 0.5 && y1 === y2) return svg``;
    return svg`<path class="arrow ${kind}" data-from=${from} data-to=${to} d=${causeArrow(x1, y1, x2, y2)}></path><path class="arrow-head" d=${arrowHead(x1, x2, y2)}></path>`;
  });
}
