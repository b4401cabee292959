/**
 * Rigid line: friction from laminar to turbulent with the losses of its fittings, read from a
 * table made once per run (medium/line-table); half of its oil belongs to the node at each end.
 * Without the inertia of the oil: for a few metres of line that decides milliseconds only.
 */
import type { DeviceDefinition, Parameters, Surroundings } from '../define/index.js';
import { LINE_INTERVALS, LINE_TABLE_SIZE, writeLineTable } from '../medium/index.js';
import { circle, number } from './shared/parameters.js';

const MIDDLE = 0;
const WIDTH = 1;
const LARGEST = 2;
const FIRST = 3;

const halfVolume = (p: Parameters): number => 0.5 * circle(number(p, 'bore')) * number(p, 'length');

/** Wall swelling of half the line, m3/Pa: thin-walled tube, volume x D / (t E). */
const halfSwelling = (p: Parameters, _s: Surroundings): number =>
  (halfVolume(p) * number(p, 'bore')) / (number(p, 'wall') * number(p, 'modulus'));

export const line: DeviceDefinition = {
  kind: 'line',
  title: 'Line',
  summary: 'A rigid tube with its friction, fittings, oil volume and wall stiffness.',
  source: 'Hagen-Poiseuille and Colebrook-White; swelling of a thin-walled tube',
  role: 'line',
  parameters: {
    bore: {
      title: 'inside diameter',
      quantity: 'length',
      range: [0.002, 0.05],
      default: 0.0064,
      why: 'tube of 5/16 in outside diameter in light systems; common practice, no source',
    },
    length: {
      title: 'length',
      quantity: 'length',
      range: [0.05, 50],
      why: 'no default: measured on the aircraft',
    },
    roughness: {
      title: 'roughness height',
      quantity: 'length',
      range: [0, 1e-4],
      default: 1.5e-6,
      why: 'drawn tube, as in the friction charts of textbooks',
    },
    fittings: {
      title: 'sum of the loss coefficients of bends and fittings',
      quantity: 'ratio',
      range: [0, 200],
      default: 4,
      why: 'some four bends or unions of about 1 each; common practice, no source',
    },
    wall: {
      title: 'wall thickness',
      quantity: 'length',
      range: [2e-4, 0.01],
      default: 9e-4,
      why: '0.035 in, usual for aircraft tube; common practice, no source',
    },
    modulus: {
      title: "Young's modulus of the wall",
      quantity: 'pressure',
      range: [1e8, 3e11],
      default: 7e10,
      why: 'aluminium alloy; steel has 2e11',
    },
  },
  ports: {
    inlet: { title: 'inlet', volume: halfVolume, compliance: halfSwelling },
    outlet: { title: 'outlet', volume: halfVolume, compliance: halfSwelling },
  },
  flows: { through: { from: 'inlet', to: 'outlet', title: 'flow' } },
  prepare: (p, s) => {
    const k = new Float64Array(LINE_TABLE_SIZE);
    writeLineTable(k, 0, {
      bore: number(p, 'bore'),
      length: number(p, 'length'),
      roughness: number(p, 'roughness'),
      fittings: number(p, 'fittings'),
      density: s.density,
      viscosity: s.viscosity,
    });
    return k;
  },
  equations: (d) => {
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
      d.flow(0, Math.sign(dp) * flow, (0.5 * perU) / u, (-0.5 * perU) / u);
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
    const slope = g + (0.5 * u * perPlace * k[MIDDLE]) / (sum * sum * k[WIDTH]);
    d.flow(0, g * dp, slope, -slope);
  },
  symbol: { name: 'line', size: [8, 2], ports: { inlet: [-4, 0], outlet: [4, 0] } },
};
