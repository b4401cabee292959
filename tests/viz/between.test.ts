import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { between, BetweenWork, sentenceOfBetween } from '../../packages/viz/src/model/between.js';
import { markOf, placeOf, selectionOf } from '../../packages/viz/src/model/marks.js';
import { MeasuredWork } from '../../packages/viz/src/model/measured.js';
import { openStore, pictureOf } from './opened.js';

const store = openStore();
const picture = pictureOf(store);
const work = new BetweenWork(store);

describe('a mark told by name', () => {
  it('is found again for every event and every flag of the run', () => {
    for (let index = 0; index < picture.log.length; index++) {
      const selection = { kind: 'event', index } as const;
      expect(selectionOf(picture, markOf(picture, selection, 0))).toEqual(selection);
    }
    for (let index = 0; index < picture.flags.length; index++) {
      const selection = { kind: 'flag', index } as const;
      expect(selectionOf(picture, markOf(picture, selection, 0))).toEqual(selection);
    }
  });

  it('has no place in a run that does not have it', () => {
    const never = { kind: 'event', on: 'left', to: 'never seen', nth: 0 } as const;
    expect(placeOf(picture, never, [])).toBeUndefined();
    expect(selectionOf(picture, never)).toEqual({ kind: 'none' });
  });
});

describe('the time between two marks', () => {
  it('is the difference of their times in the log, with its sign, whichever two', () => {
    const events = picture.log.map((e) => e.index);
    fc.assert(
      fc.property(fc.constantFrom(...events), fc.constantFrom(...events), (a, b) => {
        fc.pre(a !== b);
        work.clear();
        store.selectEvent(a);
        work.hold();
        store.selectEvent(b);
        // Live as soon as the other is picked out, and the same once it is held.
        const live = between(store.state);
        work.hold();
        const held = between(store.state);
        const difference = picture.log[b].t - picture.log[a].t;
        expect(live?.live).toBe(true);
        expect(held?.live).toBe(false);
        for (const found of [live, held])
          expect((found?.to.t ?? NaN) - (found?.from.t ?? NaN)).toBe(difference);
        expect(sentenceOfBetween(held ?? fail())).toContain(`${difference.toFixed(3)}\u00a0s`);
      }),
    );
  });

  it('reaches from what is picked out to a mark that is pointed at', () => {
    work.clear();
    const [a, b] = [picture.log.at(-5), picture.log.at(-20)];
    if (a === undefined || b === undefined) throw new Error('too few events');
    store.selectEvent(a.index);
    work.reach(markOf(picture, { kind: 'event', index: b.index }, 0));
    const found = between(store.state);
    expect([found?.from.t, found?.to.t, found?.live]).toEqual([a.t, b.t, false]);
  });

  it('goes from flags and measured times, too', () => {
    work.clear();
    const flag = picture.flags.findIndex((f) => f.from > 0);
    const reading = {
      on: 'left',
      event: 'down and locked',
      since: 'selector down',
      time: 8,
      error: 0.2,
    };
    new MeasuredWork(store).put(reading);
    store.selectFlag(flag);
    work.reach({ kind: 'measured', on: 'left', event: 'down and locked', since: 'selector down' });
    const down = picture.log.find((e) => e.kind === 'operator' && e.to === 'down');
    const found = between(store.state);
    expect(found?.from.t).toBe(picture.flags[flag].from);
    expect(found?.to.t).toBeCloseTo((down?.t ?? NaN) + 8, 12);
  });

  it('is let go when the same is held twice, and starts anew with a third', () => {
    work.clear();
    store.scrub(2);
    work.hold();
    work.hold();
    expect(store.state.marks).toEqual([]);
    for (const t of [1, 2, 3]) {
      store.scrub(t);
      work.hold();
    }
    expect(store.state.marks).toEqual([{ kind: 'time', t: 3 }]);
  });

  it('follows its marks into a run with a fault, where they come later', () => {
    work.clear();
    const at = (to: string, after: number): number =>
      pictureOf(store).log.findIndex((e) => e.device === 'left' && e.to === to && e.t > after);
    const start = picture.log.findIndex((e) => e.kind === 'operator' && e.to === 'down');
    store.selectEvent(start);
    work.hold();
    store.selectEvent(at('down and locked', picture.log[start].t));
    work.hold();
    const healthy = between(store.state);
    store.setFaults([{ fault: 'restrictor-blocked', on: 'left-leg-restrictor', severity: 0.6 }]);
    const faulty = between(store.state);
    const timing = pictureOf(store).timings.find(
      (t) => t.unit === 'left' && t.direction === 'down',
    );
    expect((faulty?.to.t ?? NaN) - (faulty?.from.t ?? NaN)).toBeCloseTo(
      (timing?.locked ?? NaN) - (timing?.start ?? NaN),
      9,
    );
    expect(faulty?.to.t).toBeGreaterThan((healthy?.to.t ?? NaN) + 0.5);
    store.open({ file: 'other.yaml', text: store.state.source?.text ?? '' });
    expect(store.state.marks).toEqual([]);
  });
});

function fail(): never {
  throw new Error('nothing read off');
}
