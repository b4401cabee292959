/**
 * Pressure-compensated pump: the stroke of its pistons, and with it the flow, is taken back
 * smoothly from all to none over a band that ends at its setting, so that it needs no unloader
 * and its relief valve is a safety device only. What slips past its pistons goes to the case
 * and from there through the drain to the reservoir; it grows with pressure, wear (a lower
 * `efficiency`) and hot oil. The compensator settles within some hundredths of a second and is
 * taken as quick.
 */
import type { DeviceDefinition } from '../define/index.js';
import { number } from './shared/parameters.js';
import {
  AIR,
  BLOCKED,
  DISPLACEMENT,
  jointWeep,
  PUMP_SIZE,
  pumpParameters,
  SLIP,
  writePump,
} from './shared/pump.js';
import { rise, riseSlope } from './shared/smooth.js';
import {
  fed,
  fedSlope,
  INLET_VOLUME,
  passes,
  passesSlope,
  solid,
  solidSlope,
} from './shared/suction.js';

const STARTS = PUMP_SIZE;
const PER_BAND = PUMP_SIZE + 1;
const LEAST = PUMP_SIZE + 2;
const MOST = PUMP_SIZE + 3;

const INLET = 0;
const OUTLET = 1;
const DRAIN = 2;

export const compensatedPump: DeviceDefinition = {
  kind: 'compensated-pump',
  title: 'Pressure-compensated pump',
  summary:
    'Variable flow: gives what is asked for up to its pressure setting; needs a case drain and no unloader.',
  source:
    'displacement and laminar slip: Merritt, Hydraulic Control Systems (from memory); compensator band common practice, no source',
  role: 'supply',
  parameters: {
    ...pumpParameters,
    setting: {
      title: 'compensator setting: pressure of no flow',
      quantity: 'gauge-pressure',
      range: [5e5, 4e7],
      why: 'no default: it belongs to the system it feeds',
    },
    band: {
      title: 'share of the setting over which the flow falls to none',
      quantity: 'ratio',
      range: [0.01, 0.5],
      default: 0.06,
      why: 'compensators hold within about 5 %; common practice, no source',
    },
    leastStroke: {
      title: 'least share of the stroke the compensator reaches',
      quantity: 'ratio',
      range: [0, 0.9],
      default: 0,
      why: 'none: a compensator that hangs leaves some, and the relief valve has to take it',
    },
    mostStroke: {
      title: 'largest share of the stroke the compensator reaches',
      quantity: 'ratio',
      range: [0.05, 1],
      default: 1,
      why: 'all of it; a hanger that jams or a wrong stop leaves less',
    },
  },
  ports: {
    inlet: { title: 'suction', volume: INLET_VOLUME },
    outlet: { title: 'pressure', volume: 1e-5 },
    drain: { title: 'case drain', volume: 1e-5 },
    outside: { title: 'outside, for what drips', volume: 0, optional: true },
  },
  inputs: {
    speed: {
      title: 'pump speed',
      quantity: 'angular-speed',
      initial: (p) => number(p, 'speed'),
    },
  },
  flows: {
    delivery: { from: 'inlet', to: 'outlet', source: true, title: 'displaced flow' },
    slip: { from: 'outlet', to: 'drain', title: 'case leak' },
    weep: jointWeep,
  },
  readings: {
    stroke: {
      title: 'share of full stroke',
      quantity: 'ratio',
      value: (d) => {
        const { k } = d;
        const x = (d.pressure(OUTLET) - k[STARTS]) * k[PER_BAND];
        return k[MOST] - (k[MOST] - k[LEAST]) * rise(x);
      },
    },
  },
  check: (p) =>
    number(p, 'mostStroke') >= number(p, 'leastStroke')
      ? []
      : [{ parameter: 'mostStroke', message: 'must be at least the least stroke' }],
  prepare: (p, s) => {
    const k = new Float64Array(PUMP_SIZE + 4);
    writePump(k, p, s);
    const setting = number(p, 'setting');
    const band = number(p, 'band');
    k[STARTS] = s.ambient + setting * (1 - band);
    k[PER_BAND] = 1 / (setting * band);
    k[LEAST] = number(p, 'leastStroke');
    k[MOST] = number(p, 'mostStroke');
    return k;
  },
  equations: (d) => {
    const k = d.k;
    const x = (d.pressure(OUTLET) - k[STARTS]) * k[PER_BAND];
    const range = k[MOST] - k[LEAST];
    const stroke = k[MOST] - range * rise(x);
    const displaced = k[DISPLACEMENT] * d.input(0);
    const full = fed(d, INLET);
    const oil = solid(d, INLET, AIR);
    const wanted = displaced * stroke;
    const passed = passes(d, INLET, BLOCKED, wanted);
    // What a change of the stroke still adds: the slope of wanted x passes against wanted.
    const adds = passed ** 5;
    d.flow(
      0,
      wanted * full * oil * passed,
      wanted * (fedSlope(d, INLET) * oil + full * solidSlope(d, INLET, AIR)) * passed +
        wanted * full * oil * passesSlope(d, INLET, BLOCKED, wanted),
      -displaced * full * oil * range * riseSlope(x) * k[PER_BAND] * adds,
    );
    const slip = k[SLIP];
    d.flow(1, slip * (d.pressure(OUTLET) - d.pressure(DRAIN)), slip, -slip);
  },
  symbol: {
    name: 'compensated-pump',
    size: [6, 6],
    ports: { inlet: [0, -3], outlet: [0, 3], drain: [3, -2], outside: [3, 2] },
  },
};
