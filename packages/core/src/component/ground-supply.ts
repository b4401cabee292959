/**
 * Ground supply (test stand): constant flow up to its pressure limit, where a compensator takes
 * the flow back smoothly to none; no sudden hand-over. Draws from the aircraft's own tank.
 */
import type { DeviceDefinition } from '../define/index.js';
import { number } from './shared/parameters.js';
import { rise, riseSlope } from './shared/smooth.js';
import { fed, fedSlope, INLET_VOLUME } from './shared/suction.js';

const FLOW = 0;
const STARTS = 1;
const PER_BAND = 2;

const INLET = 0;
const OUTLET = 1;

export const groundSupply: DeviceDefinition = {
  kind: 'ground-supply',
  title: 'Ground supply',
  summary:
    'A test stand with settings for flow and pressure; use an engine pump for the aircraft alone.',
  source: 'ideal flow source with pressure compensator; common practice, no source',
  role: 'supply',
  parameters: {
    flow: {
      title: 'flow setting',
      quantity: 'flow',
      range: [1e-6, 5e-3],
      why: "no default: set to the aircraft's approved data, often the flow of its own pump",
    },
    pressure: {
      title: 'pressure limit',
      quantity: 'gauge-pressure',
      range: [2e5, 4e7],
      why: "no default: set to the aircraft's approved data",
    },
    band: {
      title: 'share of the limit over which the flow falls to none',
      quantity: 'ratio',
      range: [0.01, 0.5],
      default: 0.06,
      why: 'compensators hold within about 5 %; common practice, no source',
    },
    on: {
      type: 'switch',
      title: 'running at the start',
      default: false,
      why: 'the operator starts it on the card',
    },
  },
  ports: {
    inlet: { title: 'suction from the tank', volume: INLET_VOLUME },
    outlet: { title: 'pressure', volume: 2e-5 },
  },
  inputs: {
    on: {
      title: 'stand',
      choices: ['off', 'on'],
      initial: (p) => (p.on === true ? 1 : 0),
    },
  },
  flows: { delivery: { from: 'inlet', to: 'outlet', source: true, title: 'supply flow' } },
  prepare: (p, s) => {
    const limit = number(p, 'pressure');
    const band = number(p, 'band');
    return Float64Array.of(number(p, 'flow'), s.ambient + limit * (1 - band), 1 / (limit * band));
  },
  equations: (d) => {
    const k = d.k;
    if (d.input(0) === 0) {
      d.flow(0, 0, 0, 0);
      return;
    }
    const x = (d.pressure(OUTLET) - k[STARTS]) * k[PER_BAND];
    const left = 1 - rise(x);
    const share = fed(d, INLET);
    d.flow(
      0,
      k[FLOW] * left * share,
      k[FLOW] * left * fedSlope(d, INLET),
      -k[FLOW] * riseSlope(x) * k[PER_BAND] * share,
    );
  },
  symbol: { name: 'supply', size: [6, 6], ports: { inlet: [0, -3], outlet: [0, 3] } },
};
