/**
 * Shuttle valve: a poppet between two inlets that the higher pressure pushes against the lower
 * one's seat, so that oil or emergency gas reaches the outlet and neither gets into the other's
 * lines. Three positions: normal, in the middle (both partly open), emergency. It stays where it
 * is until the other side is above by its shift pressure, then travels at a constant rate and turns back if
 * the difference turns. It may stick at either end and leak across.
 */
import type { DeviceDefinition, GuardFrame } from '../define/index.js';
import {
  bore,
  boreLaw,
  dischargeCoefficient,
  leakage,
  leakIn,
  number,
  transitionReynolds,
} from './shared/parameters.js';
import { rise, riseSlope } from './shared/smooth.js';

const RATE = 0;
const SHIFT = 1;
/** 0 free, 1 stuck at the normal seat, 2 at the emergency one. */
const STUCK = 2;
const STUCK_OVER = 2;

const POSITION = 0;
const NORMAL_PORT = 0;
const EMERGENCY_PORT = 1;

const SHIFTING = 1;
const RETURNING = 3;
/** Longest step while it travels, share of the time from seat to seat. */
const STEP = 0.05;

/** Above zero where the emergency side is above the normal side by the shift pressure (scaled by it). */
const pushed = (d: GuardFrame): number =>
  d.k[STUCK] > 0 ? -1 : (d.pressure(EMERGENCY_PORT) - d.pressure(NORMAL_PORT)) / d.k[SHIFT] - 1;
const pushedBack = (d: GuardFrame): number =>
  d.k[STUCK] > 0 ? -1 : (d.pressure(NORMAL_PORT) - d.pressure(EMERGENCY_PORT)) / d.k[SHIFT] - 1;

const seat = (title: string, position: number) => ({
  title,
  enter: (_d: GuardFrame, states: Float64Array) => {
    states[POSITION] = position;
  },
});
const over = 'the emergency side is above the normal side by the shift pressure';
const back = 'the normal side is above the emergency side by the shift pressure';
const reads = ['normal', 'emergency'];

export const shuttleValve: DeviceDefinition = {
  kind: 'shuttle-valve',
  title: 'Shuttle valve',
  summary: 'Lets the higher of oil and emergency gas through and keeps them apart.',
  source:
    'turbulent orifice: Merritt, Hydraulic Control Systems (from memory); what a shuttle is for: TM 1-1500-204-23-2 p. 4-132',
  role: 'shuttle',
  parameters: {
    bore: bore(
      'bore of either way',
      0.006,
      'that of the line it sits in; common practice, no source',
    ),
    shift: {
      title: 'pressure difference that shifts it',
      quantity: 'gauge-pressure',
      range: [1e4, 2e7],
      default: 2e5,
      why: 'some 30 psi against its detent and seals; common practice, no source',
    },
    shiftTime: {
      title: 'time from seat to seat',
      quantity: 'time',
      range: [1e-3, 1],
      default: 0.02,
      why: 'a few millimetres with the pressure behind it; common practice, no source',
    },
    stuck: {
      type: 'choice',
      title: 'stuck at',
      choices: ['none', 'normal', 'emergency'],
      default: 'none',
      why: 'a free poppet; a seized one stays on its seat',
    },
    leak: leakage(
      'leak across the shut seat',
      1e-9,
      0,
      'tight on its seat; a scratched one lets gas into the normal lines',
    ),
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    normal: { title: 'normal side', volume: 2e-6 },
    emergency: { title: 'emergency side', volume: 2e-6, dry: true },
    outlet: { title: 'outlet', volume: 3e-6 },
  },
  states: {
    position: { title: 'position (0 normal, 1 emergency)', unit: '', scale: 1, initial: 0 },
  },
  signals: {
    emergency: { title: 'on the emergency side', value: (d) => (d.mode === 2 ? 1 : 0) },
  },
  flows: {
    oil: {
      from: 'normal',
      to: 'outlet',
      also: ['position'],
      title: 'from the normal side',
      law: (p, s) => ({
        ...boreLaw(p, s, number(p, 'bore')),
        open: p.stuck === 'emergency' ? 0 : 1,
        leak: leakIn(s, number(p, 'leak')),
      }),
    },
    blowDown: {
      from: 'emergency',
      to: 'outlet',
      also: ['position'],
      title: 'from the emergency side',
      law: (p, s) => ({
        ...boreLaw(p, s, number(p, 'bore')),
        open: p.stuck === 'emergency' ? 1 : 0,
        leak: leakIn(s, number(p, 'leak')),
      }),
    },
  },
  modes: {
    normal: {
      ...seat('normal side', 0),
      guards: [{ to: 'shifting', when: pushed, cause: over, reads }],
    },
    shifting: {
      title: 'in the middle, to emergency',
      active: true,
      longestStep: (d) => STEP / d.k[RATE],
      guards: [
        { to: 'emergency', when: (d) => d.state(POSITION) - 1, cause: 'it is on its seat' },
        { to: 'returning', when: pushedBack, cause: back, reads },
      ],
    },
    emergency: {
      ...seat('emergency side', 1),
      active: true,
      guards: [{ to: 'returning', when: pushedBack, cause: back, reads }],
    },
    returning: {
      title: 'in the middle, to normal',
      active: true,
      longestStep: (d) => STEP / d.k[RATE],
      guards: [
        { to: 'normal', when: (d) => -d.state(POSITION), cause: 'it is on its seat' },
        { to: 'shifting', when: pushed, cause: over, reads },
      ],
    },
  },
  initialMode: (p) => (p.stuck === 'emergency' ? 'emergency' : 'normal'),
  prepare: (p) =>
    Float64Array.of(
      1 / number(p, 'shiftTime'),
      number(p, 'shift'),
      p.stuck === 'none' ? 0 : p.stuck === 'emergency' ? STUCK_OVER : 1,
    ),
  equations: (d) => {
    const x = d.k[STUCK] === STUCK_OVER ? 1 : d.state(POSITION);
    d.opening(0, rise(1 - x));
    d.openingSlope(0, -riseSlope(1 - x));
    d.opening(1, rise(x));
    d.openingSlope(1, riseSlope(x));
    d.rate(POSITION, d.mode === SHIFTING ? d.k[RATE] : d.mode === RETURNING ? -d.k[RATE] : 0);
  },
  symbol: {
    name: 'shuttle',
    size: [6, 4],
    ports: { normal: [-3, 0], emergency: [3, 0], outlet: [0, 2] },
  },
};
