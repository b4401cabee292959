import { expect, test } from 'vitest';
import { SI_UNIT, type Quantity } from '../../../packages/core/src/define/index.js';
import {
  displayUnit,
  parseQuantity,
  toDisplay,
} from '../../../packages/core/src/quantity/index.js';

test.each([
  [10342135.9, 'gauge-pressure', 'us', '1500 psi'], // 1 psi = 6894.757 Pa, NIST SP 811
  [10342135.9, 'gauge-pressure', 'metric', '103.4 bar'],
  [101325, 'pressure', 'us', '14.7 psia'],
  [2.01888e-4, 'flow', 'us', '3.2 gal/min'],
  [2e-4, 'flow', 'metric', '12 L/min'],
  [0.04445, 'length', 'us', '1.75 in'],
  [0.045, 'length', 'metric', '45 mm'],
  [Math.PI / 3, 'angle', 'us', '60 deg'],
  [Math.PI / 3, 'angle', 'si', '1.047 rad'],
  [7.123456, 'time', 'metric', '7.12 s'],
  [293.15, 'temperature', 'metric', '20 degC'],
  [293.15, 'temperature', 'us', '68 degF'],
  [293.15, 'temperature', 'si', '293.1 K'],
  [0, 'gauge-pressure', 'us', '0 psi'],
  [NaN, 'time', 'us', '- s'],
] as const)('%d as %s in %s units is %s', (value, quantity, system, text) => {
  expect(toDisplay(value, quantity, system).text).toBe(text);
});

test('small figures keep two digits instead of vanishing', () => {
  expect(toDisplay(0.0004, 'time', 'us').text).toBe('0.0004 s');
  expect(toDisplay(700, 'gauge-pressure', 'us').text).toBe('0.1 psi');
});

test('what is shown can be read back, in every quantity and system', () => {
  for (const quantity of Object.keys(SI_UNIT) as Quantity[]) {
    for (const system of ['us', 'metric', 'si'] as const) {
      const value = quantity === 'temperature' ? 310 : 0.037;
      const { text, unit } = toDisplay(value, quantity, system);
      expect(unit).toBe(displayUnit(quantity, system));
      const read = parseQuantity(text, quantity);
      expect(read, text).toHaveProperty('value');
      expect((read as { value: number }).value / value, text).toBeCloseTo(1, 1);
    }
  }
});

test('the number that goes with the unit is not rounded', () => {
  expect(toDisplay(0.0123456789, 'length', 'metric').value).toBeCloseTo(12.3456789, 12);
});
