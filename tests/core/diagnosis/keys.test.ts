import { describe, expect, it } from 'vitest';
import { Keys } from '../../../packages/core/src/analysis/diagnosis/keys.js';

describe('between two severities', () => {
  const keys = new Keys();
  const whole = keys.vector({ 'up/left/locked': 5, up: 1, 'down/left/locked': 4, down: 1 });
  const half = (b: Record<string, number>) => keys.named(keys.between(whole, keys.vector(b), 0.5));

  it('the rate of a time goes straight', () => {
    expect(half({ up: 1, 'up/left/locked': 10 })['up/left/locked']).toBeCloseTo(20 / 3, 9);
  });

  it('a time that never comes at the worse one is twice as long half way', () => {
    expect(half({ up: 1, down: 1, 'up/left/locked': 5 })['down/left/locked']).toBeCloseTo(8, 9);
  });

  it('a swing that was not made at the worse one is as it was', () => {
    // The lever is not moved down while the gear is still on its way up.
    expect(half({ up: 1 })['down/left/locked']).toBe(4);
    expect(half({ up: 1 })['up/left/locked']).toBeCloseTo(10, 9);
  });
});
