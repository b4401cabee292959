/** A card under the conditions of a sheet, or of a check. */
import type {
  Card,
  Catalogues,
  CheckConditions,
  Parameters,
  Scenario,
} from '../../define/index.js';
import type { ObservationConditions } from '../../observation/index.js';
import { namesOf } from '../blow-down/card.js';

/** The scenario with one card under what was noted; the card's own faults stay. @throws RangeError for an oil nobody knows */
export function underConditions(
  catalogues: Catalogues,
  scenario: Scenario,
  name: string,
  c: ObservationConditions,
): Scenario {
  if (c.fluid !== undefined && !Object.hasOwn(catalogues.fluids, c.fluid))
    throw new RangeError(`there is no oil called ${c.fluid}`);
  const { scenario: made } = under(catalogues, scenario, name, c);
  const { faults } = scenario.cards[name];
  return { ...made, cards: { ...made.cards, [name]: { ...made.cards[name], faults } } };
}

/** Of what was noted that which the scenario does not say already: without the rest the card is the same. */
export function telling(
  catalogues: Catalogues,
  scenario: Scenario,
  name: string,
  noted: ObservationConditions,
): ObservationConditions {
  const made = (c: ObservationConditions): string =>
    JSON.stringify(under(catalogues, scenario, name, c).scenario);
  const usual = made({});
  return Object.fromEntries(
    Object.entries(noted).filter(
      ([condition, value]: [string, unknown]) => made({ [condition]: value }) !== usual,
    ),
  );
}

/** A door taken off its linkage still hangs there in the model: as light as its kind allows, and free. */
const LOOSE: Parameters = { sealMoment: 0, friction: 0 };

/** The card under what was noted, and under what a check changes of it; undefined where that changes nothing. */
export function under(
  catalogues: Catalogues,
  scenario: Scenario,
  name: string,
  c: ObservationConditions,
): { scenario: Scenario; card: string };
export function under(
  catalogues: Catalogues,
  scenario: Scenario,
  name: string,
  c: ObservationConditions,
  change: CheckConditions,
): { scenario: Scenario; card: string } | undefined;
export function under(
  catalogues: Catalogues,
  scenario: Scenario,
  name: string,
  c: ObservationConditions,
  { flowShare = 1, warmer = 0, doors }: CheckConditions = {},
): { scenario: Scenario; card: string } | undefined {
  const own = scenario.cards[name];
  const usual = own.temperature ?? scenario.fluid.temperature;
  const temperature = (c.temperature ?? usual) + warmer;
  const card: Card = {
    ...own,
    faults: [],
    ...(temperature !== usual && { temperature }),
  };
  let changed = warmer !== 0;
  let given = 1;
  const off = (doors ?? c.doors) === 'disconnected';
  const supplies = namesOf(scenario, catalogues, 'supply');
  const components = { ...scenario.components };
  for (const supply of supplies) {
    const { parameters } = components[supply];
    const flow = c.supplyFlow ?? (parameters.flow as number);
    changed ||= flowShare !== 1 && 'flow' in parameters;
    if ('flow' in parameters)
      given = Math.min(given, (flow * flowShare) / (parameters.flow as number));
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
      cards: { ...scenario.cards, [name]: charged(card, supplies, given) },
    },
  };
}

/** Of a supply that gives less than this share nobody waits for it as long as it takes. */
const PATIENCE = 0.1;

/**
 * A supply that gives less is waited for before the gear is selected: to fill an accumulator takes it as much longer.
 *
 * @param given what it gives, as a share of what the card's times were made for
 */
function charged(card: Card, supplies: readonly string[], given: number): Card {
  const on = card.steps.findIndex(({ device, after }) => supplies.includes(device) && !after);
  const next = on < 0 ? undefined : card.steps[on + 1];
  if (next === undefined || !(given < 1)) return card;
  const wait = (next.at - card.steps[on].at) * (1 / Math.max(given, PATIENCE) - 1);
  const steps = card.steps.map((step, i) =>
    i > on && step.after === undefined ? { ...step, at: step.at + wait } : step,
  );
  return { ...card, steps, duration: card.duration + wait };
}
