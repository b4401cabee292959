/**
 * Blow-down valve: the handle opens it at a constant rate, fully or half way, and the bottle goes
 * out. One-shot valves cannot be shut again; this one can, so that a half-hearted pull can be shown.
 * A seat that leaks lets the charge go while it stands, and fills the line behind it.
 */
import type { DeviceDefinition, GuardFrame } from '../define/index.js';
import { liftModes, liftState, moveLift, openWithLift } from './shared/lift.js';
import {
  bore,
  boreLaw,
  dischargeCoefficient,
  leakage,
  leakIn,
  number,
  transitionReynolds,
} from './shared/parameters.js';

const AJAR = 1;
const MOST = 2;
const LINKED = 3;

/** Within this of where it should be it does not turn back. */
const NEAR = 0.02;

/** Lift that the handle asks for. */
const wanted = (d: GuardFrame): number => 0.5 * d.input(0) * d.k[LINKED];

export const blowDownValve: DeviceDefinition = {
  kind: 'blow-down-valve',
  title: 'Blow-down valve',
  summary: 'Lets the gas of the emergency bottle go to the down side when its handle is pulled.',
  source:
    'gas through an opening: ISO 6358; emergency bottles and their handles: AC 43.13-1B chapter 9, NAVEDTRA 14315 chapter 13 (from memory)',
  role: 'blow-down',
  parameters: {
    bore: bore(
      'bore when open',
      0.0015,
      'small enough that doors and legs do not slam; common practice, no source',
    ),
    openingTime: {
      title: 'time the handle takes from shut to open',
      quantity: 'time',
      range: [0.01, 10],
      default: 0.4,
      why: 'a pull by hand; common practice, no source',
    },
    opens: {
      title: 'share of its area that it opens',
      quantity: 'ratio',
      range: [0, 1],
      default: 1,
      why: 'a free valve; a seized one does not open',
    },
    ajar: {
      title: 'share of its area that stays open when shut',
      quantity: 'ratio',
      range: [0, 0.1],
      default: 0,
      why: 'shut home on its seat; a nicked seat leaves a hair of it open',
    },
    linked: {
      type: 'switch',
      title: 'handle linked to the valve',
      default: true,
      why: 'a broken cable leaves the valve shut',
    },
    leak: leakage('leak when shut', 1e-9, 0, 'gas tight: it must hold its charge for months'),
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    inlet: { title: 'inlet', volume: 2e-6, dry: true },
    outlet: { title: 'outlet', volume: 2e-6, dry: true },
  },
  states: { lift: liftState },
  inputs: {
    handle: { title: 'blow-down handle', choices: ['closed', 'half', 'open'], initial: 0 },
  },
  signals: { open: { title: 'handle pulled', value: (d) => (d.input(0) > 0.5 ? 1 : 0) } },
  flows: {
    through: {
      from: 'inlet',
      to: 'outlet',
      also: ['lift'],
      title: 'gas to the down side',
      law: (p, s) => ({
        ...boreLaw(p, s, number(p, 'bore')),
        open: number(p, 'ajar'),
        leak: leakIn(s, number(p, 'leak')),
      }),
    },
  },
  modes: liftModes(
    {
      more: (d) => wanted(d) - d.state(0) - NEAR,
      less: (d) => d.state(0) - wanted(d) - NEAR,
      half: (d) => wanted(d) === 0.5,
    },
    { opens: 'the handle is pulled', closes: 'the handle is pushed back', reads: ['handle'] },
  ),
  prepare: (p) =>
    Float64Array.of(
      1 / number(p, 'openingTime'),
      number(p, 'ajar'),
      number(p, 'opens'),
      p.linked === false ? 0 : 1,
    ),
  equations: (d) => {
    openWithLift(d, 0, AJAR, MOST);
    moveLift(d);
  },
  symbol: { name: 'blow-down-valve', size: [8, 4], ports: { inlet: [-1, -2], outlet: [-1, 2] } },
};
