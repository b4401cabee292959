/** The swings of a sheet as something to play: a card without faults, under the conditions noted. */
import type {
  Card,
  Catalogues,
  CheckConditions,
  Parameters,
  Scenario,
} from '../../define/index.js';
import { simulateWith } from '../../machine/index.js';
import {
  expectedSwings,
  type ObservationConditions,
  type ObservationSheet,
  type ObservedSwing,
  type SwingDirection,
} from '../../observation/index.js';
import { blowDownCards, namesOf } from '../blow-down/card.js';
import { swingChecks } from './next-check.js';

export interface Setup {
  /** The same for the same card under the same conditions. */
  readonly key: string;
  readonly scenario: Scenario;
  readonly card: string;
  /** The ways that the swings of the sheet went under it. */
  readonly directions: ReadonlySet<SwingDirection>;
}

/** A door taken off its linkage still hangs there in the model: as light as its kind allows, and free. */
const LOOSE: Parameters = { sealMoment: 0, friction: 0 };

/** The setups of a sheet, then those of the swings that could be made next. */
export interface Setups {
  readonly setups: readonly Setup[];
  /** For each swing of the sheet the place of its setup. */
  readonly of: readonly number[];
  /** How many are the sheet's own. */
  readonly own: number;
  /** Which check the others stand for. */
  readonly checks: readonly string[];
}

export function setupsOf(
  catalogues: Catalogues,
  scenario: Scenario,
  sheet: ObservationSheet,
): Setups {
  const keys: string[] = [];
  const setups: (Setup & { directions: Set<SwingDirection> })[] = [];
  const of = sheet.swings.map((swing) => {
    const conditions = { ...sheet.conditions, ...swing.conditions };
    const card = cardFor(catalogues, scenario, sheet, swing);
    const key = JSON.stringify([card, conditions]);
    let place = keys.indexOf(key);
    if (place < 0) {
      place = keys.push(key) - 1;
      setups.push({
        key,
        ...under(catalogues, scenario, card, conditions),
        directions: new Set(),
      });
    }
    setups[place].directions.add(swing.direction);
    return place;
  });
  const own = setups.length;
  const first = sheet.swings.find((s) => s.direction !== 'blow-down');
  const checks: string[] = [];
  if (first !== undefined) {
    const card = cardFor(catalogues, scenario, sheet, first);
    const conditions = { ...sheet.conditions, ...first.conditions };
    const directions = new Set(sheet.swings.map((s) => s.direction));
    for (const [kind, change] of swingChecks()) {
      const made = under(catalogues, scenario, card, conditions, change);
      if (made === undefined) continue;
      setups.push({ key: `${kind} ${JSON.stringify([card, conditions])}`, ...made, directions });
      checks.push(kind);
    }
  }
  return { setups: setups.map((s) => shortened(catalogues, s)), of, own, checks };
}

/** The sheet's card; else the first that has no faults of its own and goes the way asked for. */
function cardFor(
  catalogues: Catalogues,
  scenario: Scenario,
  sheet: ObservationSheet,
  swing: ObservedSwing,
): string {
  const blown = blowDownCards(scenario, catalogues);
  const fits = (name: string): boolean =>
    blown.includes(name) === (swing.direction === 'blow-down');
  if (Object.hasOwn(scenario.cards, sheet.card) && fits(sheet.card)) return sheet.card;
  const names = Object.keys(scenario.cards).filter(fits);
  return (
    names.find((name) => scenario.cards[name].faults.length === 0) ??
    names[0] ??
    Object.keys(scenario.cards)[0]
  );
}

/** The card under what was noted, and under what a check changes of it; undefined where that changes nothing. */
function under(
  catalogues: Catalogues,
  scenario: Scenario,
  name: string,
  c: ObservationConditions,
): { scenario: Scenario; card: string };
function under(
  catalogues: Catalogues,
  scenario: Scenario,
  name: string,
  c: ObservationConditions,
  change: CheckConditions,
): { scenario: Scenario; card: string } | undefined;
function under(
  catalogues: Catalogues,
  scenario: Scenario,
  name: string,
  c: ObservationConditions,
  { flowShare = 1, warmer = 0, doors }: CheckConditions = {},
): { scenario: Scenario; card: string } | undefined {
  const own = scenario.cards[name];
  const temperature = c.temperature ?? own.temperature ?? scenario.fluid.temperature;
  const card: Card = {
    ...own,
    faults: [],
    ...((warmer !== 0 || c.temperature !== undefined) && { temperature: temperature + warmer }),
  };
  let changed = warmer !== 0;
  const off = (doors ?? c.doors) === 'disconnected';
  const supplies = namesOf(scenario, catalogues, 'supply');
  const components = { ...scenario.components };
  for (const supply of supplies) {
    const { parameters } = components[supply];
    const flow = c.supplyFlow ?? (parameters.flow as number);
    changed ||= flowShare !== 1 && 'flow' in parameters;
    components[supply] = {
      ...components[supply],
      parameters: {
        ...parameters,
        ...('flow' in parameters && { flow: flow * flowShare }),
        ...(c.supplyPressure !== undefined &&
          'pressure' in parameters && { pressure: c.supplyPressure }),
      },
    };
  }
  const mechanisms = Object.fromEntries(
    Object.entries(scenario.mechanisms).map(([part, entry]) => {
      const loose = off && catalogues.mechanisms[entry.is].role === 'door';
      changed ||= loose && c.doors !== 'disconnected';
      const more: Parameters = {
        ...(c.attitude !== undefined && 'pitch' in entry.parameters && { pitch: c.attitude }),
        ...(loose && LOOSE),
      };
      return [part, { ...entry, parameters: { ...entry.parameters, ...more } }];
    }),
  );
  const isCheck = flowShare !== 1 || warmer !== 0 || doors !== undefined;
  if (isCheck && !changed) return undefined;
  const fluid = { ...scenario.fluid, ...(c.fluid !== undefined && { kind: c.fluid }) };
  return {
    card: name,
    scenario: {
      ...scenario,
      components,
      mechanisms,
      fluid,
      cards: { ...scenario.cards, [name]: card },
    },
  };
}

/** Ends the card where the first movement begins that nobody asks for. */
function shortened(catalogues: Catalogues, setup: Setup): Setup {
  const { scenario, card: name, directions } = setup;
  const moves = expectedSwings(
    simulateWith(catalogues, scenario, { card: name, tolerance: 'draft' }),
  );
  const last = moves.findLastIndex((m) => directions.has(m.direction));
  const next = moves[last + 1];
  if (last < 0 || next === undefined) return setup;
  const card = { ...scenario.cards[name], duration: next.start };
  // How far it is played belongs to what it is.
  const key = `${setup.key} ${next.start}`;
  return { ...setup, key, scenario: { ...scenario, cards: { ...scenario.cards, [name]: card } } };
}
