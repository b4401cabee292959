/**
 * Line in eight equal segments with the inertia of its oil: a valve that shuts fast sends a wave up
 * it (water hammer), which a plain `line` does not know. For every segment
 *
 *   (rho l / A) dq/dt = p - p' - loss(q)
 *
 * and between segments an oil node with the segment's volume and the swelling of its wall, so that
 * a = sqrt(K / rho) / sqrt(1 + K D / (E t)), the rise of a sudden stop is rho a v (Joukowsky) and the
 * wave comes back after 2 L / a (Wylie and Streeter, Fluid Transients; from memory).
 *
 * A ladder of eight carries a sharp front only as well as eight steps can. Behind one the pressure
 * rings about the true one: after a sudden stop by up to half the rise at first and somewhat more
 * in later swings, after one that takes two passages of a segment (L / 4 a) by a fifth. Its mean
 * between fronts is right within some per cent and the period within one: read those, or stop it as
 * slowly as the valve does. It takes steps well below a millisecond: use it for the line whose
 * hammer is asked for, `line` elsewhere. Its inner nodes are ports only to be nodes: leave them.
 */
import type {
  DeviceDefinition,
  FlowDefinition,
  Parameters,
  PortDefinition,
  StateDefinition,
} from '../define/index.js';
import { flowOf, laminarConductance, lineDrop, lineDropSlope } from '../medium/index.js';
import { line } from './line.js';
import { circle, number } from './shared/parameters.js';
import { wallSwelling } from './shared/tube.js';

const SEGMENTS = 8;

/** Loss over flow against w = q / (q + q0): cubic Hermite between knots with exact slopes. */
const INTERVALS = 96;
/** Reynolds numbers of q0, in the transition, where knots lie closest, and of the last knot. */
const MIDDLE_REYNOLDS = 3000;
const LAST_REYNOLDS = 1e6;

const PER_INERTANCE = 0;
const MIDDLE = 1;
const WIDTH = 2;
const LAST = 3;
const FIRST = 4;

/** Flow that goes with the pressure that matters in a usual line (2.5 MPa over rho a / A), m3/s. */
const FLOW_SCALE = 7e-5;

const segmentVolume = (p: Parameters): number =>
  (circle(number(p, 'bore')) * number(p, 'length')) / SEGMENTS;
const segmentSwelling = (p: Parameters): number => wallSwelling(p, segmentVolume(p));

const end = (title: string): PortDefinition => ({
  title,
  volume: (p) => 0.5 * segmentVolume(p),
  compliance: (p) => 0.5 * segmentSwelling(p),
});

/** Ports in order along the line: its ends, named, and the nodes between segments. */
const place = (i: number): string =>
  i === 0 ? 'inlet' : i === SEGMENTS ? 'outlet' : `inner${String(i)}`;

const inner = Object.fromEntries(
  Array.from({ length: SEGMENTS - 1 }, (_, i): [string, PortDefinition] => [
    place(i + 1),
    {
      title: `inner node ${String(i + 1)}, left unconnected`,
      volume: segmentVolume,
      compliance: segmentSwelling,
      optional: true,
    },
  ]),
);

/** The tube itself: a leaking or air-filled stretch is a `line` beside it. */
const { hole: _hole, air: _air, ...tube } = line.parameters;

const along = Array.from({ length: SEGMENTS }, (_, i) => i);
const momentum = (i: number): string => `momentum${String(i + 1)}`;

export const segmentedLine: DeviceDefinition = {
  kind: 'segmented-line',
  title: 'Segmented line',
  summary:
    'A rigid tube whose oil has inertia, in eight segments: for water hammer; use `line` elsewhere.',
  source:
    'water hammer equations, lumped: Wylie and Streeter, Fluid Transients (from memory); friction as in `line`',
  role: 'line',
  parameters: tube,
  ports: { inlet: end('inlet'), ...inner, outlet: end('outlet') },
  states: Object.fromEntries(
    along.map((i): [string, StateDefinition] => [
      momentum(i),
      {
        title: `flow in segment ${String(i + 1)}`,
        unit: 'm^3/s',
        scale: FLOW_SCALE,
        initial: 0,
        also: [place(i), place(i + 1), momentum(i)],
      },
    ]),
  ),
  flows: Object.fromEntries(
    along.map((i): [string, FlowDefinition] => [
      `segment${String(i + 1)}`,
      {
        from: place(i),
        to: place(i + 1),
        also: [momentum(i)],
        inertial: true,
        title: `flow from segment ${String(i + 1)}`,
      },
    ]),
  ),
  prepare: (p, s) => {
    const segment = {
      bore: number(p, 'bore'),
      length: number(p, 'length') / SEGMENTS,
      roughness: number(p, 'roughness'),
      fittings: number(p, 'fittings') / SEGMENTS,
      density: s.density,
      viscosity: s.viscosity,
    };
    const k = new Float64Array(FIRST + 2 * (INTERVALS + 1));
    k[PER_INERTANCE] = circle(segment.bore) / (s.density * segment.length);
    const middle = flowOf(MIDDLE_REYNOLDS, segment);
    const last = flowOf(LAST_REYNOLDS, segment);
    const width = last / (last + middle) / INTERVALS;
    k[MIDDLE] = middle;
    k[WIDTH] = width;
    k[LAST] = last;
    k[FIRST] = 1 / laminarConductance(segment);
    k[FIRST + 1] = 0.5 * segment.fittings * s.density * width * middle;
    k[FIRST + 1] /= circle(segment.bore) ** 2;
    for (let i = 1; i <= INTERVALS; i++) {
      const w = i * width;
      const q = (middle * w) / (1 - w);
      const per = lineDrop(q, segment) / q;
      k[FIRST + 2 * i] = per;
      // d(loss/q)/dw x width, with dq/dw = q0 / (1 - w)^2.
      const slope = (lineDropSlope(q, segment) - per) / q;
      k[FIRST + 2 * i + 1] = (slope * middle * width) / ((1 - w) * (1 - w));
    }
    return k;
  },
  equations: (d) => {
    const k = d.k;
    const give = k[PER_INERTANCE];
    for (let i = 0; i < SEGMENTS; i++) {
      const q = d.state(i);
      const size = Math.abs(q);
      let per: number;
      let rise: number;
      if (size >= k[LAST]) {
        // Rough turbulent by then: on with the slope of the last knot.
        const sum = k[MIDDLE] + k[LAST];
        const at = FIRST + 2 * INTERVALS;
        rise = (k[at + 1] * k[MIDDLE]) / (k[WIDTH] * sum * sum);
        per = k[at] + rise * (size - k[LAST]);
      } else {
        const sum = size + k[MIDDLE];
        const spot = size / (sum * k[WIDTH]);
        const n = Math.min(spot | 0, INTERVALS - 1);
        const z = spot - n;
        const at = FIRST + 2 * n;
        const h = k[at];
        const s0 = k[at + 1];
        const climb = k[at + 2] - h;
        const bend = s0 + k[at + 3] - 2 * climb;
        const sag = climb - s0 - bend;
        per = h + z * (s0 + z * (sag + z * bend));
        rise = ((s0 + z * (2 * sag + 3 * z * bend)) * k[MIDDLE]) / (k[WIDTH] * sum * sum);
      }
      d.flow(i, q, 0, 0);
      d.flowAlso(i, 0, 1);
      d.rate(i, give * (d.pressure(i) - d.pressure(i + 1) - per * q));
      d.rateAlso(i, 0, give);
      d.rateAlso(i, 1, -give);
      d.rateAlso(i, 2, -give * (per + rise * size));
    }
  },
  symbol: {
    name: 'segmented-line',
    size: [8, 2],
    ports: Object.fromEntries(
      Array.from({ length: SEGMENTS + 1 }, (_, i): [string, [number, number]] => [
        place(i),
        [i - 4, i === 0 || i === SEGMENTS ? 0 : 1],
      ]),
    ),
  },
};
