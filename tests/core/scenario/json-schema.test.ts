import { expect, test } from 'vitest';
import { jsonSchemaOf } from '../../../packages/core/src/scenario/index.js';
import { madeUp } from '../../support/made-up.js';

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

test('it is plain JSON', () => {
  expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
});
