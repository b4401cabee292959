import { expect, test } from 'vitest';
import { SI_UNIT, type Quantity } from '../../../packages/core/src/define/index.js';
import {
  parseAnyQuantity,
  parseQuantity,
  QUANTITY_WORDS,
} from '../../../packages/core/src/quantity/index.js';

// Exact by definition: inch, pound and foot by the international yard and pound agreement of 1959; US gallon
// 231 in3; standard gravity 9.80665 m/s2 (ISO 80000-3), so lbf = 0.45359237 x 9.80665 N; NIST SP 811, appendix B.
const INCH = 0.0254;
const LBF = 0.45359237 * 9.80665;
const PSI = LBF / INCH ** 2;
const GALLON = 231 * INCH ** 3;
const TURN = 2 * Math.PI;

const GOOD: readonly (readonly [string, Quantity, number])[] = [
  ['45 mm', 'length', 0.045],
  ['1 3/4 in', 'length', 1.75 * INCH],
  ['1-3/4 in', 'length', 1.75 * INCH],
  ['3/8 in', 'length', 0.375 * INCH],
  ['-1 1/2 in', 'length', -1.5 * INCH],
  ['1½ in', 'length', 1.5 * INCH],
  ['2"', 'length', 2 * INCH],
  ['6 ft', 'length', 72 * INCH],
  ['.5 m', 'length', 0.5],
  ['1e-3 m', 'length', 0.001],
  ['60 cm^3', 'volume', 60e-6],
  ['60 cm³', 'volume', 60e-6],
  ['2 L', 'volume', 0.002],
  ['1.5 gal', 'volume', 1.5 * GALLON],
  ['3.2 gal/min', 'flow', (3.2 * GALLON) / 60],
  ['3.2 gpm', 'flow', (3.2 * GALLON) / 60],
  ['12 L/min', 'flow', 0.2e-3],
  ['1500 psi', 'gauge-pressure', 1500 * PSI],
  ['1500 psig', 'gauge-pressure', 1500 * PSI],
  ['14.7 psia', 'pressure', 14.7 * PSI],
  ['105 bar', 'gauge-pressure', 105e5],
  ['3 MPa', 'gauge-pressure', 3e6],
  ['101325 Pa', 'pressure', 101325],
  ['12 cSt', 'viscosity', 12e-6],
  ['0.5 in^3/rev', 'displacement', (0.5 * INCH ** 3) / TURN],
  ['3700 rpm', 'angular-speed', (3700 * TURN) / 60],
  ['0.6 rad/s', 'angular-speed', 0.6],
  ['90 deg', 'angle', TURN / 4],
  ['90°', 'angle', TURN / 4],
  ['40 lbf ft', 'moment', 40 * LBF * 12 * INCH],
  ['40 lbf in', 'moment', 40 * LBF * INCH],
  ['85 N m', 'moment', 85],
  ['60 lbf', 'force', 60 * LBF],
  ['55 lb', 'mass', 55 * 0.45359237],
  ['20 degC', 'temperature', 293.15],
  ['20 °C', 'temperature', 293.15],
  ['68 degF', 'temperature', 293.15],
  ['-40 degF', 'temperature', 233.15],
  ['0.2 s', 'time', 0.2],
  ['15 ms', 'time', 0.015],
  ['40 1/min', 'frequency', 40 / 60],
  ['40 strokes/min', 'frequency', 40 / 60],
  ['2 Hz', 'frequency', 2],
  ['0.5 %', 'ratio', 0.005],
  ['0.5', 'ratio', 0.5],
  ['3', 'count', 3],
  ['120 lbf/in', 'stiffness', (120 * LBF) / INCH],
  ['0.01 L/(min bar)', 'leakage', 1e-5 / 60 / 1e5],
  ['40 N m/rad', 'angular-stiffness', 40],
  ['3 hp', 'power', 3 * 550 * LBF * 12 * INCH], // 550 ft lbf/s, NIST SP 811
];

test.each(GOOD)('%s as %s', (text, quantity, value) => {
  const read = parseQuantity(text, quantity);
  expect(read).not.toHaveProperty('problem');
  // mathjs keeps psi to ten figures.
  expect((read as { value: number }).value / value).toBeCloseTo(1, 9);
});

test('the examples of every quantity can be read as that quantity', () => {
  for (const quantity of Object.keys(SI_UNIT) as Quantity[]) {
    for (const example of QUANTITY_WORDS[quantity].examples)
      expect(parseQuantity(example, quantity), example).toHaveProperty('value');
  }
});

test('the SI unit of every quantity reads as itself', () => {
  for (const [quantity, unit] of Object.entries(SI_UNIT) as [Quantity, string][]) {
    expect(parseQuantity(`1.25 ${unit}`, quantity), unit).toMatchObject({ value: 1.25 });
  }
});

const BAD: readonly (readonly [text: string, quantity: Quantity, message: string, hint: string])[] =
  [
    ['45 psi', 'length', 'psi is a pressure: a length belongs here', ''],
    ['1500', 'gauge-pressure', 'a unit is missing', '1500 psi'],
    ['0', 'length', 'a unit is missing', ''],
    ['5 %', 'length', '', ''],
    ['3 galmin', 'flow', 'not a unit', 'did you mean gal/min?'],
    ['5 lb', 'force', 'lb is a mass', 'the force is lbf'],
    ['3 cm^3', 'displacement', 'a volume', 'per turn'],
    ['30 rpm', 'frequency', 'angular speed', '1/min'],
    ['20 C', 'temperature', '', 'write degC'],
    ['15 psig', 'pressure', 'gauge', ''],
    ['15 psia', 'gauge-pressure', 'absolute', ''],
    ['1,500 psi', 'gauge-pressure', '', 'without a comma'],
    ['1e999 m', 'length', 'beyond all bounds', ''],
    ['3/0 in', 'length', 'beyond all bounds', ''],
    ['NaN m', 'length', '', ''],
    ['', 'length', '', ''],
    ['mm', 'length', '', ''],
    ['1.2.3 mm', 'length', '', ''],
    ['3 m to ft', 'length', '', ''],
    ['sqrt(4) m', 'length', '', ''],
    ['2 * 3 m', 'length', '', ''],
    ['10 constructor', 'length', '', ''],
    ['10 __proto__', 'length', '', ''],
    ['10 m^1e9', 'length', '', ''],
    [`10 ${'m '.repeat(5000)}`, 'length', 'too long', ''],
    [`${'9'.repeat(5000)} m`, 'length', 'too long', ''],
  ];

test.each(BAD)('%s as %s is refused', (text, quantity, message, hint) => {
  const read = parseQuantity(text, quantity);
  expect(read).toHaveProperty('problem');
  const {
    problem,
    allowed,
    hint: told,
  } = read as { problem: string; allowed: string; hint: string };
  expect(problem).toContain(message);
  expect(told).toContain(hint);
  expect(allowed).toContain(QUANTITY_WORDS[quantity].name);
});

test('a figure of any kind is read by its unit, a pressure as gauge', () => {
  expect(parseAnyQuantity('3 mm')).toMatchObject({
    quantity: 'length',
    value: expect.closeTo(0.003, 12),
  });
  expect(parseAnyQuantity('100 bar')).toMatchObject({ quantity: 'gauge-pressure', value: 1e7 });
  expect(parseAnyQuantity('1 bara')).toMatchObject({ quantity: 'pressure', value: 1e5 });
  expect(parseAnyQuantity('0.4')).toMatchObject({ quantity: 'ratio', value: 0.4 });
  expect(parseAnyQuantity('3 furlongs of rope')).toHaveProperty('problem');
});
