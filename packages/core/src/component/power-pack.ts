/**
 * Electric power pack: a reversible motor turns a gear pump that presses into the up or the down
 * line and draws from the other, with its valves in one housing (shared/pack-valves). The motor
 * (shared/motor) has speed and inertia of its own: a weak voltage slows it, a heavy load stalls it.
 *
 *     J dw/dt = motor(w) - D (p_up - p_down) - friction,   q = D w
 *
 * In UP a pressure switch on the up line stops the motor at cut-out, the lock valve traps what is
 * in the line and so holds the gear up, and the switch starts the motor again at cut-in. In DOWN
 * position switches elsewhere say `off`; until then the down relief takes the flow, unless
 * `switch-sides` is `both`. The pack answers to `command` as a lever does (up, off, down), and to
 * its two relays `raise` and `lower`, which a controller can drive by wire: what they ask for adds
 * up, and both relays together are none. Its role is supply.
 * Not in it: a thermal relief (put one on the up line) and the manual lowering valve.
 */
import type { DeviceDefinition, GuardFrame, ModeDefinition } from '../define/index.js';
import { motorCurrent, motorParameters, motorTorque, writeMotor } from './shared/motor.js';
import {
  DISPLACEMENT,
  DOWN,
  packPump,
  packShaft,
  SPEED,
  SPOOL,
  SPOOL_AT,
  way,
} from './shared/pack-pump.js';
import { spoolOpenings, writeSpool } from './shared/pack-spool.js';
import { packFlows, packValveParameters } from './shared/pack-valves.js';
import { leakage, leakIn, mustExceed, number } from './shared/parameters.js';
import { INLET_VOLUME } from './shared/suction.js';

const CUT_OUT = DISPLACEMENT + 1;
const CUT_IN = CUT_OUT + 1;
const BOTH = CUT_IN + 1;

const UP = 0;
const RESERVOIR = 2;
const LOCK = 6;

const UP_HELD = 2;
const DOWN_HELD = 4;

/** A mode in which one way is commanded: the motor runs, or its pressure switch holds it off. */
function commanded(
  title: string,
  left: (d: GuardFrame) => number,
  to: string,
  past: (d: GuardFrame) => number,
  port: string,
  active: boolean,
): ModeDefinition {
  return {
    title,
    active,
    guards: [
      { to: 'off', when: left, cause: 'the command is taken back', reads: COMMANDS },
      {
        to,
        when: past,
        cause: active ? 'pressure above cut-out' : 'pressure below cut-in',
        reads: [port, 'reservoir'],
      },
    ],
  };
}

const gauge = (d: GuardFrame, port: number): number => d.pressure(port) - d.pressure(RESERVOIR);
/** What lever and relays ask for: above a half up, below minus a half down. */
const asked = (d: GuardFrame): number => 1 - d.input(0) + d.input(1) - d.input(2);
const notUp = (d: GuardFrame): number => 0.5 - asked(d);
const notDown = (d: GuardFrame): number => asked(d) + 0.5;
const COMMANDS = ['command', 'raise', 'lower'];

export const powerPack: DeviceDefinition = {
  kind: 'power-pack',
  title: 'Electric power pack',
  summary:
    'Reversible motor and pump with its own valves: a whole supply and selector for light aircraft.',
  source:
    'displacement and laminar slip: Merritt, Hydraulic Control Systems (from memory); speed-torque line of a permanent-magnet motor (from memory)',
  role: 'supply',
  parameters: {
    displacement: {
      title: 'displacement',
      quantity: 'displacement',
      range: [5e-9, 2e-6],
      why: "no default: the pump's rating; 1 cm^3 a turn is 1.59e-7 m^3/rad",
    },
    slip: leakage(
      'internal slip of the pump',
      1e-9,
      1.5e-13,
      'some 5 % of the flow of a small gear pump at 1000 psi; wear raises it; common practice, no source',
    ),
    ...motorParameters,
    cutOut: {
      title: 'pressure at which the switch stops the motor',
      quantity: 'gauge-pressure',
      range: [2e5, 4e7],
      why: 'no default: above what the heaviest point of UP needs',
    },
    cutIn: {
      title: 'pressure at which the switch starts it again',
      quantity: 'gauge-pressure',
      range: [1e5, 3.9e7],
      why: 'no default: some 20 % below cut-out; common practice, no source',
    },
    switchSides: {
      type: 'choice',
      title: 'sides with a pressure switch',
      choices: ['up', 'both'],
      default: 'up',
      why: 'position switches usually stop it in DOWN; with both, the down relief has to be set above cut-out; common practice, no source',
    },
    ...packValveParameters,
  },
  ports: {
    up: { title: 'up line', volume: 5e-6 },
    down: { title: 'down line', volume: INLET_VOLUME },
    reservoir: { title: 'reservoir', volume: 0 },
    pumpUp: { title: 'between pump and lock valve', volume: INLET_VOLUME, optional: true },
  },
  states: {
    speed: {
      title: 'pump speed, up positive',
      unit: 'rad/s',
      scale: 50,
      initial: 0,
      also: ['speed', 'pumpUp', 'down'],
    },
    spool: {
      title: 'shuttle spool',
      unit: '',
      scale: 0.2,
      initial: 0,
      also: ['spool', 'pumpUp', 'down'],
    },
  },
  inputs: {
    command: { title: 'command', choices: ['up', 'off', 'down'], initial: 1 },
    raise: { title: 'relay for up', choices: ['off', 'on'], initial: 0 },
    lower: { title: 'relay for down', choices: ['off', 'on'], initial: 0 },
  },
  flows: {
    delivery: { from: 'down', to: 'pumpUp', also: ['speed'], source: true, title: 'pump flow' },
    slip: {
      from: 'pumpUp',
      to: 'down',
      title: 'internal slip',
      law: (p, s) => ({ constant: 0, transition: 1, open: 0, leak: leakIn(s, number(p, 'slip')) }),
    },
    ...packFlows,
  },
  readings: {
    current: {
      title: 'motor current',
      quantity: 'current',
      value: (d) => motorCurrent(d, SPEED, way(d)),
    },
    torque: {
      title: 'motor torque',
      quantity: 'moment',
      value: (d) => motorTorque(d, SPEED, way(d)),
    },
  },
  signals: {
    running: { title: 'motor switched on', value: (d) => (way(d) === 0 ? 0 : 1) },
    held: {
      title: 'stopped by its pressure switch',
      value: (d) => (d.mode === UP_HELD || d.mode === DOWN_HELD ? 1 : 0),
    },
  },
  modes: {
    off: {
      title: 'off',
      guards: [
        { to: 'up', when: (d) => -notUp(d), cause: 'UP is commanded', reads: COMMANDS },
        { to: 'down', when: (d) => -notDown(d), cause: 'DOWN is commanded', reads: COMMANDS },
      ],
    },
    up: commanded('pumping up', notUp, 'up held', (d) => gauge(d, UP) - d.k[CUT_OUT], 'up', true),
    'up held': commanded(
      'up, motor stopped by its switch',
      notUp,
      'up',
      (d) => d.k[CUT_IN] - gauge(d, UP),
      'up',
      false,
    ),
    down: commanded(
      'pumping down',
      notDown,
      'down held',
      (d) => (d.k[BOTH] === 0 ? -1 : gauge(d, DOWN) - d.k[CUT_OUT]),
      'down',
      true,
    ),
    'down held': commanded(
      'down, motor stopped by its switch',
      notDown,
      'down',
      (d) => d.k[CUT_IN] - gauge(d, DOWN),
      'down',
      false,
    ),
  },
  check: (p) => [
    ...mustExceed(p, 'cutOut', 'cutIn', 'must be above the cut-in pressure'),
    ...mustExceed(
      p,
      'spoolFull',
      'spoolStarts',
      'must be above the pressure that starts the spool',
    ),
  ],
  prepare: (p) => {
    const k = new Float64Array(BOTH + 1);
    writeMotor(k, p);
    writeSpool(k, SPOOL_AT, p);
    k[DISPLACEMENT] = number(p, 'displacement');
    k[CUT_OUT] = number(p, 'cutOut');
    k[CUT_IN] = number(p, 'cutIn');
    k[BOTH] = p.switchSides === 'both' ? 1 : 0;
    return k;
  },
  equations: (d) => {
    packPump(d);
    spoolOpenings(d, LOCK, SPOOL, SPOOL_AT);
    packShaft(d);
  },
  symbol: {
    name: 'power-pack',
    size: [12, 10],
    ports: { up: [-3, 5], down: [3, 5], reservoir: [0, -5], pumpUp: [-6, 0] },
  },
};
