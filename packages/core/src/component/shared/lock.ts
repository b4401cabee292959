/**
 * What uplock and downlock share: engaged near one end of the coordinate while no release
 * pressure is there, released by pressure at their port or by the cable. Release dominates:
 * a lock cannot engage before the pressure has fallen to `resetShare` of the release pressure.
 */
import type {
  DeviceDefinition,
  GuardFrame,
  ModeDefinition,
  ParameterDefinitions,
  Parameters,
  Surroundings,
} from '../../define/index.js';
import { number } from './parameters.js';

export const AT = 0;
export const WINDOW = 1;
export const PLAY = 2;
const RELEASE = 3;
const RESET = 4;

/** Parameters of a lock; `at` with a default where the end is always the same. */
export function lockParameters(at: number | undefined, why: string): ParameterDefinitions {
  return {
    at: { title: 'locked angle', quantity: 'angle', range: [-0.5, 3.5], default: at, why },
    window: {
      title: 'distance from the locked angle at which it engages',
      quantity: 'angle',
      range: [1e-4, 0.2],
      default: 0.008,
      why: 'about half a degree: hook or plunger drops in just before the end; common practice, no source',
    },
    play: {
      title: 'play when engaged, from the locked angle',
      quantity: 'angle',
      range: [1e-4, 0.25],
      default: 0.012,
      why: 'about 0.7 degrees, and more than the window so that it drops in without force; common practice, no source',
    },
    release: {
      title: 'release pressure',
      quantity: 'gauge-pressure',
      range: [5e4, 3e7],
      default: 1.7e6,
      why: 'about 250 psi, well below the pressure that moves the leg; common practice, no source',
    },
    resetShare: {
      title: 'share of the release pressure below which it can engage again',
      quantity: 'ratio',
      range: [0.1, 0.98],
      default: 0.7,
      why: 'friction of the release piston and its spring; common practice, no source',
    },
  };
}

/** Checks between the parameters of a lock. */
export const lockCheck: DeviceDefinition['check'] = (p) =>
  number(p, 'play') >= number(p, 'window')
    ? []
    : [
        {
          parameter: 'play',
          message: 'must be at least the window, or the lock would engage against its load',
        },
      ];

export function lockConstants(p: Parameters, s: Surroundings): Float64Array {
  const release = number(p, 'release');
  return Float64Array.of(
    number(p, 'at'),
    number(p, 'window'),
    number(p, 'play'),
    s.ambient + release,
    s.ambient + release * number(p, 'resetShare'),
  );
}

export const lockInputs: DeviceDefinition['inputs'] = {
  cable: { title: 'manual release', choices: ['rest', 'pulled'], initial: 0 },
};

/** Positive when the leg is inside the window and nothing holds the lock released. */
function mayEngage(d: GuardFrame, inside: (d: GuardFrame) => number): number {
  if (d.input(0) !== 0) return -1;
  const k = d.k;
  return Math.min(inside(d) / k[WINDOW], (k[RESET] - d.pressure(0)) / k[RESET]);
}

/** Modes of a lock; `inside` is positive (rad) within the window, `bounds` as the engaged lock sets them. */
export function lockModes(
  inside: (d: GuardFrame) => number,
  bounds: ModeDefinition['bounds'],
): Readonly<Record<string, ModeDefinition>> {
  return {
    open: {
      title: 'open',
      guards: [
        {
          to: 'engaged',
          when: (d) => mayEngage(d, inside),
          cause: 'the leg is home and no release pressure holds the lock',
          reads: ['leg', 'release', 'cable'],
        },
      ],
    },
    engaged: {
      title: 'engaged',
      active: true,
      bounds,
      guards: [
        {
          to: 'open',
          when: (d) => d.pressure(0) - d.k[RELEASE],
          cause: 'pressure at the release port above the release pressure',
          reads: ['release'],
        },
        {
          to: 'open',
          when: (d) => d.input(0) - 0.5,
          cause: 'the manual release is pulled',
          reads: ['cable'],
        },
      ],
    },
  };
}
