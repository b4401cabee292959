/**
 * Engine-driven pump, fixed displacement: delivers displacement x speed, less an internal slip
 * from outlet back to inlet in proportion to the pressure across it. So its volumetric
 * efficiency is 1 - slip dp / (D w): it falls with pressure, with wear (a lower `efficiency`)
 * and with hot oil. A sheared shaft, a joint that leaks under pressure and a suction side that
 * draws air or is blocked are parameters, none by default.
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
import {
  fed,
  fedSlope,
  INLET_VOLUME,
  passes,
  passesSlope,
  solid,
  solidSlope,
} from './shared/suction.js';

const INLET = 0;
const OUTLET = 1;

export const enginePump: DeviceDefinition = {
  kind: 'engine-pump',
  title: 'Engine-driven pump',
  summary: 'Fixed displacement; needs a relief valve or unloader after it.',
  source: 'displacement and laminar slip: Merritt, Hydraulic Control Systems (from memory)',
  role: 'supply',
  parameters: pumpParameters,
  ports: {
    inlet: { title: 'suction', volume: INLET_VOLUME },
    outlet: { title: 'pressure', volume: 1e-5 },
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
    slip: { from: 'outlet', to: 'inlet', title: 'internal slip' },
    weep: jointWeep,
  },
  prepare: (p, s) => {
    const k = new Float64Array(PUMP_SIZE);
    writePump(k, p, s);
    return k;
  },
  equations: (d) => {
    const displaced = d.k[DISPLACEMENT] * d.input(0);
    const slip = d.k[SLIP];
    const full = fed(d, INLET);
    const oil = solid(d, INLET, AIR);
    const passed = passes(d, INLET, BLOCKED, displaced);
    const swept = displaced * full * oil;
    d.flow(
      0,
      swept * passed,
      (displaced * fedSlope(d, INLET) * oil + displaced * full * solidSlope(d, INLET, AIR)) *
        passed +
        swept * passesSlope(d, INLET, BLOCKED, displaced),
      0,
    );
    d.flow(1, slip * (d.pressure(OUTLET) - d.pressure(INLET)), slip, -slip);
  },
  symbol: {
    name: 'pump',
    size: [6, 6],
    ports: { inlet: [0, -3], outlet: [0, 3], outside: [3, 0] },
  },
};
