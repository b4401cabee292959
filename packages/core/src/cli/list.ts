import type { Catalogues, ParameterDefinition, ParameterDefinitions } from '../define/index.js';
import { didYouMean, toDisplay, type DisplaySystem } from '../quantity/index.js';
import { kebab } from '../scenario/index.js';
import { BadInput } from './io.js';

/** What can be listed. */
export const LISTS = ['devices', 'faults', 'rules', 'fluids'] as const;
export type List = (typeof LISTS)[number];

interface Entry {
  readonly title: string;
  readonly full: (units: DisplaySystem) => readonly string[];
}

/** Names and titles of a catalogue, or one entry of it in full. */
export function list(
  catalogues: Catalogues,
  what: List,
  name: string | undefined,
  units: DisplaySystem,
): string {
  const entries = entriesOf(catalogues, what);
  const names = Object.keys(entries);
  if (name === undefined) {
    const width = Math.max(0, ...names.map((n) => n.length));
    return names.map((n) => `${n.padEnd(width)}  ${entries[n].title}\n`).join('');
  }
  if (!names.includes(name)) {
    const near = didYouMean(name, names);
    throw new BadInput(
      `nothing named ${name} among the ${what}${near === '' ? '' : ` (${near})`}; wheelwell list ${what} shows them all`,
    );
  }
  return [`${name}: ${entries[name].title}`, ...entries[name].full(units)].join('\n') + '\n';
}

function entriesOf(c: Catalogues, what: List): Readonly<Record<string, Entry>> {
  switch (what) {
    case 'devices':
      return map({ ...c.components, ...c.mechanisms }, (d) => (units) => [
        d.summary,
        `Source: ${d.source}`,
        ...('ports' in d && Object.keys(d.ports).length > 0
          ? [
              `Ports: ${Object.entries(d.ports)
                .map(([n, p]) => (p.optional ? `${kebab(n)} (optional)` : kebab(n)))
                .join(', ')}`,
            ]
          : []),
        ...('links' in d && d.links
          ? [`Links: ${Object.keys(d.links).map(kebab).join(', ')}`]
          : []),
        ...('modes' in d && d.modes ? [`Modes: ${Object.keys(d.modes).join(', ')}`] : []),
        ...('inputs' in d && d.inputs
          ? [
              `Inputs: ${Object.entries(d.inputs)
                .map(([n, i]) => `${kebab(n)} (${i.choices?.join(', ') ?? i.quantity})`)
                .join('; ')}`,
            ]
          : []),
        ...parameters(d.parameters, units),
      ]);
    case 'faults':
      return map(c.faults, (f) => () => [
        `What it is: ${f.meaning}`,
        `How it shows: ${f.shows}`,
        `How it is confirmed: ${f.confirm}`,
        `How it is put right: ${f.remedy}`,
        `Caution: ${f.caution}`,
        `Severity: 0 (none) to 1 (${f.worst})`,
        `Befalls: ${f.befalls.join(', ')}`,
        `How often: ${f.prior}, ${f.priorWhy}`,
        `Source: ${f.source}`,
      ]);
    case 'rules':
      return map(c.rules, (r) => () => [
        r.summary,
        `Kind: ${r.kind}`,
        `Limits: ${r.limits.length === 0 ? 'none' : r.limits.map(kebab).join(', ')}`,
        `Source: ${r.source}`,
      ]);
    case 'fluids':
      return map(c.fluids, (f) => (units) => [
        f.summary,
        ...f.viscosity.map(
          (p) =>
            `Viscosity: ${toDisplay(p.viscosity, 'viscosity', units).text} at ${toDisplay(p.temperature, 'temperature', units).text}`,
        ),
        `Density: ${toDisplay(f.density, 'density', units).text} at ${toDisplay(f.densityAt, 'temperature', units).text}`,
        `Bulk modulus: ${toDisplay(f.bulkModulus, 'gauge-pressure', units).text}`,
        `Vapour pressure: ${toDisplay(f.vapourPressure, 'pressure', units).text}`,
        `Source: ${f.source}`,
      ]);
  }
}

function map<T extends { readonly title: string }>(
  record: Readonly<Record<string, T>>,
  full: (item: T) => Entry['full'],
): Readonly<Record<string, Entry>> {
  return Object.fromEntries(
    Object.entries(record).map(([name, item]) => [name, { title: item.title, full: full(item) }]),
  );
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
