import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'yaml';
import { expect, test } from 'vitest';
import { jsonSchemaOf } from '../../../packages/core/src/scenario/index.js';
import { MADE_UP_TEXT, madeUp } from '../../support/made-up.js';

interface Node {
  readonly properties: Record<string, Node>;
  readonly additionalProperties: Node & { oneOf: Node[] };
  readonly items: Node & { oneOf: Node[] };
  readonly required?: string[];
  readonly const?: unknown;
  readonly enum?: unknown[];
  readonly description?: string;
  readonly examples?: string[];
}

const schema = jsonSchemaOf(madeUp) as unknown as Node;
const kinds = schema.properties.components.additionalProperties.oneOf;

test('the JSON Schema has one alternative per kind, told apart by is', () => {
  expect(kinds.map((kind) => kind.properties.is.const)).toEqual(Object.keys(madeUp.components));
  expect(
    schema.properties.mechanisms.additionalProperties.oneOf.map((kind) => kind.properties.is.const),
  ).toEqual(['arm', 'flap']);
  expect(schema.properties.rules.items.oneOf.map((kind) => kind.properties.kind.const)).toContain(
    'together',
  );
});

test('an alternative has all parameters in kebab-case, requires those without default and refuses others', () => {
  const tap = kinds.find((kind) => kind.properties.is.const === 'tap')!;
  expect(Object.keys(tap.properties)).toEqual([
    'is',
    'note',
    'ports',
    'links',
    'signals',
    'place',
    'bore',
    'crack-at',
    'style',
    'detent',
  ]);
  expect(tap.required).toEqual(expect.arrayContaining(['is', 'ports', 'crack-at']));
  expect(tap.required).not.toContain('bore');
  expect(tap.additionalProperties).toBe(false);
  expect(tap.properties.ports.required).toEqual(['pressure-in', 'out']);
});

test('titles, ranges, defaults, words and examples are in it', () => {
  const tap = kinds.find((kind) => kind.properties.is.const === 'tap')!;
  expect(tap.properties.bore.description).toBe('bore; default 10 mm; 1 mm to 50 mm (a length)');
  expect(tap.properties.bore.examples).toEqual(['45 mm', '1 3/4 in']);
  expect(tap.properties.style.enum).toEqual(['poppet', 'spool']);
  expect(schema.properties.fluid.properties.kind.enum).toEqual(['red-oil']);
  expect(Object.keys(schema.properties.limits.properties)).toContain('own-limit');
});

test('a device hears by wire what its definition names, or whatever its own table does', () => {
  const kind = (name: string) => kinds.find((k) => k.properties.is.const === name)!;
  expect(Object.keys(kind('magnet').properties.signals.properties)).toEqual([
    'coil',
    'spare-coil',
    'load',
  ]);
  expect(kind('magnet').properties.signals.additionalProperties).toBe(false);
  expect(kind('watcher').properties.signals.additionalProperties).toMatchObject({ type: 'string' });
  expect(kind('jack').properties.signals).toBeUndefined();
  const row = kind('watcher').properties.table.additionalProperties.properties.next.items;
  expect(Object.keys(row.properties)).toEqual(['if', 'after', 'to']);
  expect(row.required).toEqual(['to']);
});

test('what is driven, the well of a unit, airspeed and warmed oil are in it', () => {
  const { driven } = schema.properties.mechanisms.additionalProperties.oneOf[0].properties;
  expect(Object.keys(driven.properties)).toEqual([
    'by',
    'table',
    'expression',
    'ratio',
    'linkage',
    'at-low',
  ]);
  expect(driven.required).toEqual(['by']);
  expect(driven.properties.linkage.required).toEqual([
    'ground',
    'crank',
    'coupler',
    'rocker',
    'crank-at-low',
    'sense',
  ]);
  const { bay } = schema.properties.units.additionalProperties.properties;
  expect(bay.required).toEqual(['roof', 'walls']);
  expect(schema.properties.airspeed.examples).toEqual(['0.3 m/s', '15 ft/s']);
  expect(Object.keys(schema.properties.fluid.properties)).toContain('warmed-by');
  expect(schema.properties.cards.additionalProperties.properties.airspeed).toBeDefined();
});

test('it is plain JSON', () => {
  expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
});

test('an editor that knows it (ajv, strict) takes the made-up file and refuses slips in the newer keys', () => {
  const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(
    schema as unknown as Record<string, unknown>,
  );
  expect(validate(parse(MADE_UP_TEXT)), JSON.stringify(validate.errors)).toBe(true);
  for (const [from, to] of [
    ['drive: [open', 'drives: [open'],
    ['after: 2 s, to: raising gear', 'after: 2 s'],
    ['spare-coil: brain', 'spare-koil: brain'],
    ['crank-at-low: 40 deg', 'crank-at-lo: 40 deg'],
    ['driven: { by: tail-door', 'driven: { bye: tail-door'],
    ['sense: opening }\n  tail-flap', 'sense: wide }\n  tail-flap'],
    ['bay: { roof', 'bay: { rooof'],
    ['warmed-by: 5 K', 'warmed-by: 5'],
    ['airspeed: 90 knot', 'airspeed: 90'],
  ]) {
    const broken = MADE_UP_TEXT.replace(from, to);
    expect(broken).not.toBe(MADE_UP_TEXT);
    expect(validate(parse(broken)), to).toBe(false);
  }
});
