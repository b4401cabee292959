/** What each list knows of its entries: a line for the list, and everything for one of them. */
import type {
  Catalogues,
  FluidDefinition,
  ParameterDefinition,
  ParameterDefinitions,
} from '../define/index.js';
import { toDisplay, type DisplaySystem } from '../quantity/index.js';
import { kebab, LIMITS } from '../scenario/index.js';

/** What can be listed. */
export const LISTS = ['devices', 'faults', 'rules', 'limits', 'fluids'] as const;
export type List = (typeof LISTS)[number];

/** Further columns of a list, after name and title. */
export const COLUMNS: Readonly<Record<List, readonly string[]>> = {
  devices: ['faults it can have'],
  faults: ['how often', 'befalls'],
  rules: ['limits it reads'],
  limits: ['range'],
  fluids: ['viscosity at 40 degC'],
};

export interface Entry {
  readonly title: string;
  /** Heading it stands under; none where the list has no parts. */
  readonly group?: string;
  /** What tells it from its neighbours at a glance, a cell for each of its list's columns. */
  readonly brief: (units: DisplaySystem) => readonly string[];
  /** What a word is looked for in, besides name, title, group and cells. */
  readonly about: string;
  readonly full: (units: DisplaySystem) => readonly string[];
}

export function entriesOf(c: Catalogues, what: List): Readonly<Record<string, Entry>> {
  switch (what) {
    case 'devices':
      return map(
        { ...c.components, ...c.mechanisms },
        (d) => () => [some(faultsOf(c, d.kind))],
        (d) => (units) => [
          d.summary,
          `Source: ${d.source}`,
          ...titled('Ports', 'ports' in d ? d.ports : {}, (p) =>
            p.optional ? `${p.title}; optional` : p.title,
          ),
          ...titled('Links', ('links' in d && d.links) || {}, (l) => l.title),
          ...titled('Modes', ('modes' in d && d.modes) || {}, (m) => m.title),
          ...titled('Inputs', ('inputs' in d && d.inputs) || {}, (i) =>
            [i.title, i.choices?.join(' | ') ?? i.quantity ?? ''].join('; '),
          ),
          ...titled('Signals', ('signals' in d && d.signals) || {}, (g) => g.title),
          ...parameters(d.parameters, units),
          `Faults: ${faultsOf(c, d.kind).join(', ') || 'none'}`,
        ],
      );
    case 'faults':
      return map(
        c.faults,
        (f) => () => [f.prior, some(f.befalls)],
        (f) => () => [
          `What it is: ${f.meaning}`,
          `How it shows: ${f.shows}`,
          `How it is confirmed: ${f.confirm}`,
          `How it is put right: ${f.remedy}`,
          `Caution: ${f.caution}`,
          `Severity: 0 (none) to 1 (${f.worst})`,
          `Befalls: ${f.befalls.join(', ')} (${f.group})`,
          `How often: ${f.prior}. ${f.priorWhy}`,
          `Source: ${f.source}`,
        ],
        (f) => `${f.meaning} ${f.shows}`,
      );
    case 'rules':
      return map(
        c.rules,
        (r) => () => [r.limits.map(kebab).join(', ')],
        (r) => () => [
          r.summary,
          `Kind: ${r.kind}`,
          `Limits: ${r.limits.length === 0 ? 'none' : r.limits.map(kebab).join(', ')}`,
          `Source: ${r.source}`,
        ],
      );
    case 'limits':
      return Object.fromEntries(
        Object.entries(LIMITS).map(([name, limit]) => {
          const readers = Object.values(c.rules).filter((rule) => rule.limits.includes(name));
          return [
            kebab(name),
            {
              title: limit.about,
              brief: (units) => [range(limit.range, limit.quantity, units)],
              about: '',
              full: (units) => [
                `${limit.quantity}, ${range(limit.range, limit.quantity, units)}`,
                `Rules: ${readers.map((rule) => rule.name).join(', ')}`,
              ],
            },
          ];
        }),
      );
    case 'fluids':
      return map(
        c.fluids,
        (f) => (units) => [warm(f, units)],
        (f) => (units) => [
          f.summary,
          ...f.viscosity.map(
            (p) =>
              `Viscosity: ${toDisplay(p.viscosity, 'viscosity', units).text} at ${toDisplay(p.temperature, 'temperature', units).text}`,
          ),
          `Density: ${toDisplay(f.density, 'density', units).text} at ${toDisplay(f.densityAt, 'temperature', units).text}`,
          `Bulk modulus: ${toDisplay(f.bulkModulus, 'gauge-pressure', units).text}`,
          `Vapour pressure: ${toDisplay(f.vapourPressure, 'pressure', units).text}`,
          `Faults: ${faultsOf(c, 'fluid').join(', ') || 'none'}`,
          `Source: ${f.source}`,
        ],
      );
  }
}

function map<T extends { readonly title: string; readonly summary?: string; group?: string }>(
  record: Readonly<Record<string, T>>,
  brief: (item: T) => Entry['brief'],
  full: (item: T) => Entry['full'],
  about: (item: T) => string = (item) => item.summary ?? '',
): Readonly<Record<string, Entry>> {
  return Object.fromEntries(
    Object.entries(record).map(([name, item]) => [
      name,
      {
        title: item.title,
        group: item.group,
        brief: brief(item),
        about: about(item),
        full: full(item),
      },
    ]),
  );
}

/** A heading and one line for each named thing; nothing when there are none. */
function titled<T>(
  heading: string,
  things: Readonly<Record<string, T>>,
  say: (thing: T) => string,
): readonly string[] {
  const lines = Object.entries(things).map(([name, thing]) => {
    const said = say(thing);
    return said === '' || said === name ? `  ${kebab(name)}` : `  ${kebab(name)}: ${said}`;
  });
  return lines.length === 0 ? [] : [`${heading}:`, ...lines];
}

/** Few names; of many the first and how many more there are. */
function some(names: readonly string[]): string {
  if (names.length <= 2) return names.join(', ');
  return `${names[0]} and ${names.length - 1} more`;
}

function faultsOf({ faults }: Catalogues, kind: string): readonly string[] {
  return Object.keys(faults).filter((name) => faults[name].befalls.includes(kind));
}

/** 40 degC, where oils are graded, K. */
const GRADED = 313.15;

function warm({ viscosity }: FluidDefinition, units: DisplaySystem): string {
  const point = viscosity.find((p) => Math.abs(p.temperature - GRADED) < 1);
  return point === undefined ? '' : toDisplay(point.viscosity, 'viscosity', units).text;
}

function parameters(definitions: ParameterDefinitions, units: DisplaySystem): readonly string[] {
  const all = Object.entries(definitions);
  if (all.length === 0) return [];
  return [
    'Parameters:',
    ...all.flatMap(([name, p]) => [
      `  ${kebab(name)}: ${p.title}`,
      `    ${allowed(p, units)}; ${byDefault(p, units)}`,
      `    ${p.why}`,
    ]),
  ];
}

function allowed(p: ParameterDefinition, units: DisplaySystem): string {
  switch (p.type) {
    case 'choice':
      return `one of ${p.choices.join(', ')}`;
    case 'switch':
      return 'yes or no';
    case 'shape':
      return `${p.gives} against ${p.of} (${p.variable}), each value ${range(p.range, p.gives, units)}`;
    case 'state-table':
      return 'states with what they drive and what comes next';
    case 'point':
      return `two lengths, each ${range(p.range, 'length', units)}`;
    default:
      return `${p.quantity}, ${range(p.range, p.quantity, units)}`;
  }
}

function range(
  [low, high]: readonly [number, number],
  quantity: Parameters<typeof toDisplay>[1],
  units: DisplaySystem,
): string {
  return `${toDisplay(low, quantity, units).text} to ${toDisplay(high, quantity, units).text}`;
}

function byDefault(p: ParameterDefinition, units: DisplaySystem): string {
  if (p.default === undefined) return 'required';
  switch (p.type) {
    case 'choice':
      return `default ${p.default}`;
    case 'switch':
      return `default ${p.default === true ? 'yes' : 'no'}`;
    case 'shape':
      return `default a table of ${p.default === undefined ? 0 : p.default.x.length} points`;
    case 'point':
      return `default ${p.default?.map((x) => toDisplay(x, 'length', units).text).join(', ')}`;
    default:
      return `default ${toDisplay(p.default, p.quantity, units).text}`;
  }
}
