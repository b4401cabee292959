/**
 * Parameters of locks: what every lock has, what a lock of its own (not inside an actuator) has
 * beside that, and what must fit together. Whatever ages (gap, roller, cable, spring) has a figure
 * of its own whose default changes nothing.
 */
import type { DeviceDefinition, ParameterDefinitions } from '../../define/index.js';
import { number } from './parameters.js';

/** Slack at which the handle no longer draws the lock. */
export const MOST_SLACK = 0.6;
/** A lock that holds this long holds for good, s. */
export const FOR_GOOD = 1e6;

/** What every lock has; pressures are gauge. */
export const catchParameters: ParameterDefinitions = {
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
  gap: {
    title: 'how much further the leg would have to come for it to drop in',
    quantity: 'angle',
    range: [0, 0.2],
    default: 0,
    why: 'none when rigged and unworn; more than the window, and it never engages',
  },
};

/** Parameters of a lock of its own; `at` with a default where the end is always the same. */
export function lockParameters(at: number | undefined, why: string): ParameterDefinitions {
  return {
    at: { title: 'locked angle', quantity: 'angle', range: [-0.5, 3.5], default: at, why },
    ...catchParameters,
    rollerDrag: {
      title: 'release pressure added while the leg hangs on it',
      quantity: 'gauge-pressure',
      range: [0, 3e7],
      default: 0,
      why: 'a roller that turns slips off; a seized one must be dragged, and the more the harder it is loaded',
    },
    cableSlack: {
      title: "share of the handle's travel that is lost in slack",
      quantity: 'ratio',
      range: [0, 1],
      default: 0,
      why: `a rigged cable has next to none; above ${String(MOST_SLACK)} the pull no longer draws the lock; common practice, no source`,
    },
    delay: {
      title: 'time in the window before it drops in',
      quantity: 'time',
      range: [0, 30],
      default: 0,
      why: 'a clean lock with its spring drops in at once; a weak spring or dirt takes its time',
    },
    coldDelay: {
      title: 'time added to that at -20 degC',
      quantity: 'time',
      range: [0, 60],
      default: 0,
      why: 'grows evenly from none at 20 degC: thin grease stays soft, old grease or ice does not; common practice, no source',
    },
    holdsFor: {
      title: 'how long it holds before vibration shakes it off',
      quantity: 'time',
      range: [0.1, FOR_GOOD],
      default: FOR_GOOD,
      why: 'for good with its spring whole',
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
