import { describe, expect, it } from 'vitest';
import { SI_UNIT } from '../../packages/core/src/define/index.js';
import type { ParameterDefinition } from '../../packages/core/src/define/index.js';
import { CATALOGUES, loadCatalogue } from './catalogue.js';
import { filesIn } from './files.js';

const KEBAB = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;
const CAMEL = /^[a-z][a-zA-Z0-9]*$/;

const catalogues = await Promise.all(CATALOGUES.map(({ room, key }) => loadCatalogue(room, key)));

describe.each(catalogues.filter(({ definitions }) => definitions.length > 0))(
  'packages/core/src/$room',
  ({ definitions, listed }) => {
    it('lists every definition in its index', () => {
      const missing = definitions.filter(({ value }) => !listed?.has(value));
      expect(missing.map(({ file }) => file)).toEqual([]);
    });

    it('names each file after the one definition in it', () => {
      const odd = definitions.filter(({ stem, name }) => stem !== name);
      expect(odd.map(({ file, name }) => `${file} defines ${name}`)).toEqual([]);
      expect(new Set(definitions.map(({ file }) => file)).size).toBe(definitions.length);
    });

    it('writes names in kebab-case, and in camelCase where code reads them', () => {
      expect(definitions.map(({ name }) => name).filter((name) => !KEBAB.test(name))).toEqual([]);
      const members = definitions.flatMap(({ file, value }) =>
        ['parameters', 'ports', 'links', 'states', 'inputs', 'flows', 'readings', 'signals']
          .flatMap((part) => Object.keys(value[part] ?? {}))
          .filter((name) => !CAMEL.test(name))
          .map((name) => `${file}: ${name}`),
      );
      expect(members).toEqual([]);
    });

    it('tells the title and the source of each definition', () => {
      const silent = definitions.filter(
        ({ value }) => !isSentence(value.title, 3) || !isSentence(value.source, 10),
      );
      expect(silent.map(({ file }) => file)).toEqual([]);
    });

    it('gives every parameter a quantity, a range and the reason for its figures', () => {
      const poor = definitions.flatMap(({ file, parameters }) =>
        Object.entries(parameters).flatMap(([name, parameter]) =>
          faultsOf(parameter).map((fault) => `${file}: ${name} ${fault}`),
        ),
      );
      expect(poor).toEqual([]);
    });
  },
);

it.runIf(filesIn('packages/core/src').includes('packages/core/src/index.ts'))(
  'has definitions in every room that is meant for them',
  () => {
    const empty = catalogues.filter(({ definitions }) => definitions.length === 0);
    expect(empty.map(({ room }) => room)).toEqual([]);
  },
);

function isSentence(value: unknown, least: number): boolean {
  return typeof value === 'string' && value.trim().length >= least;
}

function faultsOf(parameter: ParameterDefinition): string[] {
  const faults: string[] = [];
  if (!isSentence(parameter.title, 2)) faults.push('has no title');
  if (!isSentence(parameter.why, 10)) faults.push('does not say why its figures are what they are');
  switch (parameter.type) {
    case 'choice':
      if (parameter.choices.length < 2) faults.push('leaves no choice');
      if (parameter.default !== undefined && !parameter.choices.includes(parameter.default))
        faults.push('has a default that is no choice');
      return faults;
    case 'switch':
    case 'state-table':
      return faults;
    case 'shape':
      if (!(parameter.of in SI_UNIT) || !(parameter.gives in SI_UNIT))
        faults.push('has no known quantity');
      return [...faults, ...faultsOfRange(parameter.range, parameter.default?.y ?? [])];
    case 'point':
      return [...faults, ...faultsOfRange(parameter.range, parameter.default ?? [])];
    default:
      if (!(parameter.quantity in SI_UNIT)) faults.push('has no known quantity');
      return [
        ...faults,
        ...faultsOfRange(
          parameter.range,
          parameter.default === undefined ? [] : [parameter.default],
        ),
      ];
  }
}

function faultsOfRange(
  [low, high]: readonly [number, number],
  values: readonly number[],
): string[] {
  const faults: string[] = [];
  if (!(Number.isFinite(low) && Number.isFinite(high) && low < high))
    faults.push(`has no finite, rising range (${low} to ${high})`);
  if (values.some((value) => !(value >= low && value <= high)))
    faults.push('has a default outside its range');
  return faults;
}
