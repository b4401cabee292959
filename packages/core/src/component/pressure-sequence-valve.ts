/**
 * Pressure-operated sequence valve: lets oil on to the next unit when the pressure at its inlet
 * says that the unit before it has come to rest. Its spring chamber is drained, to return (port
 * `outside` on the return line) or, unconnected, to the open air. Return flow passes freely
 * through its own check valve. It cannot tell a unit that is home from one that is jammed: use a
 * plunger-operated sequence valve where position must rule.
 */
import type { DeviceDefinition } from '../define/index.js';
import { freeBack, freeBackParameters } from './shared/free-back.js';
import { openingModes } from './shared/opening.js';
import { mustExceed } from './shared/parameters.js';
import {
  liftCheck,
  liftFlow,
  liftOf,
  liftParameters,
  LIFT_SIZE,
  LIFT_SLACK,
  writeLift,
} from './shared/pressure-lift.js';

const THROUGH = 0;
const OUTLET = 1;
const CHAMBER = 2;

export const pressureSequenceValve: DeviceDefinition = {
  kind: 'pressure-sequence-valve',
  title: 'Pressure-operated sequence valve',
  summary:
    'Feeds the second unit only when the pressure of the first has risen above its setting: when it has come to rest.',
  source:
    'quasi-static poppet and orifice: Merritt, Hydraulic Control Systems (from memory); use: US Army TM 1-1500-204-23-2, page 4-130',
  role: 'sequence-valve',
  parameters: liftParameters(freeBackParameters),
  ports: {
    inlet: { title: 'inlet', volume: 3e-6 },
    outlet: { title: 'outlet', volume: 3e-6 },
    outside: {
      title: 'spring chamber, to return or to the outside',
      volume: 1e-6,
      optional: true,
    },
  },
  flows: {
    through: { from: 'inlet', to: 'outlet', also: ['outside'], title: 'flow' },
    back: freeBack,
  },
  modes: openingModes(liftOf(CHAMBER), LIFT_SLACK, ['inlet', 'outside'], {
    lifts: 'pressure at the inlet above the setting',
    full: 'pressure at the inlet has pushed the valve fully open',
    seats: 'pressure at the inlet back below the setting',
    back: 'pressure at the inlet falls',
  }),
  check: (p) => [
    ...liftCheck(p),
    ...mustExceed(
      p,
      'freeFull',
      'freeCrack',
      'must be above the drop at which the way back begins to open',
    ),
  ],
  prepare: (p, s) => {
    const k = new Float64Array(LIFT_SIZE);
    writeLift(k, p, s);
    return k;
  },
  equations: (d) => liftFlow(d, THROUGH, OUTLET, CHAMBER),
  symbol: {
    name: 'pressure-sequence-valve',
    size: [6, 6],
    ports: { inlet: [0, -3], outlet: [0, 3], outside: [3, 0] },
  },
};
