/**
 * Filter with by-pass: a laminar element whose conductance falls as dirt loads it, and beside
 * it a poppet that opens when the drop gets too large. Its indicator shows the drop as a share of
 * the one at which the button pops: above 1 it is out. (The real button stays out; read the
 * largest value of the run.)
 */
import type { DeviceDefinition } from '../define/index.js';
import {
  bore,
  constantOf,
  dischargeCoefficient,
  number,
  transitionOf,
  transitionReynolds,
} from './shared/parameters.js';
import { poppetFlow, POPPET_SIZE, writePoppet } from './shared/poppet.js';

const BYPASS = 0;
const CONDUCTANCE = POPPET_SIZE;
const OPENS = POPPET_SIZE + 1;
const SHUTS = POPPET_SIZE + 2;
const PER_BUTTON = POPPET_SIZE + 3;

/** A fully loaded element still passes this share of its clean flow. */
const LEAST = 1e-3;

export const filter: DeviceDefinition = {
  kind: 'filter',
  title: 'Filter with by-pass',
  summary:
    'Resists in proportion to flow and viscosity; past its by-pass setting oil goes round the element.',
  source: "Darcy's law for the element; poppet: Merritt, Hydraulic Control Systems (from memory)",
  role: 'other',
  parameters: {
    flow: {
      title: 'rated flow',
      quantity: 'flow',
      range: [1e-5, 5e-3],
      default: 3e-4,
      why: 'about 5 US gal/min, above the pump flow of a light system; common practice, no source',
    },
    drop: {
      title: 'clean drop at rated flow',
      quantity: 'gauge-pressure',
      range: [1000, 5e5],
      default: 35_000,
      why: 'about 5 psi for a clean element; common practice, no source',
    },
    viscosity: {
      title: 'viscosity of the rating',
      quantity: 'viscosity',
      range: [2e-6, 1e-4],
      default: 14e-6,
      why: 'red mineral oil at 40 C',
    },
    loading: {
      title: 'share of the element blocked by dirt',
      quantity: 'ratio',
      range: [0, 1],
      default: 0,
      why: 'a clean element',
    },
    bypass: {
      title: 'by-pass setting',
      quantity: 'gauge-pressure',
      range: [2e4, 2e6],
      default: 345_000,
      why: 'about 50 psi is usual; common practice, no source',
    },
    indicator: {
      title: 'drop at which the indicator button pops',
      quantity: 'gauge-pressure',
      range: [1e4, 2e6],
      default: 240_000,
      why: 'about 35 psi, below the by-pass setting so that it warns first; common practice, no source',
    },
    bypassBore: bore(
      'bore of the by-pass',
      0.006,
      'about the bore of the line; common practice, no source',
    ),
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    inlet: { title: 'dirty side', volume: 5e-5 },
    outlet: { title: 'clean side', volume: 5e-5 },
  },
  flows: {
    element: { from: 'inlet', to: 'outlet', title: 'flow through the element' },
    bypass: { from: 'inlet', to: 'outlet', title: 'by-pass flow' },
  },
  readings: {
    drop: {
      title: 'drop across the filter',
      quantity: 'gauge-pressure',
      value: (d) => d.pressure(0) - d.pressure(1),
    },
    indicator: {
      title: 'drop as a share of what pops the button',
      quantity: 'ratio',
      value: (d) => (d.pressure(0) - d.pressure(1)) * d.k[PER_BUTTON],
    },
  },
  signals: {
    bypassing: { title: 'by-pass open', value: (d) => d.mode },
  },
  modes: {
    filtering: {
      title: 'filtering',
      guards: [
        {
          to: 'by-passing',
          when: (d) => d.pressure(0) - d.pressure(1) - d.k[OPENS],
          cause: 'drop across the element above the by-pass setting',
          reads: ['inlet', 'outlet'],
        },
      ],
    },
    'by-passing': {
      title: 'by-passing',
      active: true,
      guards: [
        {
          to: 'filtering',
          when: (d) => d.k[SHUTS] - (d.pressure(0) - d.pressure(1)),
          cause: 'drop across the element back below the by-pass setting',
          reads: ['inlet', 'outlet'],
        },
      ],
    },
  },
  prepare: (p, s) => {
    const k = new Float64Array(POPPET_SIZE + 4);
    const setting = number(p, 'bypass');
    const d = number(p, 'bypassBore');
    writePoppet(k, BYPASS, setting, 1.5 * setting, constantOf(p, s, d), transitionOf(p, s, d), 0);
    const open = LEAST + (1 - LEAST) * (1 - number(p, 'loading'));
    const thinness = number(p, 'viscosity') / s.viscosity;
    k[CONDUCTANCE] = (number(p, 'flow') / number(p, 'drop')) * open * thinness;
    k[OPENS] = 1.05 * setting;
    k[SHUTS] = setting;
    k[PER_BUTTON] = 1 / number(p, 'indicator');
    return k;
  },
  equations: (d) => {
    const dp = d.pressure(0) - d.pressure(1);
    const g = d.k[CONDUCTANCE];
    d.flow(0, g * dp, g, -g);
    poppetFlow(d, 1, BYPASS, 0, 1);
  },
  symbol: { name: 'filter', size: [4, 4], ports: { inlet: [-2, 0], outlet: [2, 0] } },
};
