/**
 * Dump valve: opens the up side to the reservoir, or overboard (join its return to `outside`), so
 * that oil shut in there cannot hold the legs against the gas. Its lever opens it, or gas at its
 * pilot port; when the pilot's pressure has fallen to half its setting the spring shuts it again.
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
const PILOT = 4;
const AMBIENT = 5;

const PILOT_PORT = 2;
const CLOSED = 0;
/** Share of the pilot setting at which the spring shuts it again. */
const RESET = 0.5;

const pulled = (d: GuardFrame): boolean => d.input(0) * d.k[LINKED] > 0.5;
/** Pressure at the pilot port, share of its setting. */
const pilot = (d: GuardFrame): number => (d.pressure(PILOT_PORT) - d.k[AMBIENT]) / d.k[PILOT];

export const dumpValve: DeviceDefinition = {
  kind: 'dump-valve',
  title: 'Dump valve',
  summary: 'Opens the up side to the reservoir or overboard for an emergency extension.',
  source:
    'turbulent orifice: Merritt, Hydraulic Control Systems (from memory); dump valves that keep a fluid lock from forming: NAVEDTRA 14315 fig. 13-4, NAVEDTRA 14018 (from memory)',
  role: 'dump',
  parameters: {
    bore: bore(
      'bore when open',
      0.005,
      'about the bore of the up line; common practice, no source',
    ),
    openingTime: {
      title: 'time it takes from shut to open',
      quantity: 'time',
      range: [0.01, 10],
      default: 0.3,
      why: 'a pull by hand, or gas behind a small piston; common practice, no source',
    },
    pilot: {
      title: 'pressure at its pilot port that opens it',
      quantity: 'gauge-pressure',
      range: [5e4, 2e7],
      default: 1.4e6,
      why: 'some 200 psi, well below the charge; common practice, no source',
    },
    opens: {
      title: 'share of its area that it opens',
      quantity: 'ratio',
      range: [0, 1],
      default: 1,
      why: 'a free valve; a seized or misrigged one opens less',
    },
    ajar: {
      title: 'share of its area that stays open when shut',
      quantity: 'ratio',
      range: [0, 1],
      default: 0,
      why: 'reset and seated',
    },
    linked: {
      type: 'switch',
      title: 'lever linked to the valve',
      default: true,
      why: 'a broken cable leaves the valve shut',
    },
    leak: leakage(
      'leak when shut',
      1e-9,
      1e-15,
      'a sound seat passes drops an hour; common practice, no source',
    ),
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    line: { title: 'up side', volume: 3e-6 },
    return: { title: 'return or overboard', volume: 3e-6 },
    pilot: { title: 'pilot', volume: 1e-6, dry: true, optional: true },
  },
  states: { lift: liftState },
  inputs: { lever: { title: 'dump lever', choices: ['closed', 'open'], initial: 0 } },
  signals: { open: { title: 'open', value: (d) => (d.mode === CLOSED ? 0 : 1) } },
  flows: {
    through: {
      from: 'line',
      to: 'return',
      also: ['lift'],
      title: 'up side to return',
      law: (p, s) => ({
        ...boreLaw(p, s, number(p, 'bore')),
        open: number(p, 'ajar'),
        leak: leakIn(s, number(p, 'leak')),
      }),
    },
  },
  modes: liftModes(
    {
      more: (d) => (pulled(d) ? 1 : pilot(d) - 1),
      less: (d) => (pulled(d) ? -1 : RESET - pilot(d)),
    },
    {
      opens: 'its lever or the gas at its pilot opens it',
      closes: 'nothing holds it open',
      reads: ['lever', 'pilot'],
    },
  ),
  prepare: (p, s) =>
    Float64Array.of(
      1 / number(p, 'openingTime'),
      number(p, 'ajar'),
      number(p, 'opens'),
      p.linked === false ? 0 : 1,
      number(p, 'pilot'),
      s.ambient,
    ),
  equations: (d) => {
    openWithLift(d, 0, AJAR, MOST);
    moveLift(d);
  },
  symbol: {
    name: 'dump-valve',
    size: [8, 4],
    ports: { line: [-1, -2], return: [-1, 2], pilot: [4, 0] },
  },
};
