/**
 * Priority valve: the priority outlet is always open; the secondary opens only while the pressure
 * at the inlet stands above its setting, so that a short supply serves the essential branch
 * first. It orders nothing by position and may close again half way: use a sequence valve where
 * one motion must end before the next begins.
 *
 * The spring chamber is drained, to return (port `outside` on the return line) or, unconnected,
 * to the open air.
 */
import type { DeviceDefinition } from '../define/index.js';
import { openingModes } from './shared/opening.js';
import { bore, boreLaw, number } from './shared/parameters.js';
import {
  liftCheck,
  liftFlow,
  liftOf,
  liftParameters,
  LIFT_SIZE,
  LIFT_SLACK,
  writeLift,
} from './shared/pressure-lift.js';

const SECONDARY = 1;
const SECONDARY_PORT = 2;
const CHAMBER = 3;

export const priorityValve: DeviceDefinition = {
  kind: 'priority-valve',
  title: 'Priority valve',
  summary:
    'Keeps the essential branch supplied: shuts off the other while the pressure is below its setting.',
  source:
    'quasi-static poppet and orifice: Merritt, Hydraulic Control Systems (from memory); use: US Army TM 1-1500-204-23-2, page 4-132; US Army course AL0926, figure 2-15',
  role: 'other',
  parameters: liftParameters({
    priorityBore: bore(
      'bore of the way to the priority outlet',
      0.006,
      'the bore of the line; common practice, no source',
    ),
  }),
  ports: {
    inlet: { title: 'inlet', volume: 3e-6 },
    priority: { title: 'priority outlet', volume: 3e-6 },
    secondary: { title: 'secondary outlet', volume: 3e-6 },
    outside: {
      title: 'spring chamber, to return or to the outside',
      volume: 1e-6,
      optional: true,
    },
  },
  flows: {
    first: {
      from: 'inlet',
      to: 'priority',
      title: 'flow to the priority outlet',
      law: (p, s) => boreLaw(p, s, number(p, 'priorityBore')),
    },
    second: {
      from: 'inlet',
      to: 'secondary',
      also: ['outside'],
      title: 'flow to the secondary outlet',
    },
  },
  modes: openingModes(liftOf(CHAMBER), LIFT_SLACK, ['inlet', 'outside'], {
    lifts: 'pressure at the inlet above the setting',
    full: 'pressure at the inlet has pushed the valve fully open',
    seats: 'pressure at the inlet back below the setting',
    back: 'pressure at the inlet falls',
  }),
  check: liftCheck,
  prepare: (p, s) => {
    const k = new Float64Array(LIFT_SIZE);
    writeLift(k, p, s);
    return k;
  },
  equations: (d) => liftFlow(d, SECONDARY, SECONDARY_PORT, CHAMBER),
  symbol: {
    name: 'priority-valve',
    size: [6, 6],
    ports: { inlet: [-3, 0], priority: [3, 0], secondary: [0, 3], outside: [0, -3] },
  },
};
