/** The test card's model: watch, sheet, what is kept, without a page. */
import { readFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import {
  expectedSwings,
  readObservations,
  readScenario,
  simulate,
  underConditions,
  writeObservations,
} from '@wheelwell/core';
import { keptDraft } from '../../packages/viz/src/model/draft.js';
import { entered, written } from '../../packages/viz/src/model/entry.js';
import type { EntryKind } from '../../packages/viz/src/model/entry.js';
import {
  blankSwing,
  compare,
  comparisonWords,
  dueOf,
  expectedOf,
  withCondition,
  withNever,
  withOrder,
  withSupply,
} from '../../packages/viz/src/model/observed.js';
import { signed } from '../../packages/viz/src/model/sentence.js';
import { isSheet } from '../../packages/viz/src/model/sheet-files.js';
import { Store } from '../../packages/viz/src/model/store.js';
import { measuredOf, merged } from '../../packages/viz/src/model/swing-times.js';
import { placed } from '../../packages/viz/src/model/measured.js';
import { tapKeys, timedEvents } from '../../packages/viz/src/model/tap-keys.js';
import { TestCardWork } from '../../packages/viz/src/model/test-card.js';
import { startWatch, swingOf, tap, undoTap } from '../../packages/viz/src/model/watch.js';
import { answer } from '../../packages/viz/src/worker/answer.js';
import type { Picture } from '../../packages/viz/src/worker/message.js';
import { answerSheet } from '../../packages/viz/src/worker/sheet.js';
import type { ExpectedSwing, ObservedSwing } from '../../packages/viz/src/worker/sheet-message.js';
import { TEXT } from './demo.js';

function readDemo() {
  const { scenario } = readScenario(TEXT);
  if (scenario === undefined) throw new Error('the demo does not read');
  return scenario;
}
const demo = () => ({ file: 'hedgelark/hedgelark.yaml', text: TEXT });

function pictureOf(card: string, of = demo()): Picture {
  const { reply } = answer({ id: 1, ...of, card });
  if (reply.kind !== 'picture') throw new Error('no picture');
  return reply.picture;
}
const healthy = pictureOf('healthy');

/** The work on a store that shows the sound run, with a clock that is set by hand. */
function bench() {
  let now = 1_900_000_000;
  const kept = new Map<string, unknown>();
  const store = new Store(
    () => ({ run: () => undefined, stop: () => undefined, series: () => undefined }) as never,
  );
  const work = new TestCardWork(
    store,
    { ask: (question) => Promise.resolve(answerSheet(question)) },
    {
      get: (name) => kept.get(name) ?? null,
      put: (name, value) => void kept.set(name, structuredClone(value)),
    },
    () => now,
  );
  store.set({ picture: healthy, source: demo(), bench: 'test-card' });
  return { store, work, kept, pass: (s: number) => (now += s), now: () => now };
}

describe('the watch', () => {
  it('gives each event its time from the selector, to the hundredth', () => {
    let watch = startWatch('up', 100);
    watch = tap(watch, 'left', 'moving', 101.234);
    watch = tap(watch, 'tail', 'locked', 104.996);
    const swing = swingOf(watch, 0.3);
    expect(swing.times).toEqual({
      left: { moving: { at: 1.23, error: 0.3 } },
      tail: { locked: { at: 5, error: 0.3 } },
    });
    expect(swing.order).toEqual([
      { unit: 'left', event: 'moving' },
      { unit: 'tail', event: 'locked' },
    ]);
  });
  it('counts the first tap of an event, and again the next when it was undone', () => {
    const once = tap(startWatch('up', 0), 'left', 'moving', 1);
    expect(tap(once, 'left', 'moving', 2)).toBe(once);
    expect(tap(undoTap(once), 'left', 'moving', 2).taps[0]?.at).toBe(2);
  });
  it('has a number key for every event of three units, row by row', () => {
    expect(tapKeys(healthy, undefined).map((k) => `${k.key} ${k.unit} ${k.event}`)).toEqual([
      '1 left moving',
      '2 right moving',
      '3 tail moving',
      '4 left locked',
      '5 right locked',
      '6 tail locked',
      '7 left doors',
      '8 right doors',
      '9 tail doors',
    ]);
  });
  it('has a letter for doors that stand open first, where a sound swing has such a moment', () => {
    const opening = {
      times: { left: { opened: 1.3 }, tail: { opened: 1.5 } },
    } as unknown as ExpectedSwing;
    expect(
      tapKeys(healthy, opening)
        .slice(0, 3)
        .map((k) => `${k.key} ${k.unit} ${k.event}`),
    ).toEqual(['q left opened', 'e tail opened', '1 left moving']);
  });
  it('has letters of another row for lights, where a sound swing has them', () => {
    const lit = { times: { left: { light: 6.1 }, tail: { light: 6.5 } } };
    expect(
      tapKeys(healthy, lit as unknown as ExpectedSwing)
        .slice(-2)
        .map((k) => `${k.key} ${k.unit} ${k.event}`),
    ).toEqual(['a left light', 'd tail light']);
  });
  it('offers to write what a sound swing has, and shows what was noted beside', () => {
    const offered = (swing: ObservedSwing) =>
      timedEvents(healthy, undefined, swing).filter((e) => e.event === 'opened');
    expect(offered(blankSwing('up'))).toEqual([]);
    const stuck = withNever(blankSwing('up'), { unit: 'right', event: 'opened' }, true);
    expect(offered(stuck)).toEqual([{ unit: 'right', event: 'opened' }]);
  });
});

describe('a measured time against the expected one', () => {
  it('has a sign, but nought has no minus', () => {
    expect([-0.004, 0, 0.126, -1.5].map(signed)).toEqual(['+0.00', '+0.00', '+0.13', '−1.50']);
  });

  it('is as expected within the reading error, else later or earlier, in words', () => {
    expect(comparisonWords(compare({ at: 7.2, error: 0.2 }, 7.3))).toBe('as expected');
    expect(comparisonWords(compare({ at: 7.6, error: 0.2 }, 7.3))).toBe(
      '0.30\u00a0s later than expected',
    );
    expect(compare({ at: 7, error: 0.2 }, 7.3).is).toBe('earlier');
  });
});

describe('numbers written by hand', () => {
  it('are read in the units of the user, with point or comma; nothing stays nothing', () => {
    expect(entered('1500', 'gauge-pressure', healthy, 'us')).toMatchObject({ wrong: '' });
    expect(entered(' 7,5 ', 'time', healthy, 'us')).toEqual({ value: 7.5, wrong: '' });
    expect(entered('', 'time', healthy, 'us')).toEqual({ value: undefined, wrong: '' });
    expect(entered('68', 'temperature', healthy, 'us')).toMatchObject({ wrong: '' });
  });
  it.each(['soon', '7 s', '1e3', '--3', '7.5.1', 'NaN', 'Infinity'])('not %s', (text) => {
    expect(entered(text, 'time', healthy, 'us')).toEqual({ wrong: `“${text}” is not a number` });
  });
  it('are taken exactly where the reader of sheets takes them', () => {
    const low = {
      time: 0,
      error: 0.001,
      'gauge-pressure': -1.1e5,
      flow: 0,
      temperature: 203.15,
      angle: -1.6,
      left: 0.1,
      count: 0,
    };
    const high = {
      time: 3600,
      error: 60,
      'gauge-pressure': 1e8,
      flow: 0.05,
      temperature: 423.15,
      angle: 1.6,
      left: 86_400,
      count: 10_000,
    };
    for (const kind of Object.keys(low) as EntryKind[])
      for (const [v, beyond] of [
        [low[kind], -1],
        [high[kind], 1],
      ] as const) {
        const size = Math.max(Math.abs(v), 0.05) * 1e-3;
        const inside = written(v - beyond * size, kind, healthy, 'metric');
        const outside = written(v + beyond * size, kind, healthy, 'metric');
        expect(entered(inside, kind, healthy, 'metric').wrong).toBe('');
        expect(entered(outside, kind, healthy, 'metric').wrong).toMatch(/out of bounds/);
        expect(issuesWith(kind, v - beyond * size)).toBe(0);
        expect(issuesWith(kind, v + beyond * size)).toBe(1);
      }
  });
});

/** How many issues a sheet has with this figure in it. */
function issuesWith(kind: EntryKind, v: number): number {
  const swing: ObservedSwing = {
    ...{
      direction: 'up' as const,
      conditions: {},
      order: [],
      remarks: {},
      recordings: [],
      note: '',
    },
    times: kind === 'time' ? { left: { locked: { at: v, error: 0.2 } } } : {},
    gauges: kind === 'gauge-pressure' ? { pressure: { static: v } } : {},
    ...(kind === 'count' && { supply: { 'hand-pump': { strokes: v } } }),
  };
  const sheet = {
    ...{ aircraft: 'A', scenario: '', card: '', date: '', by: '', note: '', swings: [swing] },
    readingError: kind === 'error' ? v : 0.2,
    conditions: {
      ...(kind === 'flow' && { supplyFlow: v }),
      ...(kind === 'temperature' && { temperature: v }),
      ...(kind === 'angle' && { attitude: v }),
      ...(kind === 'left' && { leftFor: v }),
    },
  };
  return readObservations(writeObservations(sheet)).issues.length;
}

describe('a swing laid over the run on show', () => {
  it.each(['up', 'down'] as const)('names the events as the log does, %s', (direction) => {
    const units = healthy.units.map((u) => u.name);
    let watch = startWatch(direction, 0);
    for (const unit of units)
      for (const event of ['moving', 'locked', 'doors'] as const)
        watch = tap(watch, unit, event, 5);
    watch = tap(watch, 'gear', 'total', 8);
    const found = measuredOf(swingOf(watch, 0.2), healthy).map((m) => placed(healthy, m));
    expect(found).toHaveLength(10);
    // Each has its event in the run, and what is timed lies where the run's own times are.
    for (const p of found) expect(p?.entry).toBeDefined();
    for (const unit of units) {
      const timing = healthy.timings.find((t) => t.unit === unit && t.direction === direction);
      const locked = found.find(
        (p) => p?.measured.on === unit && /locked|closed|closing/.test(p.measured.event),
      );
      expect(Math.abs((locked?.entry?.t ?? NaN) - (timing?.locked ?? NaN))).toBeLessThan(0.05);
    }
  });
  it('is at the last of the doors that stand open for a leg', () => {
    const file = 'tarnswift/tarnswift.yaml';
    const text = readFileSync(new URL(`../../scenarios/${file}`, import.meta.url), 'utf8');
    const picture = pictureOf('healthy', { file, text });
    const swing = swingOf(tap(startWatch('up', 0), 'nose', 'opened', 1.5), 0.2);
    const [one, ...more] = measuredOf(swing, picture);
    expect(more).toEqual([]);
    expect(one).toMatchObject({ on: 'nose-right-door', event: 'at open', time: 1.5 });
    const at = placed(picture, one)?.entry?.t ?? NaN;
    const left = picture.log.find((e) => e.device === 'nose-left-door' && e.to === 'at open');
    expect(at).toBeGreaterThan(left?.t ?? NaN);
  });
  it('is at the last switch that feeds a light', () => {
    const file = 'tarnswift/tarnswift.yaml';
    const text = readFileSync(new URL(`../../scenarios/${file}`, import.meta.url), 'utf8');
    const swing = swingOf(tap(startWatch('up', 0), 'left', 'light', 6.4), 0.2);
    const [one, ...more] = measuredOf(swing, pictureOf('healthy', { file, text }));
    expect(more).toEqual([]);
    expect(one).toMatchObject({ on: 'left-door-closed-switch', event: 'made', time: 6.4 });
  });
  it('is none where the run has no such movement', () => {
    expect(measuredOf(swingOf(startWatch('blow-down', 0), 0.2), healthy)).toEqual([]);
  });
  it('takes the place of a reading of the same, and leaves others', () => {
    const one = {
      on: 'left',
      event: 'down and locked',
      since: 'selector down',
      time: 5,
      error: 0.2,
    };
    const other = { ...one, on: 'right' };
    expect(merged([one, other], [{ ...one, time: 6 }])).toEqual([other, { ...one, time: 6 }]);
  });
});

describe('the sheet in work', () => {
  it('takes rows from the watch, and suggests the other way next', async () => {
    const { store, work, pass } = bench();
    await Promise.resolve();
    work.key(' ');
    pass(6.2);
    work.key('4');
    pass(1);
    work.key(' ');
    const { draft } = store.state.testCard;
    expect(draft?.sheet.swings[0]?.times).toEqual({
      left: { locked: { at: 6.2, error: 0.2 } },
      gear: { total: { at: 7.2, error: 0.2 } },
    });
    expect(draft?.saved).toBe(false);
    work.start();
    expect(store.state.testCard.draft?.watch?.direction).toBe('down');
  });
  it('expects what a sound gear does as the sheet says that it stands, of a row made otherwise nothing', async () => {
    const { store, work } = bench();
    const total = () =>
      expectedOf(store.state.testCard.expectation, 'up')?.times.gear?.total ?? NaN;
    await vi.waitFor(() => expect(total()).toBeGreaterThan(0));
    const usual = total();
    const supplyFlow = 1.5e-4;
    work.changeSheet((sheet) => ({ ...sheet, conditions: { supplyFlow, leftFor: 60 } }));
    await vi.waitFor(() => expect(total()).not.toBe(usual));
    const sound = simulate(underConditions(readDemo(), 'healthy', { supplyFlow }));
    expect(total()).toBe(expectedSwings(sound)[0]?.times.gear?.total);
    expect(store.state.testCard.expectation).toMatchObject({
      stood: true,
      conditions: { supplyFlow },
    });
    work.addBlank();
    const row = () => work.sheet?.swings[0] ?? blankSwing('down');
    expect(dueOf(store.state.testCard.expectation, row())?.times.gear?.total).toBe(total());
    work.changeRow(0, (s) => withCondition(s, 'leftFor', 60));
    expect(dueOf(store.state.testCard.expectation, row())).toBeDefined();
    work.changeRow(0, (s) => withCondition(s, 'doors', 'disconnected'));
    expect(dueOf(store.state.testCard.expectation, row())).toBeUndefined();
  });
  it('leaves keys alone that are not its own', () => {
    const { work } = bench();
    expect(work.key('f')).toBe(false);
    // The numbers are the page's until the watch runs.
    expect(work.key('1')).toBe(false);
    work.start();
    expect(work.key('1')).toBe(true);
    expect(work.key('0')).toBe(false);
  });
  it('is kept at every change; a watch forgotten for an hour becomes a row', () => {
    const { work, kept, pass, now, store } = bench();
    work.start();
    pass(2);
    work.tap('left', 'moving');
    const keep = { get: (name: string) => kept.get(name) ?? null, put: () => undefined };
    const file = store.state.source?.file ?? '';
    expect(keptDraft(keep, file, now)?.watch?.taps).toHaveLength(1);
    pass(3600);
    const later = keptDraft(keep, file, now);
    expect(later?.watch).toBeUndefined();
    expect(later?.sheet.swings[0]?.times.left?.moving?.at).toBe(2);
    kept.set(`test-card.${file}`, { form: 0, draft: 'of another time' });
    expect(keptDraft(keep, file, now)).toBeUndefined();
  });
  it('has nothing that came and never came, in the order or not', () => {
    const event = { unit: 'left', event: 'locked' } as const;
    const timed = { ...blankSwing('up'), times: { left: { locked: { at: 5, error: 0.2 } } } };
    const ordered = withOrder(timed, event, true);
    expect(ordered.order).toEqual([event]);
    const never = withNever(ordered, event, true);
    expect(never).toMatchObject({ times: {}, order: [], never: [event] });
    expect(withOrder(never, event, true)).toMatchObject({ order: [event], never: [] });
    expect(withNever(never, event, false).never).toEqual([]);
    const read = withSupply(never, 'pack', 'strokes', 40);
    expect(read.supply).toEqual({ pack: { strokes: 40 } });
    expect(withSupply(read, 'pack', 'strokes', undefined).supply).toEqual({});
  });
  it('knows a sheet by its first words, in YAML and in JSON, and no scenario', () => {
    expect(isSheet('# note\nwheelwell-observations: 1\n')).toBe(true);
    expect(isSheet('{"wheelwell-observations":1}')).toBe(true);
    expect(isSheet('{\n  "wheelwell-observations": 1,')).toBe(true);
    expect(isSheet(demo().text)).toBe(false);
  });
});
