/**
 * Actuator with a lock inside: a double-acting actuator whose piston is caught by balls (or a
 * collet) at one end or both, and let go by pressure in the chamber that moves it away from that
 * end. The lock holds the leg itself, so it needs the leg's angle: link `leg` beside `rod`, both on
 * one mechanism. Where a lock of its own holds the leg, use a double-acting actuator and that lock.
 *
 * Window, play and gap are angles of the leg, as with the other locks: travel of the balls divided
 * by the lever arm at that end. Equations: see double-acting-actuator and shared/lock.
 */
import type { DeviceDefinition, GuardFrame, ModeDefinition } from '../define/index.js';
import { ACTUATOR_SIZE, doubleActingActuator } from './double-acting-actuator.js';
import {
  highBound,
  LOCK_SIZE,
  lowBound,
  mayEngage,
  mayRelease,
  omitLock,
  writeLock,
} from './shared/lock.js';
import type { LockPlace } from './shared/lock.js';
import { catchParameters, lockCheck } from './shared/lock-parameters.js';
import { number } from './shared/parameters.js';

const HEAD_CHAMBER = 2;
const ROD_CHAMBER = 3;
const LEG = 1;

const { longestStep } = doubleActingActuator.modes!.working;

const RETRACTED: LockPlace = { k: ACTUATOR_SIZE, port: HEAD_CHAMBER, link: LEG };
const EXTENDED: LockPlace = { k: ACTUATOR_SIZE + LOCK_SIZE, port: ROD_CHAMBER, link: LEG };

const locked = (end: string, lock: LockPlace, chamber: string): ModeDefinition => ({
  title: `locked ${end}`,
  active: true,
  longestStep,
  bounds: { link: 'leg', low: (d) => lowBound(d, lock), high: (d) => highBound(d, lock) },
  guards: [
    {
      to: 'free',
      when: (d: GuardFrame) => mayRelease(d, lock),
      cause: 'pressure in the far chamber above the release pressure',
      reads: [chamber],
    },
  ],
});

const engages = (end: string, lock: LockPlace, chamber: string) => ({
  to: `locked ${end}`,
  when: (d: GuardFrame) => mayEngage(d, lock),
  cause: `the piston is home ${end} and no pressure holds its lock released`,
  reads: ['leg', chamber],
});

export const lockingActuator: DeviceDefinition = {
  ...doubleActingActuator,
  kind: 'locking-actuator',
  title: 'Actuator with internal lock',
  summary:
    'Double-acting jack that locks itself at one end or both, without pressure, until pressure moves it away.',
  source: `${doubleActingActuator.source}; lock as a window with play and a release pressure: common practice, no source`,
  parameters: {
    ...doubleActingActuator.parameters,
    lock: {
      type: 'choice',
      title: 'ends at which it locks',
      choices: ['extended', 'retracted', 'both'],
      default: 'extended',
      why: 'most are the downlock of a leg that comes down as they extend; common practice, no source',
    },
    extendedAt: {
      title: "leg's angle when fully extended",
      quantity: 'angle',
      range: [-0.5, 3.5],
      why: 'no default: where the leg stands then; for a jack that extends to lower it, down',
    },
    retractedAt: {
      title: "leg's angle when fully retracted",
      quantity: 'angle',
      range: [-0.5, 3.5],
      why: 'no default: where the leg stands then',
    },
    ...catchParameters,
  },
  links: { ...doubleActingActuator.links, leg: { title: 'leg it locks', shape: 'plain' } },
  modes: {
    free: {
      title: 'free',
      longestStep,
      guards: [
        engages('extended', EXTENDED, 'rodChamber'),
        engages('retracted', RETRACTED, 'headChamber'),
      ],
    },
    'locked extended': locked('extended', EXTENDED, 'rodChamber'),
    'locked retracted': locked('retracted', RETRACTED, 'headChamber'),
  },
  signals: {
    lockedExtended: { title: 'locked extended', value: (d) => (d.mode === 1 ? 1 : 0) },
    lockedRetracted: { title: 'locked retracted', value: (d) => (d.mode === 2 ? 1 : 0) },
  },
  check: (p) => [
    ...doubleActingActuator.check!(p),
    ...lockCheck!(p),
    ...(Math.abs(number(p, 'extendedAt') - number(p, 'retractedAt')) > 2 * number(p, 'play')
      ? []
      : [{ parameter: 'extendedAt', message: 'is too near to the angle when retracted' }]),
  ],
  prepare: (p, s) => {
    const k = new Float64Array(ACTUATOR_SIZE + 2 * LOCK_SIZE);
    k.set(doubleActingActuator.prepare(p, s));
    const [far, near] = [number(p, 'extendedAt'), number(p, 'retractedAt')];
    const sense = far > near ? 1 : -1;
    if (p.lock === 'retracted') omitLock(k, EXTENDED.k);
    else writeLock(k, EXTENDED.k, p, s, far, sense);
    if (p.lock === 'extended') omitLock(k, RETRACTED.k);
    else writeLock(k, RETRACTED.k, p, s, near, sense === 1 ? -1 : 1);
    return k;
  },
};
