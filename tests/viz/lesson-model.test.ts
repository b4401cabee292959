/** What a student may see of a run, and what goes out as results: without a browser. */
import { describe, expect, it } from 'vitest';
import { LessonWork } from '../../packages/viz/src/model/lesson.js';
import type { LessonMaker, Shelf } from '../../packages/viz/src/model/lesson.js';
import { resultsCsv, resultsJson, resultsOf } from '../../packages/viz/src/model/lesson-export.js';
import { NO_LESSON, scoreOf } from '../../packages/viz/src/model/lesson-state.js';
import { Store } from '../../packages/viz/src/model/store.js';
import { bystander, cutAt } from '../../packages/viz/src/model/veil.js';
import { answer } from '../../packages/viz/src/worker/answer.js';
import { teach } from '../../packages/viz/src/worker/lesson.js';
import type { LessonReply, LessonRequest } from '../../packages/viz/src/worker/lesson-message.js';
import type { Picture, RunRequest } from '../../packages/viz/src/worker/message.js';
import { shipped } from '../support/lessons.js';
import { TEXT } from './demo.js';

const FILE = 'hedgelark/hedgelark.yaml';

function pictureOf(card: string, faults?: RunRequest['faults']): Picture {
  const { reply } = answer({ id: 1, file: FILE, text: TEXT, card, ...(faults && { faults }) });
  if (reply.kind !== 'picture') throw new Error(JSON.stringify(reply));
  return reply.picture;
}

describe('a run that is cut', () => {
  const whole = pictureOf('doors-early');
  const stop = 6.2;
  const cut = cutAt(whole, stop);

  it('holds no event, flag, time or channel from beyond', () => {
    expect(whole.log.some((e) => e.t > stop)).toBe(true);
    expect(cut.log.every((e) => e.t <= stop)).toBe(true);
    expect(cut.log.length).toBeGreaterThan(30);
    expect(whole.flags.some((f) => f.severity === 'fail')).toBe(true);
    expect(cut.flags.filter((f) => f.to > stop)).toEqual([]);
    expect(cut.timings.filter((t) => t.start + t.total > stop)).toEqual([]);
    expect(cut.timings.some((t) => t.unit === 'tail' && t.total < 6)).toBe(true);
    expect(cut.channels).toEqual([]);
    // No channel can be asked for by a number that no worker holds.
    expect(cut.run).toBeLessThan(0);
    expect(whole.approaches.clearances.some((c) => c.least.t > stop)).toBe(true);
    for (const c of cut.approaches.clearances) {
      expect(c.least.t).toBeLessThanOrEqual(stop);
      const distances = c.gaps.filter((_, i) => i % 5 === 0);
      expect(c.least.gap.distance).toBe(Math.min(...distances.filter(Number.isFinite)));
    }
    expect(cut.outcome.time).toBe(stop);
  });

  it('keeps places in the log, so that causes still lead somewhere', () => {
    cut.log.forEach((e, i) => {
      expect(e.index).toBe(i);
      expect(e.by).toBeLessThan(i);
    });
  });

  it('says nothing of how the run ended', () => {
    const ended = {
      ...whole,
      outcome: { ...whole.outcome, why: 'the lock never came', where: ['x'] },
    };
    expect(cutAt(ended, stop).outcome).toMatchObject({ kind: 'done', why: '', where: [] });
  });
});

it('a bystander sees legs, doors and locks, and is told no fault, flag or reason', () => {
  const whole = pictureOf('healthy', [
    { fault: 'plunger-rigged-early', on: 'right-door-close-valve', severity: 1 },
  ]);
  const seen = bystander(whole);
  expect(seen.faults).toEqual([]);
  expect(seen.flags).toEqual([]);
  expect(seen.timings).toEqual([]);
  expect(seen.approaches.clearances).toEqual([]);
  expect(JSON.stringify(seen.circuit)).not.toContain('right-door-close-valve');
  const who = new Set(seen.log.map((e) => e.device));
  expect(who.has('right-door')).toBe(true);
  expect(who.has('right-uplock')).toBe(true);
  expect(who.has('right-door-close-valve')).toBe(false);
  expect(JSON.stringify(seen.log)).not.toContain('plunger');
  seen.log.forEach((e, i) => expect([e.index, e.by]).toEqual([i, -1]));
});

/** A lesson under way with the worker's answers at once. */
function atWork(): { work: LessonWork; store: Store; kept: Map<string, unknown> } {
  let hear: (reply: Parameters<Store['receive']>[0]) => void = () => undefined;
  const store = new Store((listener) => {
    hear = listener;
    return {
      run: (request) => hear(answer({ ...request, id: 1 }).reply),
      ask: () => undefined,
      stop: () => undefined,
    };
  });
  const maker: LessonMaker = {
    ask: (request: Omit<LessonRequest, 'id' | 'kind'>, told: (reply: LessonReply) => void) =>
      teach({ ...request, kind: 'lesson', id: 1 }, told),
    stop: () => undefined,
  };
  const kept = new Map<string, unknown>();
  const shelf: Shelf = {
    get: (name) => kept.get(name),
    put: (name, value) => void kept.set(name, JSON.parse(JSON.stringify(value))),
  };
  return {
    work: new LessonWork(store, maker, shelf, () => '2001-02-03T04:05:06.000Z'),
    store,
    kept,
  };
}

const early = shipped.find((s) => s.file.includes('early-plunger'))!;

describe('taking a lesson', () => {
  const { work, store, kept } = atWork();
  const step = (i: number) => early.plan().steps[i];

  it('shows no more of the run than the question allows, and all of it after the answer', () => {
    work.open({ file: early.file, text: early.text });
    expect(work.state.phase).toBe('ready');
    work.go(1);
    const stop = step(1).stop ?? NaN;
    expect(store.state.picture?.outcome.time).toBeCloseTo(stop, 6);
    expect(work.veiled).toBe(true);
    store.scrub(20);
    expect(store.state.time).toBeCloseTo(stop, 6);
    const wrong = step(1).choices.find((c) => !step(1).right.includes(c.id))!;
    work.answer([wrong.id]);
    expect(work.state.answers[1]).toMatchObject({ right: false, settled: false, tries: 1 });
    expect(work.veiled).toBe(true);
    work.answer(step(1).right);
    expect(work.state.answers[1]).toMatchObject({ right: true, settled: true, tries: 2 });
    expect(store.state.picture?.outcome.time).toBe(30);
    expect(store.state.time).toBeCloseTo(stop, 6);
  });

  it('takes an order only when every place is right', () => {
    work.go(2);
    work.answer([...step(2).right].reverse());
    expect(work.state.answers[2].right).toBe(false);
    work.answer(step(2).right);
    expect(work.state.answers[2].right).toBe(true);
  });

  it('allows as many checks as the budget has, and hides the fault from the page', () => {
    work.go(4);
    expect(store.state.picture?.faults).toEqual([]);
    expect(store.state.faults).toEqual([]);
    step(4)
      .checks.slice(0, 6)
      .forEach((c) => work.check(c.id));
    expect(work.state.answers[4].checks.length).toBe(step(4).budget);
    work.reveal();
    expect(work.state.answers[4]).toMatchObject({ right: false, settled: true, tries: 0 });
    expect(store.state.picture?.faults.map((f) => f.on)).toEqual(['right-door-close-valve']);
  });

  it('keeps score, and gives results that say what was answered', () => {
    expect(scoreOf(work.state)).toEqual({ right: 2, first: 0, settled: 3, of: 4 });
    const results = resultsOf(work.state);
    expect(results.map((r) => [r.step, r.right, r.tries])).toEqual([
      [2, true, 2],
      [3, true, 2],
      [4, false, 0],
      [5, false, 0],
    ]);
    expect(results[0].time).toBe('2001-02-03T04:05:06.000Z');
    expect(results[0].answer).toBe('Left door starts to close');
    expect(results[3].checks.split('; ').length).toBe(step(4).budget);
    work.setWho('A. Student');
    const whole = JSON.parse(resultsJson(work.state)) as { name: string; results: unknown[] };
    expect(whole.name).toBe('A. Student');
    expect(whole.results.length).toBe(4);
  });

  it('goes on after a reload where it was', () => {
    const again = atWork();
    for (const [name, value] of kept) again.kept.set(name, value);
    again.store.set({ bench: 'lesson' });
    expect(again.work.state.phase).toBe('ready');
    expect(again.work.state.at).toBe(4);
    expect(again.work.state.answers).toEqual(work.state.answers);
    expect(again.work.state.who).toBe('A. Student');
  });

  it('lets the run go when the lesson is left', () => {
    work.again();
    work.go(1);
    expect(work.veiled).toBe(true);
    work.leave();
    expect(work.veiled).toBe(false);
    expect(store.state.picture?.outcome.time).toBe(30);
  });
});

it('a table program takes no word of a lesson for a formula', () => {
  const plan = early.plan();
  const evil = {
    ...NO_LESSON,
    plan: {
      ...plan,
      lesson: { ...plan.lesson!, title: '=1+1' },
      steps: [{ ...plan.steps[1], question: 'A, "b"\nc' }],
    },
    who: '@SUM(A1)',
  };
  const csv = resultsCsv(resultsOf(evil));
  const [head, ...rows] = csv.split('\r\n');
  expect(head).toBe(
    'lesson,file,name,step,kind,question,answer,right answer,right,tries,checks,time',
  );
  expect(rows[0]).toContain(`'=1+1,,'@SUM(A1),1,predict,"A, ""b""\nc",`);
});

it('a lesson about an aircraft that is not here says so', () => {
  const { work } = atWork();
  work.open({ file: 'a.yaml', text: early.text.replace('../hedgelark.yaml', 'elsewhere.yaml') });
  expect(work.state.phase).toBe('refused');
  expect(work.state.failure).toContain('elsewhere.yaml');
});
