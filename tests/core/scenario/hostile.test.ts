import { expect, test } from 'vitest';
import { readWith } from '../../../packages/core/src/scenario/index.js';
import { MADE_UP_TEXT, madeUp } from '../../support/made-up.js';

const BOMB = [
  'a0: &a0 [x, x, x, x, x, x, x, x, x]',
  ...Array.from(
    { length: 9 },
    (_, i) => `a${i + 1}: &a${i + 1} [${Array.from({ length: 9 }, () => `*a${i}`).join(', ')}]`,
  ),
].join('\n');

test.each([
  ['an alias bomb', BOMB, 'too many aliases'],
  ['an alias within itself', 'a: &a [*a, *a]', 'nested too deeply'],
  ['deep brackets', `a: ${'['.repeat(50_000)}`, 'nested too deeply'],
  ['deep dashes', `${'- '.repeat(1_500)}x`, 'nested too deeply'],
  ['deep question marks', `${'? '.repeat(1_500)}x`, 'nested too deeply'],
  [
    'deep indentation',
    Array.from({ length: 300 }, (_, i) => `${' '.repeat(i)}k:`).join('\n'),
    'nested too deeply',
  ],
  ['a long line', `a: ${'x'.repeat(10_000)}`, 'this line is too long'],
  ['a large file', 'a: 1\n'.repeat(200_000), 'this file is too large'],
  [
    'very many values',
    Array.from({ length: 45_000 }, (_, i) => `k${i}:`).join('\n'),
    'too many values',
  ],
  ['a tag', 'a: !!js/function "return 1"', 'is not allowed'],
  ['a binary tag', 'a: !!binary R0lG', 'is not allowed'],
  ['a merge key', '<<: { a: 1 }', 'merge keys'],
  ['a key twice', 'title: a\ntitle: b', 'stands here twice'],
  ['a map as a key', '? { a: 1 }\n: 2', 'a key must be a plain word'],
  ['two documents', 'a: 1\n---\nb: 2', 'multiple documents'],
  ['an older YAML', '%YAML 1.1\n---\na: 1', 'only YAML 1.2'],
  ['an alias of nothing', 'a: *b', ''],
  ['an open quote', 'a: "', ''],
  ['a null character', 'a: \u0000', ''],
])('%s is refused at a place', (_, text, message) => {
  const { scenario, issues } = readWith(madeUp, text);
  expect(scenario).toBeUndefined();
  expect(issues.map((i) => i.message).join('\n')).toContain(message);
  expect(issues.every((i) => i.line >= 1 && i.column >= 1)).toBe(true);
  expect(issues.length).toBeLessThanOrEqual(200);
});

test.each(['__proto__', 'constructor', 'prototype'])(
  'the key %s is refused wherever it stands, and nothing is polluted',
  (key) => {
    const places = [
      MADE_UP_TEXT.replace(
        'components:\n',
        `components:\n  ${key}: { is: source, polluted: yes }\n`,
      ),
      MADE_UP_TEXT.replace('    flow: 3.2', `    ${key}: { polluted: yes }\n    flow: 3.2`),
      MADE_UP_TEXT.replace('set: {', `set: { components.${key}.polluted: 1,`),
      MADE_UP_TEXT.replace('start: {', `start: { ${key}: 1 deg,`),
      `${key}: { polluted: yes }\n${MADE_UP_TEXT}`,
      MADE_UP_TEXT.replace('out: line', `out: ${key}`),
    ];
    for (const text of places) {
      const { scenario, issues } = readWith(madeUp, text);
      expect(scenario).toBeUndefined();
      expect(issues[0].line).toBeGreaterThan(0);
    }
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    expect(Object.prototype).not.toHaveProperty('is');
  },
);

test('names that all JavaScript objects have are not found in catalogues', () => {
  for (const name of ['toString', 'valueOf', 'hasOwnProperty', 'isPrototypeOf']) {
    const text = MADE_UP_TEXT.replace('is: tap', `is: ${name}`)
      .replace('fault: narrow-bore', `fault: ${name}`)
      .replace('expect: [hook-first]', `expect: [${name}]`)
      .replace('time-up', name)
      .replace('channel: line.pressure', `channel: line.${name}`)
      .replace('input: lever, value: up', `input: ${name}, value: up`);
    const { scenario, issues } = readWith(madeUp, text);
    expect(scenario).toBeUndefined();
    expect(issues.length).toBeGreaterThanOrEqual(5);
  }
});

test('anchors and aliases in moderation are read', () => {
  const text = MADE_UP_TEXT.replace('bore: 1 3/4 in', 'bore: &bore 1 3/4 in').replace(
    'bore: 30 mm',
    'bore: *bore',
  );
  const { scenario } = readWith(madeUp, text);
  expect(scenario?.components['door-jack'].parameters.bore).toBe(
    scenario?.components['left-jack'].parameters.bore,
  );
});

const many = (count: number, line: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => `${line(i)}\n`).join('');

test('endless chains of drivers and thousands of wires to nothing end in a few issues', () => {
  const chain = many(4000, (i) => `  m${i}: { is: flap, driven: { by: m${i + 1}, ratio: 1 } }`);
  const wires = many(4000, (i) => `  w${i}: { is: magnet, signals: { coil: v${i}.on } }`);
  for (const text of [
    MADE_UP_TEXT.replace('\nmechanisms:\n', `\nmechanisms:\n${chain}`),
    MADE_UP_TEXT.replace('\nmechanisms:\n', `\n${wires}mechanisms:\n`),
  ]) {
    const { scenario, issues } = readWith(madeUp, text);
    expect(scenario).toBeUndefined();
    expect(issues).toHaveLength(200);
  }
  expect(
    readWith(
      madeUp,
      MADE_UP_TEXT.replace('\nmechanisms:\n', `\nmechanisms:\n${chain}`),
    ).issues.filter(({ message }) => message.startsWith('too many mechanisms drive')).length,
  ).toBeGreaterThan(100);
});

test('a name that all JavaScript objects have is no input, signal or state', () => {
  for (const name of ['toString', 'valueOf', 'has-own-property']) {
    for (const [from, to] of [
      ['coil: brain,', `${name}: brain,`],
      ['spare-coil: brain.warning-lamp', `spare-coil: brain.${name}`],
      ['spare-coil: brain.warning-lamp', `spare-coil: ${name}`],
      ['to: raising gear }]', `to: ${name} }]`],
      ['on: fluid', `on: ${name}`],
      ['by: tail-door', `by: ${name}`],
    ]) {
      expect(MADE_UP_TEXT).toContain(from);
      expect(readWith(madeUp, MADE_UP_TEXT.replace(from, to)).scenario).toBeUndefined();
    }
  }
});
