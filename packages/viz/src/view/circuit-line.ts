/** Lines of the circuit as SVG: coloured and widened by pressure, with what flows in them. */
import { nothing, svg } from 'lit';
import type { SVGTemplateResult } from 'lit';
import type { Flat } from '../drawing/circuit/part.js';
import type { Piece } from '../drawing/circuit/wire.js';
import { colourAt, isSucked, RIM, widthAt } from '../drawing/pressure-scale.js';
import type { PressureScale } from '../drawing/pressure-scale.js';

/** A flow that is worth an arrow, m3/s: a cubic centimetre in two seconds. */
export const FLOWING = 5e-7;
/** A rate that is worth its figures, m3/s: what rounds to a tenth of a gallon a minute. */
export const TOLD = 3.2e-6;
/** Dashes pass this many modules for each cubic metre: 2 gallons a minute go by at six modules a second. */
export const MODULES_PER_CUBIC_METRE = 5e4;
/** Length of a dash with its gap, modules. */
export const DASH = 2;

export interface LineLook {
  /** Pressure above that outside, Pa; NaN while it is not known. */
  readonly gauge: number;
  readonly gas: boolean;
  /** Along the piece, m3/s. */
  readonly flow: number;
  /** How far its dashes have come, modules; undefined where nothing is to move. */
  readonly run: number | undefined;
}

const path = (points: readonly Flat[]): string =>
  `M${points.map(([x, y]) => `${x},${y}`).join('L')}`;

export function lineDrawing(piece: Piece, look: LineLook, scale: PressureScale): SVGTemplateResult {
  const d = path(piece.points);
  const known = Number.isFinite(look.gauge);
  const share = known ? scale.share(look.gauge) : 0;
  const width = widthAt(share);
  const mark = known && isSucked(look.gauge) ? 'sucked' : look.gas ? 'gas' : '';
  const moving = Math.abs(look.flow) > FLOWING;
  return svg`<g class="line" data-node=${piece.node} data-flow=${look.flow.toExponential(3)}>
    <path class="rim" d=${d} stroke-width=${width + 2 * RIM}></path>
    <path class="core ${mark}" d=${d} stroke=${known ? colourAt(share) : 'none'} stroke-width=${width}></path>
    ${moving && look.run !== undefined ? svg`<path class="dashes ${share < 0.5 ? 'on-dark' : ''}" d=${d} stroke-dashoffset=${(-look.run).toFixed(2)}></path>` : nothing}
    ${moving ? arrow(piece.points, look.flow > 0) : nothing}
  </g>`;
}

/** In the middle of the longest straight stretch, the way the flow goes. */
function arrow(points: readonly Flat[], along: boolean): SVGTemplateResult | typeof nothing {
  let best: readonly [Flat, Flat] | undefined;
  let most = 1.5;
  points.slice(1).forEach((b, i) => {
    const a = points[i] ?? b;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length > most) [best, most] = [[a, b], length];
  });
  if (best === undefined) return nothing;
  const [a, b] = best;
  const turn = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI + (along ? 0 : 180);
  return svg`<path class="flow" d="M1,0L-0.7,0.85V-0.85Z" transform="translate(${(a[0] + b[0]) / 2} ${(a[1] + b[1]) / 2}) rotate(${turn})"></path>`;
}

export function jointDrawing([x, y]: Flat): SVGTemplateResult {
  return svg`<circle class="joint" cx=${x} cy=${y} r="0.55"></circle>`;
}
