/**
 * Accumulator: oil against a gas cushion behind a piston or bladder. The cushion follows
 * p V^n = const (medium/cushion); between it and the line lies a port of a given bore. Before oil
 * comes in, the line has to reach the precharge: what the gas gauge shows with no oil in, at the
 * temperature of the run.
 *
 * Gas lost through its seals is a lower `precharge`; gas that escapes during a run is left out.
 */
import type { DeviceDefinition, FlowDefinition } from '../define/index.js';
import {
  bore,
  boreLaw,
  dischargeCoefficient,
  leakage,
  leakIn,
  number,
  transitionReynolds,
} from './shared/parameters.js';
import { without } from './shared/without.js';

const VOLUME = 0;

const CUSHION = 1;

const charge: FlowDefinition = {
  from: 'oil',
  to: 'cushion',
  title: 'flow into the accumulator',
  law: (p, s) => boreLaw(p, s, number(p, 'bore')),
};

export const accumulator: DeviceDefinition = {
  kind: 'accumulator',
  title: 'Accumulator',
  summary:
    'Stores oil under pressure against gas, rests the pump, softens shocks; it does not add force.',
  source: 'polytropic change of state (thermodynamics textbooks); sharp-edged orifice at its port',
  role: 'accumulator',
  parameters: {
    volume: {
      title: 'gas volume with no oil in',
      quantity: 'volume',
      range: [1e-5, 0.05],
      default: 1e-3,
      why: 'about a quart, usual in light systems; common practice, no source',
    },
    precharge: {
      title: 'gas pressure with no oil in',
      quantity: 'gauge-pressure',
      range: [0, 3e7],
      default: 4e6,
      why: 'about 600 psi, one half to two thirds of cut-in pressure; common practice, no source',
    },
    index: {
      title: 'polytropic index',
      quantity: 'ratio',
      range: [1, 1.7],
      default: 1.25,
      why: 'between 1 (minutes, isothermal) and 1.4 (a second, adiabatic) for a gear cycle; common practice, no source',
    },
    bore: bore('bore of its port', 0.005, 'about the bore of the line; common practice, no source'),
    leak: leakage(
      'leak of its joint or bleed valve to the outside',
      1e-9,
      0,
      'tight; stands for any leak of the working system between unloader and selector',
    ),
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    oil: { title: 'oil port', volume: 5e-6 },
    cushion: {
      title: 'oil behind the gas',
      volume: 0,
      optional: true,
      cushion: (p, s) => ({
        precharge: s.ambient + number(p, 'precharge'),
        volume: number(p, 'volume'),
        index: number(p, 'index'),
      }),
    },
    outside: { title: 'outside, for what drips', volume: 0, optional: true },
  },
  flows: {
    charge,
    loss: {
      from: 'oil',
      to: 'outside',
      title: 'leak at its joint or bleed valve',
      law: (p, s) => ({ constant: 0, transition: 1, open: 0, leak: leakIn(s, number(p, 'leak')) }),
    },
  },
  tailor: (p) => without({ flows: { charge } }, number(p, 'leak') === 0),
  readings: {
    stored: { title: 'oil stored', quantity: 'volume', value: (d) => d.content(CUSHION) },
    gas: {
      title: 'gas volume',
      quantity: 'volume',
      value: (d) => d.k[VOLUME] - d.content(CUSHION),
    },
  },
  prepare: (p) => Float64Array.of(number(p, 'volume')),
  symbol: {
    name: 'accumulator',
    size: [4, 8],
    ports: { oil: [0, -4], cushion: [0, 4], outside: [2, -2] },
  },
};
