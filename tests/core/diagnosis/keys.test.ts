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

describe('two causes together', () => {
  const keys = new Keys();
  const of = (x: Record<string, number>) => keys.vector(x);
  const sound = of({ up: 1, 'up/left/locked': 5, 'up/gauge/pressure/moving': 6e6 });
  const both = (a: Record<string, number>, b: Record<string, number>) =>
    keys.named(keys.together(sound, of(a), of(b)));
  const slow = { up: 1, 'up/left/locked': 10, 'up/gauge/pressure/moving': 8e6 };

  it('each make a time as many times as long as alone', () => {
    const { 'up/left/locked': time } = both(slow, { ...slow, 'up/left/locked': 4 });
    expect(time).toBeCloseTo(10 * (4 / 5), 9);
  });

  it('read what the one makes that changes it more, whichever stands first', () => {
    const less = { ...slow, 'up/gauge/pressure/moving': 5e6 };
    expect(both(slow, less)['up/gauge/pressure/moving']).toBe(8e6);
    expect(both(less, slow)['up/gauge/pressure/moving']).toBe(8e6);
  });

  it('let nothing come that one of them keeps from coming, and bring about what one of them does', () => {
    const stuck = { up: 1, 'up/left/pauses': 2 };
    expect(both(slow, stuck)['up/left/locked']).toBeUndefined();
    expect(both(slow, stuck)['up/left/pauses']).toBe(2);
    expect(both(slow, { 'up/left/locked': 5 })['up']).toBeUndefined();
  });

  it('are moved from where they were played as far as what is foretold moves', () => {
    const [from, to] = [of({ up: 1, 'up/left/locked': 8 }), of({ up: 1, 'up/left/locked': 9 })];
    const played = of({ up: 1, 'up/left/locked': 8.4 });
    expect(keys.named(keys.moved(played, from, to))['up/left/locked']).toBeCloseTo(9.4, 9);
    expect(keys.named(keys.moved(played, from, from))['up/left/locked']).toBe(8.4);
    // Where nothing comes there is nothing to be off by.
    expect(keys.named(keys.moved(played, of({ up: 1 }), to))['up/left/locked']).toBe(9);
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
