import type { UnitEntry } from '../define/index.js';

/** Names of all that a unit says is its own: its leg first, then doors, locks, sequence valves, actuators. */
export const partsOf = (unit: UnitEntry): readonly string[] =>
  [unit.leg, ...unit.doors, unit.uplock, unit.downlock, ...unit.sequence, ...unit.actuators].filter(
    (name) => name !== undefined,
  );
