/**
 * Hose: a line whose wall gives. Friction as in a line; half of its oil, and of what its wall
 * swells by, belongs to the node at each end. A worn one may swell more, be kinked or swollen
 * shut in part, leak, or carry a loose liner that lies down over the bore when oil comes one way
 * and so acts as a check valve. Use a line where the wall is metal.
 */
import type { DeviceDefinition, Parameters } from '../define/index.js';
import { number } from './shared/parameters.js';
import { rise, riseSlope } from './shared/smooth.js';
import {
  air,
  halfVolume,
  hole,
  readTube,
  tailorTube,
  tubeFlows,
  tubePorts,
  tubeSymbolPorts,
  TUBE,
  TUBE_SIZE,
  writeTube,
} from './shared/tube.js';

const FLAP = TUBE_SIZE;
const WAY = TUBE_SIZE + 1;

/** Drop the free way at which a loose liner is fully lifted, Pa. */
const LIFTED = 30_000;

/** What half of the hose swells by, m3/Pa. */
const halfSwelling = (p: Parameters): number =>
  (halfVolume(p) * number(p, 'expansion') * number(p, 'softening')) / number(p, 'expansionAt');

export const hose: DeviceDefinition = {
  kind: 'hose',
  title: 'Hose',
  summary: 'A flexible line: its wall swells with pressure, its liner may age, kink or come loose.',
  source:
    'Hagen-Poiseuille and Colebrook-White; volumetric expansion in proportion to pressure, as hose data give it (from memory)',
  role: 'line',
  parameters: {
    bore: {
      title: 'inside diameter',
      quantity: 'length',
      range: [0.002, 0.05],
      default: 0.0064,
      why: 'quarter-inch hose, as the tube it joins; common practice, no source',
    },
    length: {
      title: 'length',
      quantity: 'length',
      range: [0.05, 20],
      why: 'no default: measured on the aircraft',
    },
    roughness: {
      title: 'roughness height',
      quantity: 'length',
      range: [0, 1e-4],
      default: 1.5e-6,
      why: 'smooth liner, as drawn tube in the friction charts of textbooks',
    },
    fittings: {
      title: 'sum of the loss coefficients of end fittings and bends',
      quantity: 'ratio',
      range: [0, 200],
      default: 2,
      why: 'two end fittings of about 1 each; common practice, no source',
    },
    expansion: {
      title: 'share by which its volume grows at the pressure below, when new',
      quantity: 'ratio',
      range: [0, 0.3],
      default: 0.02,
      why: 'braided hose is some ten times softer than its oil; from memory',
    },
    expansionAt: {
      title: 'pressure of that expansion',
      quantity: 'gauge-pressure',
      range: [1e5, 4e7],
      default: 6.9e6,
      why: '1000 psi, at which hose data usually give it; from memory',
    },
    softening: {
      title: 'expansion as a multiple of what it was when new',
      quantity: 'ratio',
      range: [1, 50],
      default: 1,
      why: 'a new hose; an old one swells several times as much; common practice, no source',
    },
    narrowing: {
      title: 'share of the diameter lost to a kink or a swollen liner',
      quantity: 'ratio',
      range: [0, 0.9],
      default: 0,
      why: 'a hose of the right bore, laid without a kink',
    },
    flap: {
      title: 'share of the flow that a loose liner holds back one way',
      quantity: 'ratio',
      range: [0, 1],
      default: 0,
      why: 'a sound liner',
    },
    blockedWay: {
      type: 'choice',
      title: 'way that a loose liner blocks: in is from inlet to outlet, out is back',
      choices: ['in', 'out'],
      default: 'out',
      why: 'matters only with a loose liner; it lifts where oil last pushed it',
    },
    hole,
    air,
  },
  ports: tubePorts(halfSwelling),
  flows: tubeFlows,
  tailor: tailorTube,
  prepare: (p, s) => {
    const k = new Float64Array(TUBE_SIZE + 2);
    writeTube(k, p, s, number(p, 'bore') * (1 - number(p, 'narrowing')));
    k[FLAP] = number(p, 'flap');
    k[WAY] = p.blockedWay === 'in' ? 1 : -1;
    return k;
  },
  equations: (d) => {
    readTube(d);
    const k = d.k;
    const way = k[WAY];
    // Down at any drop the blocked way, lifting (C1) over the first of the free way: never falling.
    const x = 1 + (way * (d.pressure(0) - d.pressure(1))) / LIFTED;
    const share = 1 - k[FLAP] * rise(x);
    const slope = share * TUBE[1] - (k[FLAP] * riseSlope(x) * way * TUBE[0]) / LIFTED;
    d.flow(0, share * TUBE[0], slope, -slope);
  },
  symbol: {
    name: 'hose',
    size: [8, 2],
    ports: tubeSymbolPorts,
  },
};
