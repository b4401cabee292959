/** What a look at a part, or at the whole gear, says of causes. */
import type { Scenario } from '../../define/index.js';
import { WHOLE_GEAR } from '../../observation/index.js';
import { checks } from '../../check/index.js';
import type { Cause } from './shapes.js';

/** A look shows something where there is nothing once in so many, where the check does not say. */
const PHANTOM = 0.03;
/** A look finds what is there so often, where the check does not say. */
const SURE = 0.95;

/** How likely a look is to show something, were these the causes. */
export function lookFinds(
  check: string,
  on: string,
  causes: readonly Cause[],
  scenario?: Scenario,
): number {
  const { shows = [], sure = SURE, besides = PHANTOM } = checks[check] ?? {};
  const there = causes.some((c) => shows.includes(c.fault) && covers(on, c.on, scenario));
  return there ? sure : besides;
}

/** Whether a look at something sees a part: itself, a part of that unit, or anything of the gear. */
function covers(on: string, part: string, scenario: Scenario | undefined): boolean {
  if (on === part || on === WHOLE_GEAR) return true;
  const unit = scenario?.units[on];
  if (unit === undefined) return false;
  const { leg, doors, uplock, downlock, sequence, actuators } = unit;
  const own = [leg, ...doors, uplock, downlock, ...sequence, ...actuators];
  const links = Object.values(scenario?.components[part]?.links ?? {});
  return own.includes(part) || links.some(({ to }) => to === leg || doors.includes(to));
}
