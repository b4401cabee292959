import type { Evidence, UnitEntry } from '../../define/index.js';
import { devicesOf } from './line.js';
import { moves, restingSince } from './motion.js';

/**
 * True for a door that moves with its leg by construction: through a linkage, or through a
 * coupling (chain, spring) with no actuator of its own. No order of the two can be asked for.
 */
export function movesWithLeg(e: Evidence, unit: UnitEntry, door: string): boolean {
  const hangs = (role: 'actuator' | 'coupling'): readonly (readonly string[])[] =>
    devicesOf(e, role).map((d) => Object.values(e.scenario.components[d].links).map((l) => l.to));
  const actuated = new Set(hangs('actuator').flat());
  const couplings = hangs('coupling');
  const moved = new Set([unit.leg]);
  for (let before = 0; before < moved.size;) {
    before = moved.size;
    for (const [name, { driven }] of Object.entries(e.scenario.mechanisms)) {
      const coupled = (): boolean =>
        !actuated.has(name) &&
        couplings.some((c) => c.includes(name) && c.some((m) => moved.has(m)));
      if (driven === undefined ? coupled() : moved.has(driven.by)) moved.add(name);
    }
  }
  return moved.has(door);
}

/**
 * True for a door that belongs closed with the gear down as well: it stood closed beside a leg
 * that rested down before the first selection. Where the gear stood otherwise, nobody knows.
 */
export function closedWhenDown(e: Evidence, unit: UnitEntry, door: string): boolean {
  const start = moves(e)[0]?.start;
  if (start === undefined) return false;
  return (
    restingSince(e, unit.leg, 'down', start) !== undefined &&
    restingSince(e, door, 'closed', start) !== undefined
  );
}
