import { html, nothing, svg } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';
import { dot, project, PROJECTIONS } from '../drawing/projection.js';
import type { Projection } from '../drawing/projection.js';
import { flagOn, stateAt, stretches } from '../model/history.js';
import { lockState } from '../model/lock.js';
import { withUnit } from '../model/sentence.js';
import { angleAt, placeAt } from '../model/place.js';
import { layOut } from '../model/sheet.js';
import type { Sheet } from '../model/sheet.js';
import type { State } from '../model/state.js';
import type { Flag, OutlineSamples, Picture, UnitFacts } from '../worker/message.js';
import { define, View } from './base.js';
import { door, ghost, leg, well } from './bay-parts.js';
import { bayTable } from './bay-table.js';
import { bayStyles } from './bay.styles.js';
import { shared } from './shared.styles.js';
import { textScale } from './scale.js';
import { signAt } from './sign.js';

/**
 * The bay: legs, wheels and doors where the run says they are, from the front and the side,
 * with the locks' state, flagged parts, and the state of each unit in words.
 */
export class Bay extends View {
  static override properties = { ...View.properties, front: { state: true } };
  static override styles = [shared, bayStyles];

  /** Which way the front view looks. */
  declare front: 'ahead' | 'behind';

  protected readonly watches: readonly (keyof State)[] = [
    'picture',
    'time',
    'selection',
    'system',
    'large',
  ];

  #sizes = new ResizeObserver(() => this.requestUpdate());

  constructor() {
    super();
    this.front = 'ahead';
  }

  protected override firstUpdated(): void {
    for (const figure of this.renderRoot.querySelectorAll('figure')) this.#sizes.observe(figure);
  }

  protected override render(): TemplateResult {
    const { picture } = this.state;
    return html`
      <div class="drawings" role="group" aria-label="Bay, drawn at the play head">
        ${this.#figure(
          picture,
          PROJECTIONS[this.front],
          html`<button @click=${this.#flip} title="Look from the other side">
            Look from ${this.front === 'ahead' ? 'behind' : 'ahead'}
          </button>`,
        )}
        ${this.#figure(picture, PROJECTIONS.side, nothing)}
      </div>
      ${
        picture === undefined
          ? nothing
          : bayTable({ ...this.state, picture, flagOn: (device) => this.#flagOn(picture, device) })
      }
    `;
  }

  #flip = (): void => {
    this.front = this.front === 'ahead' ? 'behind' : 'ahead';
  };

  #figure(picture: Picture | undefined, onto: Projection, control: unknown): TemplateResult {
    const name = onto.name === 'side' ? 'side' : 'front';
    const figure = this.renderRoot.querySelector(`figure.${name}`);
    const scale = textScale();
    const sheet =
      picture === undefined || figure === null
        ? undefined
        : layOut(picture, onto, figure.clientWidth / scale, figure.clientHeight / scale);
    if (figure === null) requestAnimationFrame(() => this.requestUpdate());
    return html`<figure class=${name}>
      <figcaption>
        <span>${onto.title}<small>${onto.note}</small></span
        >${control}
      </figcaption>
      ${
        picture === undefined || sheet === undefined
          ? nothing
          : html`<svg
              role="img"
              aria-label="${onto.title}; the table below says the same in words"
              viewBox=${sheet.viewBox}
              data-view=${name}
            >
              ${this.#parts(picture, onto, sheet)}
            </svg>`
      }
    </figure>`;
  }

  #flagOn(picture: Picture, device: string): Flag | undefined {
    const { time, selection } = this.state;
    return flagOn(picture, device, time, selection.kind === 'flag' ? selection.index : -1);
  }

  #parts(picture: Picture, onto: Projection, sheet: Sheet): SVGTemplateResult {
    const depth = (o: OutlineSamples): number => {
      const p = placeAt(o, o.low).line[0];
      return p === undefined ? 0 : dot(p, onto.near);
    };
    const order = [...picture.outlines].sort((a, b) => depth(a) - depth(b));
    const inside = (o: OutlineSamples, content: unknown, far = false): SVGTemplateResult =>
      svg`<g data-mechanism=${o.mechanism} class=${far ? 'far' : ''} transform="translate(${sheet.shiftOf(o.mechanism)} 0)">${content}</g>`;
    // In the side view the right-hand parts stand behind the left-hand ones.
    const far = (o: OutlineSamples): boolean =>
      onto.name === 'side' && sideOf(picture, o.mechanism) === 'right';
    return svg`
      ${picture.units.map((u) => this.#well(picture, u, onto, sheet))}
      ${order.map((o) => inside(o, far(o) ? nothing : [ghost(placeAt(o, o.low), onto), ghost(placeAt(o, o.high), onto)]))}
      ${sheet.breaks.map((b) => svg`<path class="break" d=${b.path}></path><text x=${b.x} y=${b.y} font-size=${11 * sheet.mm} stroke-width=${3 * sheet.mm} text-anchor="middle" class="cut">${withUnit(b.gap, 'length', picture, this.state.system)}</text>`)}
      ${order.map((o) => inside(o, this.#part(picture, o, onto), far(o)))}
      ${picture.units.map((u) => this.#locks(picture, u, onto, sheet))}
    `;
  }

  #part(picture: Picture, o: OutlineSamples, onto: Projection): SVGTemplateResult {
    const place = placeAt(o, angleAt(picture, o, this.state.time));
    const flag = this.#flagOn(picture, o.mechanism);
    const mark = flag === undefined ? '' : `flagged-${flag.severity}`;
    return o.shape === 'leg' ? leg(place, onto, reach(o), mark) : door(place, onto, mark);
  }

  /** The well as a thin outline down to the hinges of its doors, or else to the leg's pivot. */
  #well(picture: Picture, unit: UnitFacts, onto: Projection, sheet: Sheet): unknown {
    if (unit.bay === undefined || (onto.name === 'side' && unit.side === 'right')) return nothing;
    const names = unit.doors.length > 0 ? unit.doors : [unit.leg];
    const hinges = picture.outlines
      .filter((o) => names.includes(o.mechanism))
      .map((o) => (placeAt(o, o.low).line[0] ?? ORIGIN).z);
    return svg`<g transform="translate(${sheet.shiftOf(unit.leg)} 0)">${well(unit.bay, Math.min(...hinges), onto)}</g>`;
  }

  /** Lock signs and the unit's name: the downlock above the pivot, the uplock above where the axle comes to rest. */
  #locks(picture: Picture, unit: UnitFacts, onto: Projection, sheet: Sheet): SVGTemplateResult {
    const o = picture.outlines.find((each) => each.mechanism === unit.leg);
    if (o === undefined || (onto.name === 'side' && unit.side === 'right')) return svg``;
    const up = placeAt(o, o.high).line;
    const [px] = project(up[0] ?? ORIGIN, onto);
    const [ux] = project(up[up.length - 1] ?? ORIGIN, onto);
    const shift = sheet.shiftOf(unit.leg);
    const size = 17 * sheet.mm;
    const foot = sheet.bottom + 14 * sheet.mm;
    // Clear of the wheel wherever it is, and of the well's roof.
    const y = sheet.topOf(unit.leg) - 13 * sheet.mm;
    // Seen end-on the two would lie on each other: then they stand side by side.
    const apart = unit.uplock !== '' && Math.abs(ux - px) < 40 * sheet.mm ? 17 * sheet.mm : 0;
    const lock = (which: 'uplock' | 'downlock', word: string, x: number): unknown => {
      const name = unit[which];
      if (name === '') return nothing;
      const engaged = lockState(picture, unit, which, this.state.time).holds;
      const flag = this.#flagOn(picture, name);
      return svg`
        ${flag === undefined ? nothing : svg`<circle class="pivot flagged-${flag.severity}" cx=${x} cy=${y} r=${size * 0.72}></circle>`}
        ${signAt(engaged ? 'engaged' : 'open', x, y, size)}
        <text class="cut" x=${x + size * 0.78} y=${y + size * 0.4} font-size=${10 * sheet.mm} stroke-width=${3 * sheet.mm}>${word}</text>`;
    };
    return svg`<g transform="translate(${shift} 0)">
      <text x=${px} y=${y - 17 * sheet.mm} text-anchor="middle" font-size=${13 * sheet.mm} stroke-width=${3 * sheet.mm}>${unit.name}</text>
      ${this.state.large ? svg`<text class="cut" x=${px} y=${foot} text-anchor="middle" font-size=${12 * sheet.mm} stroke-width=${3 * sheet.mm}>${stateAt(stretches(picture, unit.name, 'phase'), this.state.time)}</text>` : nothing}
      ${lock('downlock', 'D', px - apart)}
      ${lock('uplock', 'U', apart > 0 ? px + apart : ux)}
    </g>`;
  }
}

const ORIGIN = { x: 0, y: 0, z: 0 };

function sideOf(picture: Picture, mechanism: string): string {
  return picture.units.find((u) => u.leg === mechanism || u.doors.includes(mechanism))?.side ?? '';
}

/** A leg's longest length over its travel, m. */
function reach(o: OutlineSamples): number {
  const long = (angle: number): number => {
    const { line } = placeAt(o, angle);
    return line.slice(1).reduce((sum, p, i) => {
      const a = line[i] ?? p;
      return sum + Math.hypot(p.x - a.x, p.y - a.y, p.z - a.z);
    }, 0);
  };
  return Math.max(long(o.low), long(o.high));
}

define('ww-bay', Bay);
