import type { Catalogues, Run, Scenario } from '../../define/index.js';
import { simulateWith } from '../../machine/index.js';
import { holding } from '../../monitor/index.js';
import { rampMargin } from '../../mechanism/index.js';
import { blowDownCards, namesOf } from './card.js';
import type { FollowUp, RampCase, ServiceStep, Told } from './shapes.js';

/** Free gas at a node that is worth bleeding, m3. */
const TRACE = 1e-6;
/** Oil lost that shows on a sight glass, m3. */
const DROP = 5e-6;

/** Oil; gas is told by the volume it takes at ambient pressure. */
const volume = (value: number): Told[number] => ({ value, quantity: 'volume' });

/** Gas left at every node of the oil side at the end of a run, m3 at ambient pressure. */
export function gasLeft(run: Run): Readonly<Record<string, number>> {
  const names = run.channels.filter((c) => c.quantity === 'free-gas').map((c) => c.of);
  const dry = dryNodes(run);
  const seen = run.look(names.map((n) => `${n}.gas`));
  const left: Record<string, number> = {};
  for (const name of names) {
    const amount = seen.get(`${name}.gas`)?.v.at(-1) ?? 0;
    if (amount > TRACE && !dry.has(name)) left[name] = amount;
  }
  return left;
}

/** Nodes of the gas side and of vessels, reservoirs, the open: nothing to bleed there. */
function dryNodes(run: Run): ReadonlySet<string> {
  const gasRoles = ['gas-supply', 'blow-down'];
  const out = new Set<string>(['outside']);
  for (const [name, { is, ports }] of Object.entries(run.scenario.components)) {
    const role = run.role(name);
    const gasOnly = gasRoles.includes(role ?? '') || is.startsWith('gas-');
    if (gasOnly) for (const node of [...Object.values(ports), `${name}.store`]) out.add(node);
    if (role === 'shuttle' && ports.emergency !== undefined) out.add(ports.emergency);
    if (role === 'reservoir') for (const node of Object.values(ports)) out.add(node);
  }
  return out;
}

/**
 * What has to be done after a blow-down before the system is used again, each step with its reason
 * from the run. General words: the aircraft's approved data has the procedure.
 */
export function serviceSteps(catalogues: Catalogues, run: Run): readonly ServiceStep[] {
  const { scenario } = run;
  const of = (role: string): string[] => namesOf(scenario, catalogues, role);
  const steps: ServiceStep[] = [];
  const add = (step: string, ...reason: Told): void => void steps.push({ step, reason });
  const last = (device: string): string =>
    run.log.findLast((e) => e.device === device && e.kind === 'mode')?.to ?? '';

  const locked = Object.entries(scenario.units).filter(
    ([, u]) => u.downlock !== undefined && !holding(last(u.downlock)),
  );
  add(
    'Do not select UP. Fit ground locks; keep everybody clear of legs and doors.',
    locked.length > 0
      ? `${locked.map(([name]) => name).join(', ')} did not lock: held by gas or by nothing, and may go at any moment.`
      : 'There is gas under pressure in the down sides: a leg that is let go springs.',
  );
  for (const valve of of('blow-down'))
    add(
      `Close ${valve}, and vent the gas lines behind it.`,
      `It stands ${last(valve) || 'as it was'}.`,
    );
  for (const bottle of of('gas-supply')) {
    const end = run.look([`${bottle}.gauge`, `${bottle}.left`]);
    const gauge = end.get(`${bottle}.gauge`)?.v.at(-1) ?? NaN;
    const share = end.get(`${bottle}.left`)?.v.at(-1) ?? NaN;
    add(
      `Recharge ${bottle} by its table: slowly, regulated dry nitrogen (or what its placard says), never oxygen, eye protection; read it again when it has cooled.`,
      { value: gauge, quantity: 'gauge-pressure' },
      ` are left, ${(100 * share).toFixed(0)} % of the gas.`,
    );
  }
  for (const shuttle of of('shuttle'))
    if (last(shuttle) !== 'normal' && last(shuttle) !== '')
      add(
        `Reset ${shuttle} to its normal side, and see that it moves.`,
        `It stands at ${last(shuttle)}.`,
      );
  for (const dump of of('dump'))
    if (last(dump) !== 'closed' && last(dump) !== '')
      add(`Close ${dump}.`, 'It stands open: UP would run back to the reservoir.');
  const left = gasLeft(run);
  const worst = Object.entries(left).sort((a, b) => b[1] - a[1]);
  if (worst.length > 0) {
    const total = worst.reduce((sum, [, v]) => sum + v, 0);
    const named = worst
      .slice(0, 4)
      .flatMap(([node, v], i): Told => [`${i === 0 ? '' : ', '}${node} `, volume(v)]);
    add(
      'Bleed the down sides, actuators last, until the oil comes without bubbles.',
      volume(total),
      ' of free gas, at ambient pressure, are in the oil side: ',
      ...named,
      worst.length > 4 ? ', and more.' : '.',
    );
  }
  for (const tank of of('reservoir')) {
    const nodes = [...new Set(Object.values(scenario.components[tank].ports))];
    const seen = run.look(nodes.flatMap((n) => [`${n}.gas`, `${n}.content`]));
    const gas = Math.max(0, ...nodes.map((n) => seen.get(`${n}.gas`)?.v.at(-1) ?? 0));
    const level = nodes.map((n) => seen.get(`${n}.content`)).find((s) => s !== undefined);
    const risen = level === undefined ? 0 : level.v[level.v.length - 1] - level.v[0];
    add(
      `Check the level of ${tank}${gas > TRACE ? ', and let the foam settle first' : ''}.`,
      `Its oil has ${risen < 0 ? 'fallen' : 'risen'} by `,
      volume(Math.abs(risen)),
      ...(gas > TRACE ? ['; ', volume(gas), ' of gas went into it.'] : ['.']),
    );
  }
  const lost = run.look(['outside.content']).get('outside.content')?.v;
  const overboard = lost === undefined ? 0 : lost[lost.length - 1] - lost[0];
  if (overboard > DROP)
    add(
      'Top up with the right fluid, and wipe up what went overboard.',
      volume(overboard),
      ' went overboard.',
    );
  add(
    'Swing the gear at least twice more on the normal system: times and order back to those of before.',
    worst.length > 0
      ? 'Gas that is left makes legs spring, doors and legs go out of order, and times longer.'
      : 'To see that nothing was forgotten.',
  );
  return steps;
}

/**
 * A normal swing with the gas that a blow-down has left still in the oil, to see what it does to
 * the times and the order.
 *
 * @throws RangeError when `card` names no card.
 */
export function followUpSwing(catalogues: Catalogues, run: Run, card: string): Run {
  return simulateWith(catalogues, run.scenario, { card, gas: gasLeft(run) });
}

/** A card to swing on the normal system: the first that pulls no blow-down handle and has no fault. */
function normalCard(scenario: Scenario, catalogues: Catalogues): string | undefined {
  const blown = blowDownCards(scenario, catalogues);
  return Object.entries(scenario.cards).find(
    ([name, card]) => !blown.includes(name) && card.faults.length === 0,
  )?.[0];
}

/**
 * What it does to the times of a normal swing that nobody has bled the gas; undefined when the
 * scenario has no card for one.
 */
export function followUp(catalogues: Catalogues, run: Run): FollowUp | undefined {
  const card = normalCard(run.scenario, catalogues);
  if (card === undefined) return undefined;
  const sound = simulateWith(catalogues, run.scenario, { card }).timings;
  return { card, sound, gassed: followUpSwing(catalogues, run, card).timings };
}

/** The ramps of a run's bays; none where no leg has one. */
export function rampCases({ scenario }: Run): readonly RampCase[] {
  return Object.entries(scenario.units).flatMap(([unit, { leg }]): RampCase[] => {
    const { parameters } = scenario.mechanisms[leg];
    const ramp = parameters.rampAngle === undefined ? undefined : rampMargin(parameters);
    if (ramp === undefined) return [];
    return [{ unit, ...ramp, broken: (parameters.linkShare as number) < 1 }];
  });
}
