/** The swings of a sheet as something to play: a card without faults, under the conditions noted. */
import type { Card, Catalogues, Parameters, Scenario } from '../../define/index.js';
import { simulateWith } from '../../machine/index.js';
import {
  expectedSwings,
  type ObservationConditions,
  type ObservationSheet,
  type ObservedSwing,
  type SwingDirection,
} from '../../observation/index.js';
import { blowDownCards, namesOf } from '../blow-down/card.js';

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

/** Setups of a sheet, and for each of its swings the place of its setup. */
export function setupsOf(
  catalogues: Catalogues,
  scenario: Scenario,
  sheet: ObservationSheet,
): { readonly setups: readonly Setup[]; readonly of: readonly number[] } {
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
  return { setups: setups.map((s) => shortened(catalogues, s)), of };
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

function under(
  catalogues: Catalogues,
  scenario: Scenario,
  name: string,
  c: ObservationConditions,
): { scenario: Scenario; card: string } {
  const card: Card = {
    ...scenario.cards[name],
    faults: [],
    ...(c.temperature !== undefined && { temperature: c.temperature }),
  };
  const supplies = namesOf(scenario, catalogues, 'supply');
  const components = { ...scenario.components };
  for (const supply of supplies) {
    const { parameters } = components[supply];
    components[supply] = {
      ...components[supply],
      parameters: {
        ...parameters,
        ...(c.supplyFlow !== undefined && 'flow' in parameters && { flow: c.supplyFlow }),
        ...(c.supplyPressure !== undefined &&
          'pressure' in parameters && { pressure: c.supplyPressure }),
      },
    };
  }
  const mechanisms = Object.fromEntries(
    Object.entries(scenario.mechanisms).map(([part, entry]) => {
      const loose = c.doors === 'disconnected' && catalogues.mechanisms[entry.is].role === 'door';
      const more: Parameters = {
        ...(c.attitude !== undefined && 'pitch' in entry.parameters && { pitch: c.attitude }),
        ...(loose && LOOSE),
      };
      return [part, { ...entry, parameters: { ...entry.parameters, ...more } }];
    }),
  );
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
