import type { Card, Catalogues, Scenario } from '../../define/index.js';
import type { BlowDownCondition } from './shapes.js';

/** Names of the components of a role. */
export function namesOf(scenario: Scenario, catalogues: Catalogues, role: string): string[] {
  return Object.entries(scenario.components).flatMap(([name, { is }]) =>
    catalogues.components[is].role === role ? [name] : [],
  );
}

/** Whether a card pulls a blow-down handle. */
function pulls(card: Card, valves: readonly string[]): boolean {
  return card.steps.some((s) => valves.includes(s.device) && s.value > 0);
}

/** The cards that pull a blow-down handle. */
export function blowDownCards(scenario: Scenario, catalogues: Catalogues): string[] {
  const valves = namesOf(scenario, catalogues, 'blow-down');
  return Object.entries(scenario.cards).flatMap(([name, card]) =>
    pulls(card, valves) ? [name] : [],
  );
}

/**
 * The card to play: the named one, or the first that pulls a blow-down handle.
 *
 * @throws RangeError when there is none, or the named one pulls no handle.
 */
export function blowDownCard(scenario: Scenario, catalogues: Catalogues, name?: string): string {
  const valves = namesOf(scenario, catalogues, 'blow-down');
  const fitting = blowDownCards(scenario, catalogues);
  if (valves.length === 0) throw new RangeError('the scenario has no blow-down valve');
  if (name === undefined) {
    if (fitting.length === 0) throw new RangeError('no card pulls a blow-down handle');
    return fitting[0];
  }
  if (fitting.includes(name)) return name;
  throw new RangeError(`card ${name} pulls no blow-down handle; these do: ${fitting.join(', ')}`);
}

/**
 * The bottle whose charge is looked at: the first of the scenario.
 *
 * @throws RangeError when there is none.
 */
export function bottleOf(scenario: Scenario, catalogues: Catalogues): string {
  const [bottle] = namesOf(scenario, catalogues, 'gas-supply');
  if (bottle === undefined) throw new RangeError('the scenario has no gas bottle');
  return bottle;
}

/** The scenario with one of its cards under other conditions. */
export function under(
  scenario: Scenario,
  catalogues: Catalogues,
  name: string,
  { charge, temperature, third }: BlowDownCondition,
): Scenario {
  const card = scenario.cards[name];
  const set = {
    ...card.set,
    [`components.${bottleOf(scenario, catalogues)}.charge`]: charge,
    ...(third && { [third.path]: third.value }),
  };
  return { ...scenario, cards: { ...scenario.cards, [name]: { ...card, set, temperature } } };
}
