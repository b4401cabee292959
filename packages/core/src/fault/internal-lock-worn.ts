import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const internalLockWorn: FaultDefinition = {
  kind: 'internal-lock-worn',
  title: 'Internal lock worn or put together wrong',
  group: 'actuators, locks, structure',
  meaning:
    'Balls, collet or locking piston of the lock inside the actuator are worn: it needs more pressure to let go, and at last no longer drops in.',
  shows:
    'At first no start with the gauge high, now and then; worn further, the leg arrives and nothing holds it when the pressure goes.',
  confirm: 'Pressure off, push the leg from the locked end by hand; then strip.',
  remedy: 'Overhaul the actuator by its manual.',
  caution:
    'The lock cannot be seen: a light that comes from a switch inside proves little. Fit ground locks before anyone goes under. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NTSB report NYC99IA079 (internal lock, collapse); signs: common practice, no source',
  prior: 'rare',
  priorWhy: 'Hidden parts, found at overhaul.',
  befalls: ['locking-actuator'],
  worst:
    'lock one and a half windows out of reach (from two thirds on it never locks), release pressure threefold',
  change: (p, severity) => ({
    gap: add(number(p, 'gap'), 1.5 * severity * number(p, 'window'), 0.2),
    release: add(number(p, 'release'), 2 * severity * number(p, 'release'), 3e7),
  }),
};
