import { stringify } from 'yaml';
import type { Catalogues } from '../define/catalogue.js';
import type { ParameterValue } from '../define/parameter.js';
import type {
  BayEntry,
  Card,
  CardStep,
  ComponentEntry,
  Condition,
  MechanismEntry,
  RuleEntry,
  Scenario,
} from '../define/scenario.js';
import { ALL, DRY } from './card.js';
import { LIMITS } from './limit.js';
import { lookUp } from './look-up.js';
import { BLANKED, blankedNode, kebab } from './names.js';
import { settingsOf, splitSetting } from './setting.js';
import { channelQuantity } from './world.js';
import { figure, figures, si, table } from './write-figure.js';

/**
 * Writes a scenario as YAML text in SI units, every figure in full, so that reading it gives the same
 * scenario again. Curves and link travels are written as tables; comments of the first file are lost.
 */
export function writeScenario(scenario: Scenario, catalogues: Catalogues): string {
  const {
    wheelwell,
    title,
    note,
    fluid,
    ambient,
    airspeed,
    sideslip,
    components,
    mechanisms,
    nodes,
    units,
    limits,
    rules,
    cards,
  } = scenario;
  const file = {
    wheelwell,
    title,
    note,
    fluid: {
      kind: fluid.kind,
      temperature: si(fluid.temperature, 'temperature'),
      'free-air': fluid.freeAir,
      thickness: fluid.thickness,
      'warmed-by': si(fluid.warmedBy, 'temperature'),
    },
    ambient: si(ambient, 'pressure'),
    airspeed: si(airspeed, 'speed'),
    sideslip: si(sideslip, 'angle'),
    components: each(components, (entry, name) => component(name, entry, catalogues)),
    mechanisms: each(mechanisms, (entry) => mechanism(entry, catalogues)),
    nodes: each(nodes, (node) => ({
      volume: si(node.volume, 'volume'),
      air: si(node.air, 'volume'),
      note: node.note,
    })),
    units: each(units, ({ bay, ...unit }) => ({ ...unit, ...(bay && { bay: bayText(bay) }) })),
    limits: Object.fromEntries(
      Object.entries(limits).flatMap(([name, value]) =>
        value === undefined ? [] : [[kebab(name), limit(name, value)]],
      ),
    ),
    rules: rules.map((rule) => ruleText(rule, scenario, catalogues)),
    cards: each(cards, (card) => cardText(card, scenario, catalogues)),
  };
  return stringify(file, { aliasDuplicateObjects: false, lineWidth: 100 });
}

function each<T>(
  entries: Readonly<Record<string, T>>,
  write: (entry: T, name: string) => unknown,
): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(entries).map(([name, entry]) => [name, write(entry, name)]),
  );
}

function component(
  name: string,
  entry: ComponentEntry,
  catalogues: Catalogues,
): Record<string, unknown> {
  const { is, note, ports, links, signals, parameters, place } = entry;
  const wires = Object.entries(signals);
  // A fault may have joined them to one another.
  const blanked = new Set(Object.keys(ports).map((port) => blankedNode(name, port)));
  return {
    is,
    note,
    ports: Object.fromEntries(
      Object.entries(ports).map(([port, node]) => [
        kebab(port),
        blanked.has(node) ? BLANKED : node,
      ]),
    ),
    links: Object.fromEntries(
      Object.entries(links).map(([link, { to, travel }]) => [
        kebab(link),
        { to, ...(travel && { table: table(travel, 'angle', 'length') }) },
      ]),
    ),
    ...(wires.length > 0 && {
      signals: Object.fromEntries(
        wires.map(([input, { device, signal }]) => [kebab(input), `${device}.${kebab(signal)}`]),
      ),
    }),
    ...(place && { place }),
    ...figures(parameters, lookUp(catalogues.components, is)?.parameters ?? {}),
  };
}

function mechanism(
  { is, note, driven, parameters }: MechanismEntry,
  catalogues: Catalogues,
): Record<string, unknown> {
  // A driven one starts where its driver puts it, and must not say itself.
  const { initial, ...others } = lookUp(catalogues.mechanisms, is)?.parameters ?? {};
  const written = driven === undefined && initial !== undefined ? { ...others, initial } : others;
  return {
    is,
    note,
    ...(driven && { driven: { by: driven.by, table: table(driven.angle, 'angle', 'angle') } }),
    ...figures(parameters, written),
  };
}

function bayText({ roof, walls, ends }: BayEntry): Record<string, unknown> {
  const lengths = (pair: readonly number[]) => pair.map((n) => si(n, 'length'));
  return { roof: si(roof, 'length'), walls: lengths(walls), ...(ends && { ends: lengths(ends) }) };
}

/** A limit that only a rule knows has no declared quantity: it is written as a plain number. */
function limit(name: string, value: number): string | number {
  return Object.hasOwn(LIMITS, name) ? si(value, LIMITS[name].quantity) : value;
}

function levels(
  channel: string,
  values: Record<string, number | undefined>,
  scenario: Scenario,
  catalogues: Catalogues,
): Record<string, unknown> {
  const quantity = channelQuantity(channel, scenario, catalogues);
  return {
    channel,
    ...Object.fromEntries(
      Object.entries(values).flatMap(([key, v]) =>
        v === undefined ? [] : [[key, si(v, quantity)]],
      ),
    ),
  };
}

function conditionText(condition: Condition, scenario: Scenario, catalogues: Catalogues): unknown {
  if ('device' in condition) return condition;
  return levels(
    condition.channel,
    { above: condition.above, below: condition.below },
    scenario,
    catalogues,
  );
}

function ruleText(
  rule: RuleEntry,
  scenario: Scenario,
  catalogues: Catalogues,
): Record<string, unknown> {
  const { condition, during, channel, low, high, limit: time, ...rest } = rule;
  return {
    ...rest,
    ...(condition && { condition: conditionText(condition, scenario, catalogues) }),
    ...(during && { during: conditionText(during, scenario, catalogues) }),
    ...(channel !== undefined && levels(channel, { low, high }, scenario, catalogues)),
    ...(time !== undefined && { limit: si(time, 'time') }),
  };
}

function cardText(card: Card, scenario: Scenario, catalogues: Catalogues): Record<string, unknown> {
  const { temperature, airspeed, sideslip, duration, set, steps, start, gas, ...rest } = card;
  return {
    ...rest,
    ...(temperature !== undefined && { temperature: si(temperature, 'temperature') }),
    ...(airspeed !== undefined && { airspeed: si(airspeed, 'speed') }),
    ...(sideslip !== undefined && { sideslip: si(sideslip, 'angle') }),
    duration: si(duration, 'time'),
    set: Object.fromEntries(
      Object.entries(set).map(([path, value]) => setting(path, value, scenario, catalogues)),
    ),
    start: each(start, (angle) => si(angle, 'angle')),
    gas: each(gas, (volume) => (volume >= ALL ? DRY : si(volume, 'volume'))),
    steps: steps.map((step) => stepText(step)),
  };
}

function setting(
  text: string,
  value: ParameterValue,
  scenario: Scenario,
  catalogues: Catalogues,
): [string, unknown] {
  const path = splitSetting(text);
  if (path === undefined) return [text, value];
  const { section, name, key } = path;
  const kind =
    section === 'components' || section === 'mechanisms' ? scenario[section][name]?.is : undefined;
  const definition = lookUp(settingsOf(section, kind, catalogues), key);
  const written = [section, ...(name === '' ? [] : [name]), kebab(key)].join('.');
  return [written, definition === undefined ? value : figure(value, definition)];
}

function stepText({ at, after, device, input, text }: CardStep): Record<string, unknown> {
  return { at: si(at, 'time'), ...(after && { after }), device, input: kebab(input), value: text };
}
