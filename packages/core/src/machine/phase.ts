import type { Phase, Scenario, UnitEntry } from '../define/index.js';

/** What a phase is derived from: motion words of mechanisms, modes of locks. */
export interface PhaseFacts {
  /** Motion word of a mechanism: rising, falling, held, at down, at up, at closed, at open. */
  readonly motion: (mechanism: string) => string;
  /** Whether a lock (or an actuator with a lock inside) holds a leg near the end of this word. */
  readonly holds: (lock: string, leg: string, end: string) => boolean;
}

/** The name the whole gear's phase is logged under. */
export const GEAR = 'gear';

/** A unit or the whole gear has come into another phase. */
export interface PhaseChange {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  /** What the phase is derived from: a unit's mechanisms and locks, the gear's units. */
  readonly of: readonly string[];
}

/** Phases after which a resting, unlocked leg has only just been let go. */
const BEFORE_UNLOCKING: readonly string[] = [
  'down and locked',
  'unlocking',
  'up and locked',
  'up and closed',
  'doors opening',
] satisfies readonly Phase[];

const RESTING: readonly string[] = [
  'down and locked',
  'up and locked',
  'up and closed',
  'stopped',
] satisfies readonly Phase[];

/** Phase of one unit from its devices; `before` is the phase it had. */
export function unitPhase(unit: UnitEntry, facts: PhaseFacts, before: string): Phase {
  const leg = facts.motion(unit.leg);
  const doors = unit.doors.map(facts.motion);
  const locked = (lock: string | undefined, end: string): boolean =>
    lock === undefined ? leg === end : facts.holds(lock, unit.leg, end);
  const still = leg === 'held' || leg.startsWith('at ');
  // A lock has play: a leg that moves within it is still locked.
  if (locked(unit.downlock, 'at down')) return 'down and locked';
  if (locked(unit.uplock, 'at up')) {
    if (doors.includes('falling')) return 'doors closing';
    if (doors.includes('rising')) return 'doors opening';
    return doors.every((d) => d === 'at closed') ? 'up and closed' : 'up and locked';
  }
  if (leg === 'rising') return 'travelling up';
  if (leg === 'falling') return 'travelling down';
  if (still && BEFORE_UNLOCKING.includes(before)) return 'unlocking';
  if (leg === 'at up') return 'up not locked';
  if (leg === 'at down') return 'down not locked';
  return 'stopped';
}

/**
 * Phase of the whole gear: the units' common phase where they agree, `mixed` where they rest
 * in different places, else `moving`.
 */
export function gearPhase(phases: readonly string[]): string {
  if (phases.length === 0) return '';
  if (phases.every((p) => p === phases[0])) return phases[0];
  return phases.every((p) => RESTING.includes(p)) ? 'mixed' : 'moving';
}

/** Phases of all units of a scenario, kept between calls. */
export class Phases {
  private readonly current = new Map<string, string>();
  private gear = '';
  private readonly devices: ReadonlyMap<string, readonly string[]>;

  constructor(private readonly scenario: Scenario) {
    this.devices = new Map(
      Object.entries(scenario.units).map(([name, { leg, doors, uplock, downlock }]) => [
        name,
        [leg, ...doors, uplock, downlock].filter((d) => d !== undefined),
      ]),
    );
  }

  /** Phases that changed, units first, then the gear. */
  update(facts: PhaseFacts): readonly PhaseChange[] {
    const changes: PhaseChange[] = [];
    for (const [name, unit] of Object.entries(this.scenario.units)) {
      const from = this.current.get(name) ?? '';
      const to = unitPhase(unit, facts, from);
      if (to !== from) changes.push({ name, from, to, of: this.devices.get(name)! });
      this.current.set(name, to);
    }
    const to = gearPhase([...this.current.values()]);
    const of = [...this.devices.keys()];
    if (to !== this.gear) changes.push({ name: GEAR, from: this.gear, to, of });
    this.gear = to;
    return changes;
  }
}
