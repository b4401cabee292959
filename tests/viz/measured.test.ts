import { describe, expect, it } from 'vitest';
import {
  agrees,
  deeds,
  MeasuredWork,
  placed,
  sentenceOfMeasured,
  timeable,
} from '../../packages/viz/src/model/measured.js';
import type { MeasuredTime } from '../../packages/viz/src/model/measured.js';
import { openStore, pictureOf } from './opened.js';

const picture = pictureOf(openStore());
const reading: MeasuredTime = {
  on: 'left',
  event: 'down and locked',
  since: 'selector down',
  time: 8.4,
  error: 0.2,
};

describe('a time read off a watch', () => {
  it('stands at the deed that started the watch, and is set against the first such event after it', () => {
    const down = picture.log.find((e) => e.kind === 'operator' && e.to === 'down');
    const locked = picture.log.find(
      (e) => e.device === 'left' && e.to === 'down and locked' && e.t > (down?.t ?? NaN),
    );
    if (down === undefined || locked === undefined) throw new Error('no such events');
    const p = placed(picture, reading);
    expect(p?.t).toBeCloseTo(down.t + 8.4, 12);
    expect(p?.entry?.index).toBe(locked.index);
    expect(p?.difference).toBeCloseTo(down.t + 8.4 - locked.t, 12);
  });

  it('agrees with the run when that lies within its error, either way', () => {
    const timing = picture.timings.find((t) => t.unit === 'left' && t.direction === 'down');
    if (timing === undefined) throw new Error('no timing');
    for (const [off, fits] of [
      [0.19, true],
      [-0.19, true],
      [0.21, false],
      [-0.21, false],
    ] as const) {
      const p = placed(picture, { ...reading, time: timing.locked - timing.start + off });
      if (p === undefined) throw new Error('not placed');
      expect(agrees(p)).toBe(fits);
    }
  });

  it('has no place in a run without that deed, and no difference from an event that never came', () => {
    expect(placed(picture, { ...reading, since: 'handle pulled' })).toBeUndefined();
    const p = placed(picture, { ...reading, event: 'never seen' });
    expect(p?.difference).toBeNaN();
    expect(p !== undefined && agrees(p)).toBe(false);
  });

  it('can be taken of what follows the deed and comes before the next one only', () => {
    const up = deeds(picture).find((d) => d.name === 'selector up');
    if (up === undefined) throw new Error('the lever is not moved up');
    const events = timeable(picture, 'selector up');
    expect(events.length).toBeGreaterThan(3);
    expect(events.every((e) => e.t >= up.t && e.t < up.until)).toBe(true);
    expect(new Set(events.map((e) => `${e.device} ${e.to}`)).size).toBe(events.length);
    expect(events.some((e) => e.device === 'left' && e.to === 'down and locked')).toBe(false);
  });
});

describe('the list of them', () => {
  it('takes one down in place of a former one of the same, and crosses out', () => {
    const store = openStore();
    const work = new MeasuredWork(store);
    expect(work.put(reading)).toBe('');
    expect(work.put({ ...reading, time: 8.6 })).toBe('');
    expect(work.put({ ...reading, on: 'right' })).toBe('');
    expect(store.state.measured.map((m) => m.time)).toEqual([8.6, 8.4]);
    expect(store.state.said).toContain(sentenceOfMeasured({ ...reading, on: 'right' }));
    work.remove(reading);
    expect(store.state.measured.map((m) => m.on)).toEqual(['right']);
    work.clear();
    expect(store.state.measured).toEqual([]);
  });

  it.each([
    { on: '' },
    { event: '' },
    { time: NaN },
    { time: -1 },
    { time: Infinity },
    { error: NaN },
    { error: -0.1 },
  ])('refuses %o with a reason and changes nothing', (wrong) => {
    const store = openStore();
    expect(new MeasuredWork(store).put({ ...reading, ...wrong })).not.toBe('');
    expect(store.state.measured).toEqual([]);
  });

  it('is kept when another card or fault of the same aircraft is run', () => {
    const store = openStore();
    new MeasuredWork(store).put(reading);
    store.chooseCard('hand-pump');
    expect(store.state.measured).toEqual([reading]);
  });
});
