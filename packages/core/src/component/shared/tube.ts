/**
 * What lines and hoses share: friction read from the table that medium/line-table makes, a pocket
 * of air, and a hole in the wall through which oil leaves while its pressure is above ambient.
 */
import type {
  DeviceDefinition,
  DrawingSymbol,
  FlowDefinition,
  Frame,
  NumberParameter,
  Parameters,
  PortDefinition,
  Surroundings,
} from '../../define/index.js';
import {
  LINE_INTERVALS,
  LINE_TABLE_SIZE,
  orificeConstant,
  transitionDrop,
  writeLineTable,
} from '../../medium/index.js';
import { circle, number } from './parameters.js';
import { without } from './without.js';

const MIDDLE = 0;
const WIDTH = 1;
const LARGEST = 2;
const FIRST = 3;

/** Numbers a tube needs in `k`, from the first. */
export const TUBE_SIZE = LINE_TABLE_SIZE;

/** Flow from the first port to the second, m3/s, and its slope, m3/(s Pa), as {@link readTube} left them. */
export const TUBE = new Float64Array(2);

/** Writes the table of a tube of this bore, m; length, roughness and fittings are its parameters. */
export function writeTube(k: Float64Array, p: Parameters, s: Surroundings, bore: number): void {
  writeLineTable(k, 0, {
    bore,
    length: number(p, 'length'),
    roughness: number(p, 'roughness'),
    fittings: number(p, 'fittings'),
    density: s.density,
    viscosity: s.viscosity,
  });
}

/** Flow and slope at the present drop, into {@link TUBE} (a returned fraction would go to the heap). */
export function readTube(d: Frame): void {
  const k = d.k;
  const dp = d.pressure(0) - d.pressure(1);
  const u = Math.sqrt(Math.abs(dp));
  if (u >= k[LARGEST]) {
    // Linear in u, with the value and slope of the last knot.
    const end = k[LARGEST];
    const far = k[MIDDLE] + end;
    const last = k[FIRST + 2 * LINE_INTERVALS];
    const fall = (k[FIRST + 2 * LINE_INTERVALS + 1] * k[MIDDLE]) / (far * far * k[WIDTH]);
    const perU = end * (2 * last + end * fall);
    const flow = last * end * end + perU * (u - end);
    TUBE[0] = Math.sign(dp) * flow;
    TUBE[1] = (0.5 * perU) / u;
    return;
  }
  const sum = u + k[MIDDLE];
  const place = u / (sum * k[WIDTH]);
  // Rounding may put a drop just below the largest onto the last knot.
  const i = Math.min(place | 0, LINE_INTERVALS - 1);
  const z = place - i;
  const at = FIRST + 2 * i;
  const g0 = k[at];
  const s0 = k[at + 1];
  const rise = k[at + 2] - g0;
  const bend = s0 + k[at + 3] - 2 * rise;
  const sag = rise - s0 - bend;
  const g = g0 + z * (s0 + z * (sag + z * bend));
  const perPlace = s0 + z * (2 * sag + 3 * z * bend);
  // dq/d(dp) = g + dp g'(u) du/d(dp) = g + u g'(u) / 2.
  TUBE[0] = g * dp;
  TUBE[1] = g + (0.5 * u * perPlace * k[MIDDLE]) / (sum * sum * k[WIDTH]);
}

/** Discharge coefficient and transition Reynolds number of a hole, as the defaults of shared/parameters. */
const HOLE_DISCHARGE = 0.611;
const HOLE_REYNOLDS = 100;

/** Above ambient by this much the hole passes fully, Pa; below ambient it draws nothing in. */
const HOLE_FULL = 20_000;

export const hole: NumberParameter = {
  title: 'diameter of a hole in the wall',
  quantity: 'length',
  range: [0, 0.005],
  default: 0,
  why: 'a sound tube has none; a pinhole or a cracked flare passes as a hole of some tenths of a millimetre',
};

export const air: NumberParameter = {
  title: 'air trapped at the outlet end, at ambient pressure',
  quantity: 'volume',
  range: [0, 2e-3],
  default: 0,
  why: 'a bled line has none',
};

/** Oil of half a tube, m3. */
export const halfVolume = (p: Parameters): number =>
  0.5 * circle(number(p, 'bore')) * number(p, 'length');

/** Swelling of a metal wall around a volume of oil, m3/Pa: thin-walled tube, volume x D / (t E). */
export const wallSwelling = (p: Parameters, volume: number): number =>
  (volume * number(p, 'bore')) / (number(p, 'wall') * number(p, 'modulus'));

/** Ports of a tube; `swelling` of half its wall, m3/Pa. */
export const tubePorts = (
  swelling: (p: Parameters) => number,
): Readonly<Record<string, PortDefinition>> => ({
  inlet: { title: 'inlet', volume: halfVolume, compliance: swelling },
  outlet: {
    title: 'outlet',
    volume: halfVolume,
    compliance: swelling,
    pocket: (p) => number(p, 'air'),
  },
  outside: { title: 'outside, for what is lost', volume: 0, optional: true },
});

/** What the hole lets out, from the outlet end. */
const pinhole: FlowDefinition = {
  from: 'outlet',
  to: 'outside',
  title: 'oil lost through the wall',
  law: (p, s) => {
    const diameter = number(p, 'hole');
    const transition = Math.max(
      HOLE_FULL,
      transitionDrop(
        HOLE_DISCHARGE,
        Math.max(diameter, 1e-5),
        s.density,
        s.viscosity,
        HOLE_REYNOLDS,
      ),
    );
    return {
      constant: 0,
      transition,
      open: 0,
      leak: 0,
      check: {
        constant: orificeConstant(HOLE_DISCHARGE, circle(diameter), s.density),
        transition,
        crack: 0,
        full: HOLE_FULL,
        sense: 1,
      },
    };
  },
};

const through: FlowDefinition = { from: 'inlet', to: 'outlet', title: 'flow' };

/** The way through, and the hole, which a sound tube does not have. */
export const tubeFlows: Readonly<Record<string, FlowDefinition>> = { through, pinhole };
export const tailorTube: NonNullable<DeviceDefinition['tailor']> = (p) =>
  without({ flows: { through } }, number(p, 'hole') === 0);

/** Where its ports lie on a symbol eight modules long. */
export const tubeSymbolPorts: DrawingSymbol['ports'] = {
  inlet: [-4, 0],
  outlet: [4, 0],
  outside: [0, -1],
};
