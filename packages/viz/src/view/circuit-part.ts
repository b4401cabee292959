/** A part of the circuit as SVG: its symbol with the moving piece where it stands, its tanks and its name. */
import { nothing, svg } from 'lit';
import type { SVGTemplateResult } from 'lit';
import { LEADING, LETTER } from '../drawing/circuit/label.js';
import type { Put } from '../drawing/circuit/layer.js';
import type { Label } from '../drawing/circuit/part.js';
import { tank } from '../drawing/symbol/index.js';
import type { Shape } from '../drawing/symbol/index.js';

/** How far letters reach below their line, as a share of their size. */
const BASE = 0.85;
/** The click of a glove needs some room round a symbol, modules. */
const GRIP = 0.5;

export interface PartLook {
  /** 0..1, a spool's -1..1 */
  readonly standing: number;
  readonly chosen: boolean;
  /** Class of what it is marked for: a flag, the event picked out. */
  readonly mark: string;
  /** Read out: name, kind, state. */
  readonly spoken: string;
  /** Reached by Tab. */
  readonly tab: boolean;
}

function stroke(shape: Shape, standing: number): SVGTemplateResult {
  const hidden = shape.when !== undefined && shape.when !== (standing >= 0.5 ? 1 : 0);
  const [x, y] = shape.by ?? [0, 0];
  const move =
    shape.by === undefined
      ? nothing
      : `translate(${(x * standing).toFixed(3)} ${(y * standing).toFixed(3)})`;
  return svg`<path class=${shape.look} d=${shape.d} transform=${move} ?hidden=${hidden}></path>`;
}

/** Read out, lines of a name need a space between them; it stands where it moves no letter. */
function spaced(line: string, i: number, { lines, anchor }: Label): string {
  if (anchor === 'end') return i > 0 ? ` ${line}` : line;
  return i + 1 < lines.length ? `${line} ` : line;
}

export function partDrawing(
  { body, x, y }: Put,
  look: PartLook,
  choose: () => void,
  focused: () => void,
): SVGTemplateResult {
  const { part, turn, label, whole, tanks } = body;
  const [l, t, r, b] = whole;
  return svg`<g
    class="part ${look.chosen ? 'chosen' : ''} ${look.mark}"
    data-part=${part.name}
    data-standing=${look.standing.toFixed(4)}
    role="button"
    tabindex=${look.tab ? 0 : -1}
    aria-label=${look.spoken}
    aria-pressed=${look.chosen}
    transform="translate(${x} ${y})"
    @click=${choose}
    @focus=${focused}
  >
    <rect class="grip" x=${l - GRIP} y=${t - GRIP} width=${r - l + 2 * GRIP} height=${b - t + 2 * GRIP} rx="0.8"></rect>
    <g class="symbol" transform="rotate(${turn * 90})">
      ${part.drawing.shapes.map((shape) => stroke(shape, look.standing))}
    </g>
    ${tanks.map(
      ({ at, lead, node }) => svg`<path class="lead" data-node=${node} d=${lead}></path>
        <g class="tank" transform="translate(${at[0]} ${at[1]})">${tank.map((shape) => stroke(shape, 0))}</g>`,
    )}
    <text x=${label.at[0]} text-anchor=${label.anchor} font-size=${LETTER} aria-hidden="true">
      ${label.lines.map((line, i) => svg`<tspan x=${label.at[0]} y=${label.at[1] + BASE * LEADING + i * LEADING}>${spaced(line, i, label)}</tspan>`)}
    </text>
  </g>`;
}
