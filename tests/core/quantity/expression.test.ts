import { expect, test } from 'vitest';
import { compileExpression, sampleExpression } from '../../../packages/core/src/quantity/index.js';

const evaluate = (text: string, x: number): number => {
  const compiled = compileExpression(text, 'angle');
  if ('problem' in compiled) throw new Error(compiled.problem);
  return compiled.evaluate(x);
};

test.each([
  ['0.21 * sin(angle)', 0.21 * Math.sin(0.7)],
  ['-angle^2', -(0.7 ** 2)],
  ['2^3^2', 512], // powers bind to the right, as in written mathematics
  ['1 - 2 - 3', -4],
  ['(1 + angle) / 2 * 3', ((1 + 0.7) / 2) * 3],
  [
    'sqrt(0.42^2 + 0.15^2 - 2*0.42*0.15*cos(angle))',
    Math.sqrt(0.42 ** 2 + 0.15 ** 2 - 2 * 0.42 * 0.15 * Math.cos(0.7)),
  ],
  ['max(0, angle - 1, -2)', 0],
  ['atan2(1, 1) * 4 - pi', 0],
  ['log(e)', 1],
  ['+angle', 0.7],
])('%s', (text, value) => {
  expect(evaluate(text, 0.7)).toBeCloseTo(value, 14);
});

test('samples are even, reach both ends exactly and rise', () => {
  const sampled = sampleExpression('angle', 'angle', [0.1, 0.7], 7);
  expect(sampled).toHaveProperty('shape');
  const { x, y } = (sampled as { shape: { x: number[]; y: number[] } }).shape;
  expect(x).toHaveLength(7);
  expect([x[0], x[6]]).toEqual([0.1, 0.7]);
  expect(y).toEqual(x);
  expect(x.every((v, i) => i === 0 || v > x[i - 1])).toBe(true);
});

test.each([
  ...[
    'angle = 1',
    'f(x) = x',
    '[1, 2]',
    'angle.a',
    'angle ? 1 : 2',
    '1; 2',
    '"s"',
    'angle[1]',
    '{a: 1}',
    '1:3',
    '1 < 2',
    '2!',
  ],
  ...[
    "angle'",
    'not angle',
    '5 in',
    '5 in to cm',
    '2 angle',
    'angle mod 2',
    'angle and 1',
    '~1',
    '1 | 2',
    'true',
    'null',
    'i',
    'NaN',
  ],
  ...[
    'Infinity',
    '1e999',
    'sin',
    'sin()',
    'sin(1, 2)',
    'min(1)',
    'pow(1)',
    'cross(1, 2)',
    'ones(1e9)',
    'import("fs")',
    'eval("1")',
  ],
  ...[
    'parse("1")',
    'simplify(1)',
    'createUnit("x")',
    'constructor',
    'toString(1)',
    'hasOwnProperty',
    '__proto__',
    'sin.constructor("x")',
  ],
  ...[
    'angle.constructor.constructor("return 1")()',
    '',
    ' ',
    '#',
    '%',
    '(',
    ')',
    '1 +',
    '* 2',
    '('.repeat(40) + '1' + ')'.repeat(40),
  ],
  ...[
    Array.from({ length: 130 }, () => '1').join('+'),
    'x'.repeat(1000),
    'sin('.repeat(50) + '1' + ')'.repeat(50),
  ],
])('%s is refused with a sentence', (text) => {
  const compiled = compileExpression(text, 'angle');
  expect(compiled).toHaveProperty('problem');
  expect((compiled as { problem: string }).problem).not.toBe('');
  expect((compiled as { allowed: string }).allowed).toContain('angle');
});

test.each(['1 / angle', 'log(angle)', 'sqrt(-1)', '9^9^9^9', '0 / 0', 'asin(2)'])(
  '%s is refused for a value that is not finite',
  (text) => {
    const sampled = sampleExpression(text, 'angle', [0, 1], 5);
    expect((sampled as { problem: string }).problem).toContain('no finite value');
  },
);

test('an empty or endless range is refused', () => {
  for (const range of [
    [1, 1],
    [2, 1],
    [0, Infinity],
    [NaN, 1],
  ] as const) {
    expect(sampleExpression('angle', 'angle', range, 5)).toHaveProperty('problem');
  }
});

test('a misspelt function or variable gets the nearest name', () => {
  expect(compileExpression('sinn(angle)', 'angle')).toMatchObject({ hint: 'did you mean sin?' });
  expect(compileExpression('sin(angel)', 'angle')).toMatchObject({ hint: 'did you mean angle?' });
});
