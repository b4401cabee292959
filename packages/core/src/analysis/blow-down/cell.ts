import type { Catalogues, LogEntry, Run, Scenario } from '../../define/index.js';
import { simulateWith } from '../../machine/index.js';
import { firstPull, holding } from '../../monitor/index.js';
import { bottleOf, under } from './card.js';
import { lookAtMoments, worstPoint } from './moments.js';
import type { BlowDownCell, BlowDownCondition, BlowDownLeg } from './shapes.js';

/** Ends a run as soon as every leg has been locked down after the handle was pulled. */
function allLocked(scenario: Scenario, catalogues: Catalogues): (entry: LogEntry) => boolean {
  const locks = new Set(Object.values(scenario.units).flatMap((u) => u.downlock ?? []));
  const engaged = new Set<string>();
  let pulled = false;
  return ({ device, kind, to }) => {
    const is = scenario.components[device]?.is;
    if (kind === 'operator' && is !== undefined)
      pulled ||= catalogues.components[is].role === 'blow-down' && to !== 'closed';
    if (kind !== 'mode' || !locks.has(device)) return false;
    if (holding(to)) engaged.add(device);
    else engaged.delete(device);
    return pulled && locks.size > 0 && engaged.size === locks.size;
  };
}

/**
 * Plays the card under a condition and says how every leg fared. At `draft`: a sixth fewer tries, times
 * within 2 ms and moments within 4 % of `normal` (measured over 25 conditions of each demo aircraft).
 */
export function playCell(
  catalogues: Catalogues,
  scenario: Scenario,
  card: string,
  condition: BlowDownCondition,
): BlowDownCell {
  const changed = under(scenario, catalogues, card, condition);
  const until = allLocked(changed, catalogues);
  const run = simulateWith(catalogues, changed, { card, until, tolerance: 'draft' });
  return cellOf(catalogues, run, condition);
}

/**
 * How every leg fared in a run, under its own charge and temperature.
 *
 * @throws RangeError when the scenario has no bottle.
 */
export function judgeRun(catalogues: Catalogues, run: Run): BlowDownCell {
  const { parameters } = run.scenario.components[bottleOf(run.scenario, catalogues)];
  const { temperature } = run.scenario.fluid;
  return cellOf(catalogues, run, { charge: parameters.charge as number, temperature });
}

function cellOf(catalogues: Catalogues, run: Run, condition: BlowDownCondition): BlowDownCell {
  const units = Object.keys(run.scenario.units);
  const pull = firstPull(run)?.t ?? NaN;
  const bottle = bottleOf(run.scenario, catalogues);
  const own = [`${bottle}.gauge`, `${bottle}.left`];
  const { curves, seen: end } = lookAtMoments(run, units, own);
  const last = (name: string): number => end.get(`${bottle}.${name}`)?.v.at(-1) ?? NaN;
  const legs = units.map((unit): BlowDownLeg => {
    const { downlock, leg } = run.scenario.units[unit];
    const lock = run.log.findLast((e) => e.device === (downlock ?? leg) && e.kind !== 'operator');
    const locked =
      lock !== undefined && (downlock === undefined ? lock.to === 'at down' : holding(lock.to));
    const worst = worstPoint(curves.find((c) => c.unit === unit)?.points ?? []);
    const { angle = NaN, available = NaN, needed = NaN } = worst ?? {};
    const time = locked ? Math.max(0, lock.t - pull) : NaN;
    return { unit, locked, time, margin: available - needed, at: angle, available, needed };
  });
  const whole = run.outcome.kind === 'done';
  return {
    ...condition,
    verdict: !whole ? 'failed' : legs.every((l) => l.locked) ? 'locked' : 'not locked',
    legs,
    gasLeft: last('left'),
    endPressure: last('gauge'),
    computed: true,
    ...(whole ? {} : { why: run.outcome.why }),
  };
}
