import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { LoopWork, looped, loopWithin } from '../../packages/viz/src/model/loop.js';
import { openStore, pictureOf } from './opened.js';

const store = openStore();
const picture = pictureOf(store);
const work = new LoopWork(store);
const end = picture.outcome.time;

beforeEach(() => {
  store.scrub(0);
  store.set({ loop: undefined, rate: 1, span: [0, picture.duration] });
});

describe('a span that plays over and over', () => {
  it('brings the play head back to its start, however long a step is', () => {
    const number = (min: number, max: number): fc.Arbitrary<number> =>
      fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(number(0, 20), number(0.05, 8), number(0, 50), (from, length, step) => {
        const loop = { from, to: from + length, on: true };
        const at = looped(loop, from + step);
        expect(at).toBeGreaterThanOrEqual(from);
        expect(at).toBeLessThan(loop.to + 1e-9);
        // A whole number of rounds lies between.
        const rounds = (from + step - at) / (loop.to - loop.from);
        expect(rounds).toBeCloseTo(Math.round(rounds), 6);
      }),
    );
  });

  it('plays from A to B and in again at A, at any speed, and never stops by itself', () => {
    store.seek(4);
    work.start();
    store.seek(6);
    work.end();
    expect(store.state.loop).toEqual({ from: 4, to: 6, on: true });
    store.play();
    // B is where the play head stands: it comes in at A.
    expect(store.state.time).toBe(4);
    store.setRate(4);
    const seen: number[] = [];
    for (let i = 0; i < 40; i++) {
      store.advance(0.1);
      seen.push(store.state.time);
    }
    expect(Math.min(...seen)).toBeGreaterThanOrEqual(4);
    expect(Math.max(...seen)).toBeLessThan(6);
    // 40 steps of 0.4 s are 16 s: eight rounds.
    expect(seen.filter((t, i) => t < (seen[i - 1] ?? 0))).toHaveLength(8);
    expect(store.state.playing).toBe(true);
  });

  it('goes on past B when it is turned off, and stops at the end of the run', () => {
    work.over(4, 6);
    store.seek(5);
    store.play();
    work.toggle();
    expect(store.state.loop).toEqual({ from: 4, to: 6, on: false });
    store.advance(2);
    expect(store.state.time).toBeCloseTo(7, 9);
    store.advance(100);
    expect(store.state.time).toBeCloseTo(end, 9);
    expect(store.state.playing).toBe(false);
  });

  it('set while playing takes effect at once', () => {
    store.seek(3);
    work.start();
    store.play();
    store.advance(1);
    work.end();
    store.advance(0.1);
    expect(store.state.time).toBeCloseTo(3.1, 9);
  });

  it('without a span takes what the chart shows', () => {
    store.set({ span: [2, 9] });
    work.toggle();
    expect(store.state.loop).toEqual({ from: 2, to: 9, on: true });
  });

  it('an end before the start moves the start to the beginning of the run; the other way round, to its end', () => {
    work.over(10, 12);
    store.seek(5);
    work.end();
    expect(store.state.loop).toMatchObject({ from: 0, to: 5 });
    store.seek(8);
    work.start();
    expect(store.state.loop).toMatchObject({ from: 8, to: end });
  });

  it('never leaves the run and is never too short to see', () => {
    const any = fc.double({ min: -10, max: 2 * end, noNaN: true });
    fc.assert(
      fc.property(any, any, (a, b) => {
        const loop = loopWithin({ from: Math.min(a, b), to: Math.max(a, b), on: true }, picture);
        expect(loop?.from).toBeGreaterThanOrEqual(0);
        expect(loop?.to).toBeLessThanOrEqual(end);
        expect((loop?.to ?? 0) - (loop?.from ?? 0)).toBeGreaterThan(0.049);
      }),
    );
  });

  it('is kept with other faults, and gone with another file', () => {
    work.over(4, 6);
    store.setFaults([{ fault: 'restrictor-blocked', on: 'left-leg-restrictor', severity: 0.6 }]);
    expect(store.state.loop).toEqual({ from: 4, to: 6, on: true });
    store.open({ file: 'other.yaml', text: store.state.source?.text ?? '' });
    expect(store.state.loop).toBeUndefined();
  });
});
