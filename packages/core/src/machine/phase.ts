import type { Scenario, UnitEntry } from '../define/index.js';

/** What a phase is derived from: motion words of mechanisms, modes of locks. */
export interface PhaseFacts {
  /** Motion word of a mechanism: rising, falling, held, at down, at up, at closed, at open. */
  readonly motion: (mechanism: string) => string;
  /** Mode of a device, e.g. engaged. */
  readonly mode: (device: string) => string;
}

/** The name the whole gear's phase is logged under. */
export const GEAR = 'gear';

/** Phase of one unit from its devices; `before` is the phase it had. */
export function unitPhase(unit: UnitEntry, facts: PhaseFacts, before: string): string {
  const leg = facts.motion(unit.leg);
  const doors = unit.doors.map(facts.motion);
  const locked = (lock: string | undefined, end: string): boolean =>
    lock === undefined ? leg === end : facts.mode(lock) === 'engaged';
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
  const released = before === 'down and locked' || before === 'unlocking' ||
    before === 'up and locked' || before === 'up and closed' || before === 'doors opening';
  if (still && released) return 'unlocking';
  if (leg === 'at up') return 'up not locked';
  if (leg === 'at down') return 'down not locked';
  return 'stopped';
}

/**
 * Phase of the whole gear: the units' common phase where they agree, `moving` where any unit
 * travels or its doors do, else `mixed`.
 */
export function gearPhase(phases: readonly string[]): string {
  if (phases.length === 0) return '';
  if (phases.every((p) => p === phases[0])) return phases[0];
  const resting = ['down and locked', 'up and locked', 'up and closed', 'stopped'];
  return phases.every((p) => resting.includes(p)) ? 'mixed' : 'moving';
}

/** Phases of all units of a scenario, kept between calls. */
export class Phases {
  readonly current = new Map<string, string>();
  gear = '';

  constructor(private readonly scenario: Scenario) {}

  /** Names and phases that changed, units first, then the gear. */
  update(facts: PhaseFacts): { name: string; from: string; to: string }[] {
    const changes: { name: string; from: string; to: string }[] = [];
    for (const [name, unit] of Object.entries(this.scenario.units)) {
      const from = this.current.get(name) ?? '';
      const to = unitPhase(unit, facts, from);
      if (to !== from) changes.push({ name, from, to });
      this.current.set(name, to);
    }
    const to = gearPhase([...this.current.values()]);
    if (to !== this.gear) changes.push({ name: GEAR, from: this.gear, to });
    this.gear = to;
    return changes;
  }
}
