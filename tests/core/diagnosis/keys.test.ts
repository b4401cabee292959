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

describe('where a time is late and then never comes', () => {
  const keys = new Keys();
  const LOCKED = { 'up/left/locked': 5, 'up/tail/locked': 2 };
  const READ = { 'up/gauge/pressure/dead-head': 9e6, 'down/gauge/pressure/dead-head': 9e6 };
  const sound = keys.vector({ up: 1, down: 1, ...LOCKED, 'down/left/locked': 4, ...READ });
  const late = keys.vector({
    ...{ up: 1, 'up/left/locked': 6, 'up/tail/locked': 3, 'up/left/moved': 1 },
    ...{ down: 1, 'down/left/locked': 4, ...READ },
  });
  const never = keys.vector({
    ...{ up: 1, 'up/gauge/pressure/dead-head': 3e6, 'up/left/moved': 0 },
    ...{ down: 1, 'down/left/locked': 5, 'down/gauge/pressure/dead-head': 3e6 },
  });
  const foretold = keys.named(keys.between(late, never, 0.6, sound));

  it('all that waits for it is late by as much', () => {
    // A delay of 1 s, whose rate has fallen to four tenths.
    expect(foretold['up/left/locked']).toBeCloseTo(5 + 2.5, 9);
    expect(foretold['up/tail/locked']).toBeCloseTo(2 + 2.5, 9);
  });

  it('the rest of that swing is as it was while it still came', () => {
    expect(foretold['up/gauge/pressure/dead-head']).toBe(9e6);
    expect(foretold['up/left/moved']).toBe(1);
  });

  it('another swing goes over as ever', () => {
    expect(foretold['down/gauge/pressure/dead-head']).toBeCloseTo(5.4e6, 3);
    expect(foretold['down/left/locked']).toBeCloseTo(1 / (0.4 / 4 + 0.6 / 5), 9);
  });

  it('is the same seen from the other side', () => {
    const back = keys.named(keys.between(never, late, 0.4, sound));
    expect(back['up/left/locked']).toBeCloseTo(7.5, 9);
    expect(back['up/gauge/pressure/dead-head']).toBe(9e6);
  });

  it('of what was on time nothing is known of a delay: its own rate goes straight', () => {
    const other = keys.named(keys.between(sound, never, 0.5, sound));
    expect(other['up/left/locked']).toBeCloseTo(10, 9);
    expect(other['up/tail/locked']).toBeCloseTo(4, 9);
  });
});
