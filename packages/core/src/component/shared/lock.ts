/**
 * What uplock, downlock and the lock inside an actuator share: engaged near one end of the
 * coordinate while no release pressure is there, released by pressure at their port or by the
 * cable. Release dominates: a lock cannot engage before the pressure has fallen to `resetShare`
 * of the release pressure. Figures: shared/lock-parameters.
 */
import type {
  DeviceDefinition,
  GuardFrame,
  ModeDefinition,
  Parameters,
  Surroundings,
} from '../../define/index.js';
import { FOR_GOOD, MOST_SLACK } from './lock-parameters.js';
import { number } from './parameters.js';

/** Numbers a lock needs in `k`. */
export const LOCK_SIZE = 11;

const SENSE = 0;
const EDGE = 1;
const WINDOW = 2;
const LIMIT = 3;
const PLAY = 4;
const RELEASE = 5;
const RESET = 6;
const ROLLER = 7;
const CABLE = 8;
const DELAY = 9;
const HOLDS = 10;

/** Where a lock stands in its device: first constant in `k`, release port, link to the angle. */
export interface LockPlace {
  readonly k: number;
  readonly port: number;
  readonly link: number;
}

/** Below this oil temperature a greased lock stiffens, K (20 degC), and over this span by the whole figure, K. */
const MILD = 293.15;
const COLD_SPAN = 40;

/** Writes a lock's constants from `k[i]`; `sense` 1 locks at the high end of the angle, -1 at the low one. */
export function writeLock(
  k: Float64Array,
  i: number,
  p: Parameters,
  s: Surroundings,
  at: number,
  sense: 1 | -1,
): void {
  const release = number(p, 'release');
  k[i + SENSE] = sense;
  k[i + EDGE] = sense * at - number(p, 'window') + number(p, 'gap');
  k[i + WINDOW] = number(p, 'window');
  k[i + LIMIT] = sense * at - number(p, 'play');
  k[i + PLAY] = number(p, 'play');
  k[i + RELEASE] = s.ambient + release;
  k[i + RESET] = s.ambient + release * number(p, 'resetShare');
  k[i + HOLDS] = Infinity;
}

/** Leaves out the lock at `k[i]`: it never engages. */
export function omitLock(k: Float64Array, i: number): void {
  k[i + EDGE] = Infinity;
  k[i + WINDOW] = 1;
  k[i + PLAY] = 1;
  k[i + RESET] = 1;
}

/** Constants of a lock of its own. */
export function lockConstants(p: Parameters, s: Surroundings, sense: 1 | -1): Float64Array {
  const k = new Float64Array(LOCK_SIZE);
  writeLock(k, 0, p, s, number(p, 'at'), sense);
  k[ROLLER] = number(p, 'rollerDrag');
  // Half way between rest and pulled, or beyond pulled where the slack has taken it up.
  k[CABLE] = number(p, 'cableSlack') > MOST_SLACK ? 2 : 0.5;
  const cold = Math.max(0, (MILD - s.temperature) / COLD_SPAN);
  k[DELAY] = number(p, 'delay') + cold * number(p, 'coldDelay');
  k[HOLDS] = number(p, 'holdsFor') < FOR_GOOD ? number(p, 'holdsFor') : Infinity;
  return k;
}

export const lockInputs: DeviceDefinition['inputs'] = {
  cable: { title: 'manual release', choices: ['rest', 'pulled'], initial: 0 },
};

/** Mode of {@link lockModes} that holds. */
const ENGAGED = 1;

/** What a lock can tell by wire. */
export const lockSignals: DeviceDefinition['signals'] = {
  engaged: { title: 'engaged', value: (d) => (d.mode === ENGAGED ? 1 : 0) },
};

/** How far inside its window the leg is, rad; below 0 outside. */
const inside = (d: GuardFrame, l: LockPlace): number =>
  d.k[l.k + SENSE] * d.travel(l.link) - d.k[l.k + EDGE];

/** Positive when the leg is inside the window and no release pressure is there. */
export function mayEngage(d: GuardFrame, l: LockPlace): number {
  const reset = d.k[l.k + RESET];
  return Math.min(inside(d, l) / d.k[l.k + WINDOW], (reset - d.pressure(l.port)) / reset);
}

/** Pressure above the release pressure, Pa. */
export function mayRelease(d: GuardFrame, l: LockPlace): number {
  const { k } = d;
  const hung = k[l.k + LIMIT] + k[l.k + PLAY] - k[l.k + SENSE] * d.travel(l.link);
  const load = Math.min(Math.max(hung / k[l.k + PLAY], 0), 1);
  return d.pressure(l.port) - (k[l.k + RELEASE] + k[l.k + ROLLER] * load);
}

/** Bounds of an engaged lock, rad: a low one at the high end, a high one at the low end. */
export const lowBound = (d: GuardFrame, l: LockPlace): number =>
  d.k[l.k + SENSE] > 0 ? d.k[l.k + LIMIT] : -Infinity;
export const highBound = (d: GuardFrame, l: LockPlace): number =>
  d.k[l.k + SENSE] < 0 ? -d.k[l.k + LIMIT] : Infinity;

const OWN: LockPlace = { k: 0, port: 0, link: 0 };
const pulled = (d: GuardFrame): number => d.input(0) - d.k[CABLE];
const engages = (d: GuardFrame): number => (pulled(d) > 0 ? -1 : mayEngage(d, OWN));

/** Modes of a lock of its own (release port, link and cable are its first). */
export function lockModes(side: 'low' | 'high'): Readonly<Record<string, ModeDefinition>> {
  return {
    open: {
      title: 'open',
      guards: [
        {
          to: 'engaged',
          when: (d) => (d.k[DELAY] > 0 ? -1 : engages(d)),
          cause: 'the leg is home and no release pressure holds the lock',
          reads: ['leg', 'release', 'cable'],
        },
        {
          to: 'dropping in',
          when: (d) => (d.k[DELAY] > 0 ? engages(d) : -1),
          cause: 'the leg is home and no release pressure holds the lock, which is slow',
          reads: ['leg', 'release', 'cable'],
        },
      ],
    },
    engaged: {
      title: 'engaged',
      active: true,
      bounds:
        side === 'low'
          ? { link: 'leg', low: (d) => lowBound(d, OWN) }
          : { link: 'leg', high: (d) => highBound(d, OWN) },
      guards: [
        {
          to: 'open',
          when: (d) => mayRelease(d, OWN),
          cause: 'pressure at the release port above the release pressure',
          reads: ['release'],
        },
        {
          to: 'open',
          when: pulled,
          cause: 'the manual release is pulled',
          reads: ['cable'],
        },
      ],
      timers: [
        { to: 'shaken off', after: (d) => d.k[HOLDS], cause: 'its spring no longer holds it in' },
      ],
    },
    'dropping in': {
      title: 'dropping in slowly',
      guards: [
        {
          to: 'open',
          when: (d) => -engages(d),
          cause: 'the leg has left the window, or the lock is held released again',
          reads: ['leg', 'release', 'cable'],
        },
      ],
      timers: [{ to: 'engaged', after: (d) => d.k[DELAY], cause: 'it has dropped in at last' }],
    },
    'shaken off': {
      title: 'shaken off',
      guards: [
        {
          to: 'open',
          when: (d) => -inside(d, OWN),
          cause: 'the leg has left the window',
          reads: ['leg'],
        },
      ],
    },
  };
}
