/** Every figure of a scenario that can be changed in place, with its range, default and reason. */
import { catalogues, OWN_PARAMETERS } from '@wheelwell/core';
import type {
  Card,
  HeldScenario,
  ParameterDefinition,
  ParameterDefinitions,
  ParameterValue,
  Scenario,
} from '@wheelwell/core';
import type { ParameterFacts, ParameterGroup } from './parameters-message.js';

/** `freeAir` -> `free-air`: as the file has it. */
const kebab = (name: string): string => name.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`);
const camel = (name: string): string =>
  name.replace(/-([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());

export function parametersOf(held: HeldScenario): readonly ParameterGroup[] {
  const { scenario } = held.read();
  if (scenario === undefined) return [];
  const group = (
    name: string,
    title: string,
    note: string,
    base: string,
    definitions: ParameterDefinitions,
    values: Readonly<Record<string, ParameterValue | undefined>>,
  ): ParameterGroup => ({
    name,
    title,
    note,
    parameters: Object.entries(definitions).map(([key, d]) =>
      factsOf(held, [...(base === '' ? [] : [base]), kebab(key)].join('.'), d, values[key]),
    ),
  });
  const { ambient, airspeed, fluid, limits, nodes } = scenario;
  const oils: ParameterDefinition = {
    type: 'choice',
    title: 'which oil',
    why: 'the aircraft is approved for it',
    choices: Object.keys(catalogues.fluids),
  };
  return [
    ...Object.entries(scenario.cards).map(([name, card]) => cardGroup(held, scenario, name, card)),
    ...Object.entries(scenario.components).map(([name, e]) => {
      const kind = catalogues.components[e.is];
      return group(
        name,
        kind?.title ?? e.is,
        e.note,
        `components.${name}`,
        kind?.parameters ?? {},
        e.parameters,
      );
    }),
    ...Object.entries(scenario.mechanisms).map(([name, e]) => {
      const kind = catalogues.mechanisms[e.is];
      const { initial, ...others } = kind?.parameters ?? {};
      // A driven one starts where its driver puts it.
      const own = e.driven === undefined && initial !== undefined ? { ...others, initial } : others;
      return group(name, kind?.title ?? e.is, e.note, `mechanisms.${name}`, own, e.parameters);
    }),
    ...Object.entries(nodes).map(([name, { volume, air, note }]) =>
      group(name, 'Node', note, `nodes.${name}`, OWN_PARAMETERS.nodes, { volume, air }),
    ),
    group('fluid', 'Oil', '', 'fluid', { kind: oils, ...OWN_PARAMETERS.fluid }, { ...fluid }),
    group('surroundings', 'Surroundings', '', '', OWN_PARAMETERS.surroundings, {
      ambient,
      airspeed,
    }),
    group('limits', 'Limits of the test', '', 'limits', OWN_PARAMETERS.limits, limits),
  ];
}

/** A card's conditions, what it sets, and when the operator acts. */
function cardGroup(
  held: HeldScenario,
  scenario: Scenario,
  name: string,
  card: Card,
): ParameterGroup {
  const base = `cards.${name}`;
  const { duration, temperature, airspeed } = OWN_PARAMETERS.card;
  const own = (key: string, d: ParameterDefinition, value: number | undefined): ParameterFacts =>
    factsOf(held, `${base}.${key}`, d, value);
  const set = Object.entries(card.set).flatMap(([path, value]) => {
    const definition = definitionAt(scenario, path);
    if (definition === undefined) return [];
    const [section = '', ...rest] = path.split('.');
    const of = rest.slice(0, -1).map(plain).join(' ') || section;
    const title = `${of}: ${definition.title}`;
    return [factsOf(held, `${base}.set.${kebab(path)}`, { ...definition, title }, value)];
  });
  const steps = card.steps.flatMap((step, i) => {
    const path = `${base}.steps.${i}.at`;
    if (held.written(path) === undefined) return [];
    const after =
      step.after === undefined ? '' : `, after ${plain(step.after.device)} ${step.after.to}`;
    const title = `${plain(step.device)} ${step.text}${after}: when`;
    return [factsOf(held, path, { ...STEP, title }, step.at)];
  });
  return {
    name: base,
    title: card.title,
    note: card.note,
    parameters: [
      own('duration', duration, card.duration),
      own('temperature', temperature, card.temperature),
      own('airspeed', airspeed, card.airspeed),
      ...set,
      ...steps,
    ],
  };
}

const STEP = {
  why: 'when the operator acts: from the start, or from the event it waits for',
  quantity: 'time',
  range: [0, 3600],
} as const;

const plain = (name: string): string => name.replaceAll('-', ' ');

/** The definition behind a path as a card that was read has it. */
function definitionAt(scenario: Scenario, path: string): ParameterDefinition | undefined {
  const [section, name = '', key = ''] = path.split('.');
  if (section === 'fluid') return (OWN_PARAMETERS.fluid as ParameterDefinitions)[name];
  if (section === 'nodes') return (OWN_PARAMETERS.nodes as ParameterDefinitions)[key];
  if (section !== 'components' && section !== 'mechanisms') return undefined;
  return catalogues[section][scenario[section][name]?.is ?? '']?.parameters[key];
}

function factsOf(
  held: HeldScenario,
  path: string,
  d: ParameterDefinition,
  value: ParameterValue | undefined,
): ParameterFacts {
  const written = held.written(path) ?? '';
  const { title, why } = d;
  const own = typeof value === 'object' ? undefined : value;
  const common = { path, title, why, written, ...(own !== undefined && { value: own }) };
  switch (d.type) {
    case 'choice':
      return {
        ...common,
        kind: 'choice',
        choices: d.choices,
        ...(d.default !== undefined && { usual: d.default }),
      };
    case 'switch':
      return { ...common, kind: 'switch', usual: d.default };
    case 'shape':
    case 'point':
    case 'state-table':
      return { ...common, kind: 'text', value: written };
    default: {
      const { quantity, range, default: usual } = d;
      const difference = d === OWN_PARAMETERS.fluid.warmedBy || path.endsWith('fluid.warmed-by');
      return {
        ...common,
        kind: 'number',
        quantity,
        range,
        ...(difference && { difference }),
        ...(usual !== undefined && { usual }),
      };
    }
  }
}

/** The figures in force at some paths, SI; of those that are one figure or word. */
export function figuresAt(
  scenario: Scenario,
  paths: readonly string[],
): Readonly<Record<string, number | string | boolean>> {
  return Object.fromEntries(
    paths.flatMap((path) => {
      const value = figureAt(scenario, path.split('.'));
      return typeof value === 'object' || value === undefined ? [] : [[path, value] as const];
    }),
  );
}

function figureAt(scenario: Scenario, words: readonly string[]): ParameterValue | undefined {
  const [section = '', name = '', key = '', ...rest] = words;
  switch (section) {
    case 'components':
    case 'mechanisms':
      return rest.length > 0 ? undefined : scenario[section][name]?.parameters[camel(key)];
    case 'cards': {
      const card = scenario.cards[name];
      if (key === 'set')
        return card?.set[[...rest.slice(0, -1), camel(rest.at(-1) ?? '')].join('.')];
      if (key === 'steps') return card?.steps[Number(rest[0])]?.at;
      return key === 'duration' || key === 'temperature' || key === 'airspeed'
        ? card?.[key]
        : undefined;
    }
    case 'fluid':
      return { ...scenario.fluid }[camel(name) as keyof Scenario['fluid']];
    case 'limits':
      return scenario.limits[camel(name)];
    case 'nodes':
      return key === 'volume' || key === 'air' ? scenario.nodes[name]?.[key] : undefined;
    case 'ambient':
    case 'airspeed':
      return scenario[section];
    default:
      return undefined;
  }
}
