/**
 * Reservoir with a standpipe: the main pump draws from the top of a pipe inside the tank, the
 * hand pump from the bottom, so that a leak in the main system leaves a reserve for the
 * emergency. Bottom and return are the tank itself, at one pressure; between the tank and the
 * main outlet lies an opening that shuts when the level has fallen to the pipe's top, so the main
 * pump then starves, and opens again when the top is well covered. (In the real tank the pump draws
 * air there; here its suction falls to a vacuum.) What runs back down the pipe is always let in.
 */
import type { DeviceDefinition } from '../define/index.js';
import {
  bore,
  boreLaw,
  dischargeCoefficient,
  number,
  transitionReynolds,
} from './shared/parameters.js';
import { levelFits, tankParameters, tankPressure } from './shared/tank.js';

const CAPACITY = 0;
const RESERVE = 1;
const COVERED = 2;

const BOTTOM = 0;
const BARE = 1;

/** Oil above the pipe's top that covers it again, m3: some mm in a tank a hand wide. */
const RIM = 5e-5;

export const standpipeReservoir: DeviceDefinition = {
  kind: 'standpipe-reservoir',
  title: 'Reservoir with standpipe',
  summary: 'Keeps a reserve for the hand pump that the main pump cannot draw.',
  source: 'hydrostatic head; sharp-edged orifice at the main outlet',
  role: 'reservoir',
  parameters: {
    ...tankParameters,
    reserve: {
      title: 'oil below the top of the standpipe',
      quantity: 'volume',
      range: [0, 0.05],
      default: 7e-4,
      why: 'enough for one emergency extension by hand pump; common practice, no source',
    },
    bore: bore(
      'bore of the main outlet',
      0.012,
      'a suction line is wider than a pressure line; common practice, no source',
    ),
    dischargeCoefficient,
    transitionReynolds,
  },
  ports: {
    bottom: { title: 'bottom outlet, to the hand pump', volume: 0 },
    return: { title: 'return side', volume: 0, optional: true },
    main: { title: 'standpipe outlet, to the main pump', volume: 1e-5 },
  },
  flows: {
    pipe: {
      from: 'bottom',
      to: 'main',
      title: 'flow through the standpipe',
      law: (p, s) => {
        const own = boreLaw(p, s, number(p, 'bore'));
        const { constant, transition } = own;
        return {
          ...own,
          check: { constant, transition, crack: 0, full: 20_000, sense: -1, fills: true },
        };
      },
    },
  },
  readings: {
    level: { title: 'oil in the reservoir', quantity: 'volume', value: (d) => d.content(BOTTOM) },
    fullness: {
      title: 'share of capacity',
      quantity: 'ratio',
      value: (d) => d.content(BOTTOM) / d.k[CAPACITY],
    },
    above: {
      title: 'oil above the standpipe',
      quantity: 'volume',
      value: (d) => d.content(BOTTOM) - d.k[RESERVE],
    },
  },
  modes: {
    covered: {
      title: 'standpipe covered',
      guards: [
        {
          to: 'bare',
          when: (d) => (d.k[RESERVE] - d.content(BOTTOM)) / RIM,
          cause: 'the level has fallen to the top of the standpipe',
          reads: ['bottom'],
        },
      ],
    },
    bare: {
      title: 'standpipe bare',
      active: true,
      guards: [
        {
          to: 'covered',
          when: (d) => (d.content(BOTTOM) - d.k[COVERED]) / RIM,
          cause: 'the level has risen above the standpipe',
          reads: ['bottom'],
        },
      ],
    },
  },
  check: (p) => [
    ...levelFits(p),
    ...(number(p, 'reserve') < number(p, 'capacity')
      ? []
      : [{ parameter: 'reserve', message: 'must be below the capacity' }]),
  ],
  vented: {
    ports: ['bottom', 'return'],
    pressure: tankPressure,
    content: (p) => number(p, 'level'),
  },
  prepare: (p) =>
    Float64Array.of(number(p, 'capacity'), number(p, 'reserve'), number(p, 'reserve') + RIM),
  equations: (d) => d.opening(0, d.mode === BARE ? 0 : 1),
  symbol: {
    name: 'reservoir',
    size: [8, 4],
    ports: { bottom: [-2, -2], return: [2, -2], main: [0, -2] },
  },
};
