/** Diagnosis, check, diagnosis: as a mechanic does who always takes the check that is ranked first. */
import { flowOf } from './aircraft.mjs';

/** So many checks at most. */
const CHECKS = 6;
/** A look shows something where there is nothing, once in so many; and finds what is there, where it does not say. */
const PHANTOM = 0.02;
const SURE = 0.95;

/** Whether an explanation names the truth: the cause, or that nothing is wrong. */
const names = (member, truth) =>
  truth === undefined
    ? member.causes.length === 0
    : member.causes.some((c) => c.fault === truth.fault && c.on === truth.on);

/**
 * Place of the truth among the groups, from 0; -1 when it is in none. A group that is led by the healthy
 * aircraft says that nothing is wrong, whatever mild faults cannot be told from that; and a sound aircraft
 * is called so only by a group that it leads.
 */
export const rankOf = (groups, truth) =>
  groups.findIndex(({ members }) => {
    if ((members[0].causes.length === 0) !== (truth === undefined)) return false;
    return truth === undefined || members.some((m) => names(m, truth));
  });

/** Place of the first group that names all of several truths in one explanation, from 0; -1 when none does. */
const rankOfAll = (groups, truths) =>
  groups.findIndex(({ members }) => members.some((m) => truths.every((t) => names(m, t))));

/** What the first answer was worth, and what the checks made of it. */
export async function judged(core, scenario, one, { memory, loop }) {
  const { truth, second } = one;
  let { sheet } = one;
  let found = await core.diagnose(scenario, sheet, { memory });
  const first = told(found, truth, second);
  const done = [];
  while (loop && !found.established && done.length < CHECKS) {
    const next = found.checks.find((c) => !done.includes(`${c.check} ${c.on}`));
    if (next === undefined) break;
    done.push(`${next.check} ${next.on}`);
    sheet = answered(core, scenario, sheet, next, one);
    found = await core.diagnose(scenario, sheet, { memory });
  }
  return {
    first,
    last: { ...told(found, truth, second), established: found.established },
    checks: done,
  };
}

/** Of two truths, either is the one to be found; whether both were told as one explanation is told beside it. */
function told({ groups, unknown }, truth, second) {
  const ranks = [truth, ...(second ? [second] : [])].map((t) => rankOf(groups, t));
  const named = ranks.filter((rank) => rank >= 0);
  return {
    rank: named.length === 0 ? -1 : Math.min(...named),
    ...(second && { both: rankOfAll(groups, [truth, second]) }),
    // Where no known cause fits at all there is no group.
    probability: groups[0]?.probability ?? 0,
    unknown,
    members: groups[0]?.members.length ?? 0,
    groups: groups.slice(0, 4).map(({ probability, members }) => ({
      probability,
      members: members.length,
      causes: members[0].causes,
      severities: members[0].severities.map((s) => s.at),
    })),
  };
}

/** The sheet with what the true aircraft answers to a check. */
function answered(core, scenario, sheet, { check, on }, { truth, conditions, random, again }) {
  const { swing, shows = [], sure = SURE, anywhere, besides = PHANTOM } = core.checks[check];
  if (swing === undefined) {
    const there =
      truth !== undefined && (anywhere || truth.on === on) && shows.includes(truth.fault);
    const found = random.chance(there ? sure : besides);
    return { ...sheet, looks: [...sheet.looks, { check, on, found }] };
  }
  const own = scenario.cards[sheet.card].temperature ?? scenario.fluid.temperature;
  const changed = {
    ...(swing.flowShare && {
      supplyFlow: swing.flowShare * (conditions.supplyFlow ?? flowOf(core, scenario)),
    }),
    ...(swing.warmer && { temperature: (conditions.temperature ?? own) + swing.warmer }),
    ...(swing.doors && { doors: swing.doors }),
  };
  return { ...sheet, swings: [...sheet.swings, ...again(changed)] };
}
