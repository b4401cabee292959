import { html, nothing, svg } from 'lit';
import type { SVGTemplateResult, TemplateResult } from 'lit';
import { extent } from 'd3-array';
import { guard } from 'lit/directives/guard.js';
import { panels } from '../drawing/moment-plot.js';
import type { Panels } from '../drawing/moment-plot.js';
import { sampleAt } from '../model/blow-down.js';
import { margin, plain, seconds, withUnit } from '../model/sentence.js';
import type { State } from '../model/state.js';
import type { CurveSamples } from '../worker/blow-down-message.js';
import type { Picture } from '../worker/message.js';
import { define, View } from './base.js';
import { axes, curvesOf, worst } from './blow-down-curves.js';
import { momentPlotStyles } from './blow-down-plot.styles.js';
import { unitOf } from './blow-down-words.js';
import { Measured } from './measured.js';
import { shared } from './shared.styles.js';

const EDGE = { left: 56, right: 14, top: 12, bottom: 36 } as const;

type Over = 'travel' | 'time';

/**
 * One leg of the run on show: the bottle's pressure, and the moment available against the moment
 * needed, over the leg's travel or over time; the worst place marked, the play head moving along.
 */
export class MomentPlot extends View {
  static override properties = {
    ...View.properties,
    unit: { state: true },
    over: { state: true },
  };
  static override styles = [shared, momentPlotStyles];

  /** Name of the unit shown; the first when empty or gone. */
  declare unit: string;
  /** Undefined until the user chooses: over time for a leg that never moves. */
  declare over: Over | undefined;

  protected readonly watches: readonly (keyof State)[] = ['picture', 'time', 'system', 'large'];

  readonly #size = new Measured(this, '.plot');

  constructor() {
    super();
    this.unit = '';
    this.over = undefined;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { picture } = this.state;
    const curves = picture?.blowDown?.run?.curves ?? [];
    const curve = curves.find((c) => c.unit === this.unit) ?? curves[0];
    if (picture === undefined || curve === undefined)
      return html`<p class="soft">The handle was never pulled in this run.</p>`;
    const over = this.over ?? usual(picture, curve);
    return html`
      <div class="tools">
        <label
          >Leg
          <select
            data-choose="leg"
            @change=${(e: Event) => (this.unit = (e.target as HTMLSelectElement).value)}
          >
            ${curves.map((c) => html`<option value=${c.unit} .selected=${c === curve}>${plain(c.unit)}</option>`)}
          </select></label
        >
        <label
          >over
          <select
            data-choose="over"
            @change=${(e: Event) => (this.over = (e.target as HTMLSelectElement).value === 'time' ? 'time' : 'travel')}
          >
            <option value="travel" .selected=${over === 'travel'}>the leg's travel</option>
            <option value="time" .selected=${over === 'time'}>time</option>
          </select></label
        >
        ${key('available', 'available')} ${key('needed', 'needed')} ${key('bottle', 'bottle')}
        ${key('available held', 'held by a lock')}
      </div>
      <div class="plot">${this.#size.width < 80 ? nothing : this.#plot(picture, curve, over)}</div>
      <p>${this.#worstWords(picture, curve)}</p>
    `;
  }

  #worstWords(picture: Picture, c: CurveSamples): TemplateResult {
    const { system } = this.state;
    const i = c.worst;
    const moment = (v: number): string => withUnit(v, 'moment', picture, system);
    if (i < 0)
      return html`A lock held the ${plain(c.leg)} all the time: no moment was ever asked of it.`;
    const available = c.available[i] ?? NaN;
    const needed = c.needed[i] ?? NaN;
    return html`<b>Worst</b> at ${withUnit(c.angle[i] ?? NaN, 'angle', picture, system)},
      ${seconds(c.t[i] ?? NaN)}: ${moment(available)} available, ${moment(needed)} needed,
      <b>${margin(available - needed, 'moment', picture, system)}</b> in hand.`;
  }

  #plot(picture: Picture, c: CurveSamples, over: Over): SVGTemplateResult {
    const { system, time } = this.state;
    const width = this.#size.width - EDGE.left - EDGE.right;
    const height = this.#size.height - EDGE.top - EDGE.bottom;
    const unit = (quantity: 'moment' | 'gauge-pressure' | 'angle'): [number, string] => {
      const d = picture.display[system][quantity];
      return [d?.factor ?? 1, unitOf(d?.unit ?? '')];
    };
    const [perMoment, momentUnit] = unit('moment');
    const [perPressure, pressureUnit] = unit('gauge-pressure');
    const [perAngle, angleUnit] = unit('angle');
    const travel = over === 'travel';
    const x = travel ? c.angle.map((a) => a * perAngle) : c.t;
    const outline = picture.outlines.find((o) => o.mechanism === c.leg);
    const ends: [number, number] = travel
      ? [(outline?.low ?? 0) * perAngle, (outline?.high ?? 1) * perAngle]
      : [c.t[0] ?? 0, c.t[c.t.length - 1] ?? 1];
    const bottle = c.bottle.map((p) => p * perPressure);
    const available = c.available.map((m) => m * perMoment);
    const needed = c.needed.map((m) => m * perMoment);
    const p = panels(ends, bottle, [available, needed], width, height, travel);
    const axis = travel ? `angle of the ${plain(c.leg)}, ${angleUnit}` : 'time, s';
    const at = sampleAt(c, time);
    const dot = (cls: string, v: Float32Array, to: Panels['moment']): SVGTemplateResult =>
      svg`<circle class="dot ${cls}" r="4.5" cx=${p.x(x[at] ?? 0)} cy=${to(v[at] ?? 0)}></circle>`;
    return svg`<svg viewBox="0 0 ${this.#size.width} ${this.#size.height}" width="100%" height="100%" aria-hidden="true">
      <g transform="translate(${EDGE.left} ${EDGE.top})">
        ${guard([c, system, over, this.#size.width, this.#size.height], () => [
          axes(p, width, height, axis, pressureUnit, momentUnit),
          curvesOf(c, x, bottle, available, needed, p),
          worst(c, x, available, needed, p, width),
        ])}
        ${
          at < 0
            ? nothing
            : svg`<g data-head=${at}>
          <path class="head" d="M${p.x(x[at] ?? 0)},0V${height}"></path>
          ${dot('bottle', bottle, p.pressure)}${dot('needed', needed, p.moment)}${dot('available', available, p.moment)}
        </g>`
        }
      </g>
    </svg>`;
  }
}

/** Share of its travel below which a leg has not moved. */
const MOVED = 0.05;

function usual(picture: Picture, c: CurveSamples): Over {
  const outline = picture.outlines.find((o) => o.mechanism === c.leg);
  const [low = 0, high = 0] = extent(c.angle);
  const whole = (outline?.high ?? 1) - (outline?.low ?? 0);
  return high - low > MOVED * whole ? 'travel' : 'time';
}

function key(kind: string, word: string): TemplateResult {
  return html`<span class="key"
    ><svg viewBox="0 0 26 10" aria-hidden="true"><path class=${kind} d="M0,5H26"></path></svg
    >${word}</span
  >`;
}

define('ww-moment-plot', MomentPlot);
