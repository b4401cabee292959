/**
 * Engine-driven pump, fixed displacement: delivers displacement x speed, less an internal slip
 * from outlet back to inlet in proportion to the pressure across it. So its volumetric
 * efficiency is 1 - slip dp / (D w): it falls with pressure, with wear and with hot oil.
 */
import type { DeviceDefinition } from '../define/index.js';
import { number } from './shared/parameters.js';
import { fed, fedSlope, INLET_VOLUME } from './shared/suction.js';

const DISPLACEMENT = 0;
const SLIP = 1;

const INLET = 0;
const OUTLET = 1;

export const enginePump: DeviceDefinition = {
  kind: 'engine-pump',
  title: 'Engine-driven pump',
  summary: 'Fixed displacement; needs a relief valve or unloader after it.',
  source: 'displacement and laminar slip: Merritt, Hydraulic Control Systems (from memory)',
  role: 'supply',
  parameters: {
    displacement: {
      title: 'displacement',
      quantity: 'displacement',
      range: [1e-8, 1e-4],
      why: "no default: the pump's rating; 1 cm^3 a turn is 1.59e-7 m^3/rad",
    },
    speed: {
      title: 'speed at the start',
      quantity: 'angular-speed',
      range: [0, 1000],
      default: 0,
      why: 'engine at rest, as in a retraction test on jacks; the card may change it',
    },
    efficiency: {
      title: 'volumetric efficiency at its rating',
      quantity: 'ratio',
      range: [0.05, 1],
      default: 0.93,
      why: 'gear pumps in good order: 0.9 to 0.95; common practice, no source',
    },
    ratedSpeed: {
      title: 'speed of the rating',
      quantity: 'angular-speed',
      range: [10, 1000],
      default: 251,
      why: '2400 rev/min, an engine accessory drive; common practice, no source',
    },
    ratedPressure: {
      title: 'pressure of the rating',
      quantity: 'gauge-pressure',
      range: [5e5, 4e7],
      default: 6.9e6,
      why: '1000 psi, the usual working pressure of light systems; common practice, no source',
    },
    viscosity: {
      title: 'viscosity of the rating',
      quantity: 'viscosity',
      range: [2e-6, 1e-4],
      default: 14e-6,
      why: 'red mineral oil at 40 C',
    },
  },
  ports: {
    inlet: { title: 'suction', volume: INLET_VOLUME },
    outlet: { title: 'pressure', volume: 1e-5 },
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
  },
  prepare: (p, s) => {
    const displacement = number(p, 'displacement');
    const lost = (1 - number(p, 'efficiency')) * displacement * number(p, 'ratedSpeed');
    return Float64Array.of(
      displacement,
      ((lost / number(p, 'ratedPressure')) * number(p, 'viscosity')) / s.viscosity,
    );
  },
  equations: (d) => {
    const displaced = d.k[DISPLACEMENT] * d.input(0);
    const slip = d.k[SLIP];
    d.flow(0, displaced * fed(d, INLET), displaced * fedSlope(d, INLET), 0);
    d.flow(1, slip * (d.pressure(OUTLET) - d.pressure(INLET)), slip, -slip);
  },
  symbol: { name: 'pump', size: [6, 6], ports: { inlet: [0, -3], outlet: [0, 3] } },
};
