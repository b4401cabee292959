import { describe, expect, it } from 'vitest';
import type { FaultEntry, LogEntry } from '@wheelwell/core';
import { PROJECTIONS } from '../../packages/viz/src/drawing/projection.js';
import { tyrePaths } from '../../packages/viz/src/drawing/tyre.js';
import {
  causesOf,
  eventAfter,
  eventBefore,
  flagAfter,
} from '../../packages/viz/src/model/history.js';
import { heldOf } from '../../packages/viz/src/model/held.js';
import { figure, plain } from '../../packages/viz/src/model/sentence.js';
import { follow, zoomed } from '../../packages/viz/src/model/span.js';
import { Store } from '../../packages/viz/src/model/store.js';
import type { Listener } from '../../packages/viz/src/worker/client.js';
import { answer, refined } from '../../packages/viz/src/worker/answer.js';
import { words } from '../../packages/viz/src/worker/words.js';
import { TEXT } from './demo.js';

const entry = (index: number, t: number, by = -1): LogEntry => ({
  index,
  t,
  by,
  device: `part-${index}`,
  from: 'a',
  to: 'b',
  cause: 'so',
  kind: 'mode',
  speed: 0,
});
const log = [entry(0, 1), entry(1, 1, 0), entry(2, 1, 1), entry(3, 2, 2)];

describe('stepping through a log', () => {
  it('takes events of one instant one by one, both ways', () => {
    expect(eventAfter(log, 0, -1)).toBe(0);
    expect(eventAfter(log, 1, 0)).toBe(1);
    expect(eventAfter(log, 1, 2)).toBe(3);
    expect(eventAfter(log, 2, 3)).toBe(-1);
    expect(eventBefore(log, 2, 3)).toBe(2);
    expect(eventBefore(log, 1, 2)).toBe(1);
    expect(eventBefore(log, 1.5, -1)).toBe(2);
  });

  it('follows causes back to the first, and is not caught by a circle', () => {
    expect(causesOf(log, 3)).toEqual([2, 1, 0]);
    const circle = [entry(0, 0, 1), entry(1, 0, 0)];
    expect(causesOf(circle, 0).length).toBeLessThanOrEqual(2);
  });

  it('goes round the flags that are not mere notes', () => {
    const flag = (from: number, severity: 'note' | 'fail') => ({
      rule: 'r',
      title: 't',
      severity,
      from,
      to: from,
      devices: [],
      margin: 0,
      marginQuantity: 'time' as const,
      explanation: '',
      suggestion: '',
    });
    const flags = [flag(5, 'fail'), flag(1, 'note'), flag(2, 'fail')];
    expect(flagAfter(flags, 0, -1, 1)).toBe(2);
    expect(flagAfter(flags, 2, 2, 1)).toBe(0);
    expect(flagAfter(flags, 5, 0, 1)).toBe(2);
    expect(flagAfter(flags, 3, -1, -1)).toBe(2);
    expect(flagAfter([flag(1, 'note')], 0, -1, 1)).toBe(-1);
  });
});

describe('the window of time', () => {
  it('keeps its width and its place inside the run when it follows', () => {
    for (const t of [0, 9.9, 10, 31, 40]) {
      const [a, b] = follow([10, 20], t, 40);
      expect(b - a).toBeCloseTo(10, 12);
      expect(a).toBeGreaterThanOrEqual(0);
      expect(b).toBeLessThanOrEqual(40);
      expect(t >= a && t <= b).toBe(true);
    }
  });

  it('comes closer about a time that stays where it is', () => {
    const [a, b] = zoomed([10, 20], 2, 12, 40);
    expect(b - a).toBeCloseTo(5, 12);
    expect((12 - a) / (b - a)).toBeCloseTo(0.2, 12);
    expect(zoomed([0, 40], 0.5, 20, 40)).toEqual([0, 40]);
  });
});

describe('a wheel on paper', () => {
  const numbers = (path: string): [number, number][] =>
    [...path.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map((m) => [Number(m[1]), Number(m[2])]);

  // A circle of radius r whose axis makes the angle a with the line of sight appears as an
  // ellipse with half axes r and r cos a (parallel projection; any text on descriptive geometry).
  it.each([0, 30, 60, 85])('has a rim with half axes r and r cos a, a = %i deg', (degrees) => {
    const a = (degrees * Math.PI) / 180;
    const tyre = {
      centre: { x: 0, y: 0, z: 0 },
      axle: { x: -Math.cos(a), y: Math.sin(a), z: 0 },
      radius: 0.4,
      width: 0,
    };
    const rim = numbers(tyrePaths(tyre, PROJECTIONS.ahead).rim);
    const across = Math.max(...rim.map(([x]) => x)) - Math.min(...rim.map(([x]) => x));
    const high = Math.max(...rim.map(([, y]) => y)) - Math.min(...rim.map(([, y]) => y));
    expect(across / high).toBeCloseTo(Math.cos(a), 1);
    expect(high).toBeLessThan(800);
  });
});

describe('figures', () => {
  it('show about three digits that mean something, with a true minus', () => {
    expect(figure(-0.123456)).toBe('\u22120.123');
    expect(figure(12.345)).toBe('12.3');
    expect(figure(1500.4)).toBe('1500');
    expect(figure(NaN)).toBe('none');
  });
});

describe('the store', () => {
  function open(): Store {
    const store = new Store((listener: Listener) => ({
      run: (request) => listener(answer({ id: 1, ...request }).reply),
      ask: () => undefined,
      stop: () => undefined,
    }));
    store.open({ file: 'hedgelark.yaml', text: TEXT });
    return store;
  }

  it('keeps the run when a later text does not read, and says what is wrong', () => {
    const store = open();
    const { picture } = store.state;
    store.open({ file: 'broken.yaml', text: 'wheelwell: 1\n' });
    expect(store.state.picture).toBe(picture);
    expect(store.state.source?.file).toBe('hedgelark.yaml');
    expect(store.state.issues.length).toBeGreaterThan(0);
  });

  it('keeps the times of the run before, other faults or an edited file; not those of another severity', () => {
    const store = open();
    const healthy = store.state.picture?.timings;
    const fault = { fault: 'restrictor-blocked', on: 'left-leg-restrictor' };
    expect(store.state.former).toBeUndefined();
    store.setFaults([{ ...fault, severity: 0.3 }]);
    store.setFaults([{ ...fault, severity: 0.6 }]);
    expect(store.state.former?.timings).toBe(healthy);
    expect(store.state.former?.title).not.toContain('with');
    store.setFaults([]);
    expect(store.state.former?.title).toContain('with restrictor blocked on left leg restrictor');
    const last = store.state.picture?.timings;
    store.open({ file: 'hedgelark.yaml', text: TEXT.replace('bore: 0.8 mm', 'bore: 0.7 mm') });
    expect(store.state.former?.timings).toBe(last);
    store.open({ file: 'other.yaml', text: TEXT });
    expect(store.state.former).toBeUndefined();
  });

  it('keeps a run that is held through card, faults and figures, as long as the file is shown', () => {
    const store = open();
    const { picture } = store.state;
    if (picture === undefined) throw new Error('no run');
    const flag = picture.flags.find((f) => f.severity === 'note');
    expect(flag).toBeDefined();
    const held = heldOf({
      ...picture,
      flags: [...picture.flags, { ...flag!, severity: 'caution' as const }],
    });
    expect(held.flags).toBe(1);
    // The least of the run, measured against each pair's own limit.
    const least = picture.approaches.clearances.find((c) => c.least.gap.distance === held.least);
    for (const c of picture.approaches.clearances.filter((other) => !other.meets))
      expect(c.least.gap.distance - c.asked).toBeGreaterThanOrEqual(held.least! - least!.asked);
    store.set({ held });
    store.setFaults([{ fault: 'restrictor-blocked', on: 'left-leg-restrictor', severity: 0.5 }]);
    store.chooseCard('blow-down');
    store.open({ file: 'hedgelark.yaml', text: TEXT.replace('bore: 0.8 mm', 'bore: 0.7 mm') });
    expect(store.state.held?.timings).toBe(picture.timings);
    store.open({ file: 'broken.yaml', text: 'wheelwell: 1\n' });
    expect(store.state.held).toBe(held);
    store.open({ file: 'other.yaml', text: TEXT });
    expect(store.state.held).toBeUndefined();
  });

  it('tells how far a long run is, and lets the user stop it without loss', () => {
    const told: number[] = [];
    let listener: Listener = () => undefined;
    let slow = false;
    const store = new Store((l) => {
      listener = l;
      return {
        run: (request) => {
          if (!slow) l(answer({ id: 1, ...request }).reply);
        },
        ask: () => undefined,
        stop: () => undefined,
      };
    });
    store.open({ file: 'hedgelark.yaml', text: TEXT });
    const { picture } = store.state;
    slow = true;
    store.chooseCard('hand-pump');
    const tell = (share: number): void => {
      told.push(share);
      listener({ id: 2, kind: 'progress', share });
    };
    answer({ id: 2, file: 'hedgelark.yaml', text: TEXT, card: 'hand-pump' }, { tell });
    expect(store.state).toMatchObject({ busy: true, asked: { card: 'hand-pump' }, picture });
    expect(store.state.progress).toBe(told.at(-1) ?? 0);
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(told.every((share) => share >= 0 && share <= 1)).toBe(true);
    store.stop();
    expect(store.state).toMatchObject({ busy: false, asked: undefined, progress: 0, picture });
  });

  it('speaks a flag when the play head passes it', () => {
    const store = open();
    const early = Object.entries(store.state.picture?.cards ?? []).find(([, c]) =>
      c.expect.includes('door-before-leg'),
    );
    store.chooseCard(early?.[1].name ?? '');
    const flag = store.state.picture?.flags.find((f) => f.rule === 'door-before-leg');
    if (flag === undefined) throw new Error('no flag to pass');
    store.seek(flag.from - 0.1);
    store.play();
    store.advance(0.2);
    expect(store.state.said).toContain(flag.title);
  });

  it('stops at the end of the run and starts again from the beginning', () => {
    const store = open();
    const end = store.state.picture?.outcome.time ?? 0;
    store.seek(end - 0.01);
    store.play();
    store.advance(1);
    expect(store.state.playing).toBe(false);
    expect(store.state.time).toBeCloseTo(end, 9);
    store.play();
    expect(store.state.time).toBe(0);
  });
});

describe('names in running text', () => {
  it('become words; units and what has a hyphen of its own stay', () => {
    expect(words('the operator sets sideLoad')).toBe('the operator sets side load');
    expect(words('3 kPa over, 2 mm short: by-pass')).toBe('3 kPa over, 2 mm short: by-pass');
    expect(plain('left-leg-jack.headChamber')).toBe('left leg jack head chamber');
  });
});

describe('a quick run, before the exact one', () => {
  const faults = [{ fault: 'plunger-rigged-early', on: 'left-door-close-valve', severity: 0.9 }];
  const ask = (id: number, quick: boolean, own: readonly FaultEntry[] = []) =>
    answer({ id, file: 'hedgelark.yaml', text: TEXT, faults: own }, { quick }).reply;
  const exact = (run: number) => refined({ kind: 'refine', run }).reply;

  it('shows no clearances of the run before it, then its own', () => {
    const store = new Store(() => ({ run: () => {}, ask: () => {}, stop: () => {} }));
    store.receive(ask(1, false));
    const before = store.state.picture;
    expect(before?.approaches.clearances.length).toBeGreaterThan(3);
    store.receive(ask(2, true, faults));
    expect(store.state.picture?.run).toBe(2);
    expect(store.state.picture?.approaches.clearances).toEqual([]);
    // What needs no look along the run is its own at once.
    expect(store.state.picture?.bay.plungers).not.toEqual(before?.bay.plungers);
    // Of a run that is no longer on show: nobody waits for it.
    const late = exact(2);
    store.receive({ ...late, refines: 1 } as typeof late);
    expect(store.state.picture?.judged).toBe(false);
    store.receive(late);
    const whole = ask(4, false, faults);
    const own = whole.kind === 'picture' ? whole.picture : undefined;
    expect(store.state.picture?.bay).toEqual(own?.bay);
    expect(store.state.picture?.approaches).toEqual(own?.approaches);
    expect(store.state.picture?.flags).toEqual(own?.flags);
    const least = (all: typeof before): number =>
      Math.min(...(all?.approaches.clearances ?? []).map((c) => c.least.gap.distance));
    expect(least(store.state.picture)).toBeLessThan(least(before));
  });

  it('gives way to it: other figures by milliseconds, another number, what is looked at as it was', () => {
    const store = new Store(() => ({ run: () => {}, ask: () => {}, stop: () => {} }));
    store.receive(ask(2, true, faults));
    const quick = store.state.picture;
    expect(quick?.judged).toBe(false);
    expect(store.state.busy).toBe(true);
    store.seek(3);
    store.selectEvent(5);
    const { time, selection } = store.state;
    store.receive(exact(2));
    const { picture } = store.state;
    expect(store.state).toMatchObject({ time, selection, busy: false });
    expect(picture?.judged).toBe(true);
    // Channels of the quick one are not taken for its own.
    expect(picture?.run).not.toBe(quick?.run);
    const whole = ask(4, false, faults);
    const own = whole.kind === 'picture' ? whole.picture : undefined;
    expect(picture?.timings).toEqual(own?.timings);
    expect(picture?.log).toEqual(own?.log);
    expect(quick?.statistics.steps).toBeLessThan(0.75 * (own?.statistics.steps ?? 0));
    for (const [i, t] of (quick?.timings ?? []).entries())
      expect(Math.abs(t.total - (own?.timings[i]?.total ?? NaN))).toBeLessThan(0.01);
  });

  it('is the last of its worker’s, or there is no exact one', () => {
    ask(2, true);
    ask(4, true);
    expect(exact(2)).toMatchObject({ kind: 'failure' });
    expect(exact(4)).toMatchObject({ kind: 'picture', refines: 4 });
    // Once is enough.
    expect(exact(4)).toMatchObject({ kind: 'failure' });
  });
});
