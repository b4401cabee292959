/**
 * Squat switch (weight-on-wheels switch): says `air` when a shock strut is extended far enough.
 * On jacks the strut hangs; one that does not come out fully (low on gas, sticking) keeps the
 * switch on `ground` and whatever is interlocked with it refuses to move.
 *
 * The strut is extended by `strutExtension` while no weight is on the wheels, and by nothing else.
 */
import type { DeviceDefinition, GuardFrame } from '../define/index.js';
import { contactModes, stuckAt, stuckParameter } from './shared/contact.js';
import { number } from './shared/parameters.js';

/** Extension beyond the making point with no weight on the wheels, m. */
const BEYOND = 1;

/** Above zero in the air; the making point itself counts as reached. */
const airborne = (d: GuardFrame): number => (d.input(0) < 0.5 && d.k[BEYOND] >= 0 ? 1 : -1);

export const squatSwitch: DeviceDefinition = {
  kind: 'squat-switch',
  title: 'Squat switch',
  summary:
    'Tells air from ground by the extension of a shock strut; the interlock against retraction on the ground.',
  source: 'common practice, no source',
  role: 'switch',
  parameters: {
    strutExtension: {
      title: 'extension of the strut with no weight on the wheels',
      quantity: 'length',
      range: [0, 1],
      default: 0.25,
      why: 'a strut that comes out fully on jacks; common practice, no source',
    },
    makesAt: {
      title: 'extension at which it says air',
      quantity: 'length',
      range: [0.005, 1],
      default: 0.23,
      why: 'near full extension, so that it cannot say air on a bumpy roll; common practice, no source',
    },
    stuck: stuckParameter('ground', 'air'),
  },
  ports: {},
  inputs: {
    weight: { title: 'weight on the wheels', choices: ['off', 'on'], initial: 0 },
  },
  signals: {
    inAir: { title: 'in the air', value: (d) => d.mode },
    onGround: { title: 'on the ground', value: (d) => 1 - d.mode },
  },
  modes: contactModes(
    ['ground', 'air'],
    [airborne, 'the strut is extended far enough'],
    [(d) => -airborne(d), 'the strut is not extended far enough'],
    ['weight'],
  ),
  initialMode: (p) => (p.stuck === 'air' ? 'air' : 'ground'),
  prepare: (p) =>
    Float64Array.of(
      stuckAt(p.stuck, 'ground', 'air'),
      number(p, 'strutExtension') - number(p, 'makesAt'),
    ),
  symbol: { name: 'position-switch', size: [4, 4], ports: {} },
};
