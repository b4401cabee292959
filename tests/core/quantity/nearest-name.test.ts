import { expect, test } from 'vitest';
import { didYouMean, nearestName } from '../../../packages/core/src/quantity/index.js';

const NAMES = ['relief-valve', 'check-valve', 'line', 'left-leg', 'right-leg', 'bore', 'free-air'];

test.each([
  ['releif-valve', 'relief-valve'],
  ['Relief_Valve', 'relief-valve'],
  ['valve-relief', 'relief-valve'],
  ['lin', 'line'],
  ['lft-leg', 'left-leg'],
  ['freeAir', 'free-air'],
  ['boer', 'bore'],
])('%s was meant to be %s', (written, meant) => {
  expect(nearestName(written, NAMES)).toBe(meant);
});

test.each(['zzz', 'accumulator', '', 'x', 'selector', 'x'.repeat(100_000)])(
  '%s is near to nothing',
  (written) => {
    expect(nearestName(written, NAMES)).toBeUndefined();
    expect(didYouMean(written, NAMES)).toBe('');
  },
);

test('a word of several names asks which of them was meant', () => {
  expect(didYouMean('valve', NAMES)).toBe('did you mean relief-valve or check-valve?');
  expect(didYouMean('LEG', NAMES)).toBe('did you mean left-leg or right-leg?');
  expect(didYouMean('val', NAMES)).toBe('');
});
