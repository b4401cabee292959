/** The diagnosis bench without a browser: what is asked of the workers, what goes on the sheet, what is said. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { DiagnosisWork } from '../../packages/viz/src/model/diagnosis.js';
import { keyOf, pickedOf } from '../../packages/viz/src/model/diagnosis-state.js';
import { Store } from '../../packages/viz/src/model/store.js';
import { TestCardWork } from '../../packages/viz/src/model/test-card.js';
import { answer } from '../../packages/viz/src/worker/answer.js';
import type { DiagnosisQuestion } from '../../packages/viz/src/worker/diagnosis-client.js';
import type {
  CheckFacts,
  DiagnosisReply,
  MemberLine,
  Ranking,
} from '../../packages/viz/src/worker/diagnosis-message.js';
import { answerSheet } from '../../packages/viz/src/worker/sheet.js';
import { TEXT } from './demo.js';

const EXAMPLE = {
  file: 'hedgelark/observations/slow-left.yaml',
  text: readFileSync(
    fileURLToPath(
      new URL('../../scenarios/hedgelark/observations/slow-left.yaml', import.meta.url),
    ),
    'utf8',
  ),
};
const source = { file: 'hedgelark/hedgelark.yaml', text: TEXT };

const member = (fault: string, on: string): MemberLine => ({
  title: `${fault}, ${on}`,
  causes: [{ fault, on }],
  percent: '80 %',
  severities: [{ at: 0.6, range: [0.4, 0.8] }],
  note: '',
  severityText: '60 % (40 % to 80 %)',
  comparisons: [],
  remedies: [],
});
const DRY = member('dry-bearing', 'left-leg');
const LEAK = member('piston-seal-bypass', 'left-leg-jack');

function ranking(first: MemberLine, standing: Ranking['us']['standing'] = 'open'): Ranking {
  const line = (m: MemberLine, probability: number) => ({
    title: m.title,
    probability,
    percent: m.percent,
    odds: 'likely',
    members: [m],
    more: 0,
  });
  const us = {
    title: 'Hedgelark',
    swings: '1 swing up',
    about: [],
    standing,
    verdict: `Likeliest: ${first.title}.`,
    ranking: [line(first, 0.8), line(first === DRY ? LEAK : DRY, 0.2)],
    checks: [],
    looks: [],
    unused: [],
    defers: '',
  };
  return { us, metric: us };
}

const LOOK: CheckFacts = {
  check: 'swung-by-hand',
  on: 'left-leg',
  title: 'Swing the part by hand',
  how: '',
  minutes: 20,
  tools: '',
  caution: '',
  tells: '',
};

/** The bench on a store that shows the demo, with a stand-in for the workers. */
function bench() {
  const asked: DiagnosisQuestion[] = [];
  /** What is played for while nothing is asked. */
  const ahead: DiagnosisQuestion[] = [];
  let hear: (reply: DiagnosisReply) => void = () => undefined;
  let stops = 0;
  const store: Store = new Store((listener) => ({
    run: (request) => listener(answer({ ...request, id: 1 }).reply),
    ask: () => undefined,
    stop: () => undefined,
  }));
  const card = new TestCardWork(
    store,
    { ask: (question) => Promise.resolve(answerSheet(question)) },
    { get: () => null, put: () => undefined },
    () => 1_900_000_000,
  );
  const work = new DiagnosisWork(
    store,
    card,
    {
      explain: (question, listener) => {
        asked.push(question);
        hear = listener;
      },
      ahead: (question, listener) => {
        ahead.push(question);
        hear = listener;
      },
      stop: () => (stops += 1),
    },
    [EXAMPLE],
  );
  store.open(source);
  const tell = (r: DiagnosisReply): void => hear(r);
  return { store, card, work, asked, ahead, tell, stops: () => stops };
}

/** The same with the example on the desk, asked about. */
async function atWork() {
  const all = bench();
  all.store.set({ bench: 'diagnosis' });
  await vi.advanceTimersByTimeAsync(1000);
  all.work.openExample();
  await vi.advanceTimersByTimeAsync(1000);
  return all;
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('the bench', () => {
  it('has the sheet explained by itself when it is laid on the desk, and again when it changes', async () => {
    const { store, card, asked } = await atWork();
    expect(store.state.bench).toBe('diagnosis');
    const last = asked.at(-1);
    expect(last?.sheet.swings).toHaveLength(2);
    expect(last?.scenario).toMatchObject(source);
    expect(last?.ways).toEqual(['up', 'down']);
    const before = asked.length;
    card.changeRow(0, (s) => ({ ...s, note: 'second one', remarks: { left: ['moved by jerks'] } }));
    await vi.advanceTimersByTimeAsync(1000);
    expect(asked).toHaveLength(before + 1);
    expect(asked.at(-1)?.sheet.swings[0].remarks).toEqual({ left: ['moved by jerks'] });
  });

  it('has the recordings that the sheet names weighed, once they are laid over the traces', async () => {
    const { store, card, asked } = await atWork();
    card.changeRow(0, (s) => ({ ...s, recordings: [{ file: 'left.csv', columns: {} }] }));
    await vi.advanceTimersByTimeAsync(1000);
    expect(asked.at(-1)?.recordings).toEqual({});
    const laid = (id: number, file: string, text: string) => ({
      ...{ id, file, text, choices: {}, recording: undefined, offset: 0 },
      ...{ found: undefined, seeking: false, failure: '' },
    });
    const { traces } = store.state;
    const recordings = [laid(1, 'left.csv', 'time (s)\n0\n1\n'), laid(2, 'other.csv', 'x\n1\n')];
    store.set({ traces: { ...traces, recordings } });
    await vi.advanceTimersByTimeAsync(1000);
    expect(asked.at(-1)?.recordings).toEqual({ 'left.csv': 'time (s)\n0\n1\n' });
  });

  it('does not ask anew for who took it down, nor while the watch runs', async () => {
    const { card, asked } = await atWork();
    const before = asked.length;
    card.changeSheet((sheet) => ({ ...sheet, by: 'K', note: 'windy' }));
    await vi.advanceTimersByTimeAsync(1000);
    card.start();
    card.changeSheet((sheet) => ({ ...sheet, readingError: 0.4 }));
    await vi.advanceTimersByTimeAsync(5000);
    expect(asked).toHaveLength(before);
    card.discard();
    await vi.advanceTimersByTimeAsync(1000);
    expect(asked).toHaveLength(before + 1);
  });

  it('says the first cause once, a new one again, and that it is established', async () => {
    const { store, tell } = await atWork();
    tell({ id: 1, kind: 'ranked', share: 0.3, whole: false, ranking: ranking(LEAK) });
    expect(store.state.said).toContain(LEAK.title);
    store.set({ said: '' });
    tell({ id: 1, kind: 'ranked', share: 0.5, whole: false, ranking: ranking(LEAK) });
    expect(store.state.said).toBe('');
    tell({ id: 1, kind: 'ranked', share: 0.7, whole: false, ranking: ranking(DRY) });
    expect(store.state.said).toContain(DRY.title);
    tell({ id: 1, kind: 'whole', runs: 9, ranking: ranking(DRY, 'established') });
    expect(store.state.said).toMatch(/^Cause established\. /);
    expect(store.state.diagnosis).toMatchObject({ whole: true, busy: false, share: 1 });
  });

  it('has a whole ranking while swings are still weighed for its checks, and plays nothing ahead until then', async () => {
    const { store, work, card, ahead, tell } = await atWork();
    ahead.length = 0;
    tell({ id: 1, kind: 'ranked', share: 0.95, whole: true, ranking: ranking(DRY) });
    expect(store.state.diagnosis).toMatchObject({ whole: true, busy: true, share: 0.95 });
    // Anything may change on the page meanwhile.
    store.set({ bench: 'diagnosis' });
    card.put({ picked: 0 });
    await vi.advanceTimersByTimeAsync(1000);
    expect(ahead).toHaveLength(0);
    work.stop();
    card.put({ picked: -1 });
    await vi.advanceTimersByTimeAsync(1000);
    expect(ahead).toHaveLength(0);
    expect(store.state.diagnosis).toMatchObject({ whole: true, busy: false });
  });

  it('looks at a sheet that was opened at once, at what is changed after it when the hand rests', async () => {
    const { store, work, card, asked } = bench();
    store.set({ bench: 'diagnosis' });
    await vi.advanceTimersByTimeAsync(1000);
    work.openExample();
    await vi.advanceTimersByTimeAsync(1);
    expect(asked).toHaveLength(1);
    for (let i = 0; i < 3; i++) {
      card.changeRow(0, (s) => ({ ...s, note: `${i}` }));
      await vi.advanceTimersByTimeAsync(100);
    }
    expect(asked).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(300);
    expect(asked).toHaveLength(2);
  });

  it('plays ahead of an empty sheet, shows how far, and rests on other benches', async () => {
    const { store, asked, ahead, tell, stops } = bench();
    store.set({ bench: 'diagnosis' });
    await vi.advanceTimersByTimeAsync(1000);
    expect([asked.length, ahead.length]).toEqual([0, 1]);
    tell({ id: 1, kind: 'played', share: 0.4 });
    expect(store.state.diagnosis).toMatchObject({ busy: true, share: 0.4, whole: false });
    store.set({ bench: 'swing' });
    expect(stops()).toBe(1);
    expect(store.state.diagnosis.busy).toBe(false);
    // Back again it goes on; what was played to the end is not begun anew.
    store.set({ bench: 'test-card' });
    await vi.advanceTimersByTimeAsync(3000);
    expect(ahead).toHaveLength(2);
    tell({ id: 1, kind: 'played', share: 1 });
    expect(store.state.diagnosis).toMatchObject({ busy: false, share: 1 });
    store.set({ bench: 'diagnosis' });
    await vi.advanceTimersByTimeAsync(1000);
    expect(ahead).toHaveLength(2);
    expect(asked).toHaveLength(0);
  });

  it('plays on after a whole ranking without a word, but not after it was stopped', async () => {
    const { store, work, card, asked, ahead, tell } = await atWork();
    ahead.length = 0;
    work.stop();
    await vi.advanceTimersByTimeAsync(1000);
    expect(ahead).toHaveLength(0);
    work.again();
    await vi.advanceTimersByTimeAsync(1000);
    tell({ id: 1, kind: 'whole', runs: 9, ranking: ranking(DRY) });
    expect(ahead).toEqual([asked.at(-1)]);
    tell({ id: 2, kind: 'played', share: 0.2 });
    expect(store.state.diagnosis).toMatchObject({ busy: false, share: 1, whole: true });
    // A swing of these that cannot be played takes nothing from the ranking.
    tell({ id: 2, kind: 'broken', message: 'a swing could not go on' });
    expect(store.state.diagnosis).toMatchObject({ busy: false, whole: true, failure: '' });
    // What is asked next goes before it.
    const before = asked.length;
    card.changeRow(0, (s) => ({ ...s, remarks: { left: ['moved by jerks'] } }));
    await vi.advanceTimersByTimeAsync(1000);
    expect(asked).toHaveLength(before + 1);
    expect(store.state.diagnosis).toMatchObject({ busy: true, whole: false });
  });

  it('looks at the likeliest until another is picked, which stays picked when the order changes', async () => {
    const { store, work, tell } = await atWork();
    const picked = () => pickedOf(store.state.diagnosis, 'us');
    tell({ id: 1, kind: 'ranked', share: 0.3, whole: false, ranking: ranking(DRY) });
    expect(picked()).toBe(DRY);
    work.pick(LEAK);
    tell({ id: 1, kind: 'ranked', share: 0.4, whole: false, ranking: ranking(DRY) });
    expect(keyOf(picked() ?? DRY)).toBe(keyOf(LEAK));
  });

  it('puts a look on the sheet, in place of what it showed before, and takes it back', async () => {
    const { work, card, asked } = await atWork();
    work.look(LOOK, false);
    work.look(LOOK, true);
    const { check, on } = LOOK;
    expect(card.sheet?.looks).toEqual([{ check, on, found: true }]);
    await vi.advanceTimersByTimeAsync(1000);
    expect(asked.at(-1)?.sheet.looks).toEqual([{ check, on, found: true }]);
    work.takeBack(0);
    expect(card.sheet).not.toHaveProperty('looks');
  });

  it('has swings timed under what a check asks for, until it is as usual again', async () => {
    const { store, work, card } = await atWork();
    work.swing({
      ...LOOK,
      on: '',
      title: 'Swing at half the flow',
      conditions: { supplyFlow: 1e-4 },
    });
    expect(store.state.bench).toBe('test-card');
    card.start();
    card.stop(true);
    expect(card.sheet?.swings.at(-1)).toMatchObject({
      conditions: { supplyFlow: 1e-4 },
      note: 'Swing at half the flow',
    });
    card.swingUnder(undefined);
    card.addBlank();
    expect(card.sheet?.swings.at(-1)).toMatchObject({ conditions: {}, note: '' });
  });

  it('puts a cause with its fitted severity on the run of the card that was tested, undoable, with all that was timed over it', async () => {
    const { store, work } = await atWork();
    work.show(DRY);
    expect(store.state.picture?.faults).toEqual([
      { fault: 'dry-bearing', on: 'left-leg', severity: 0.6 },
    ]);
    const since = new Set(store.state.measured.map((m) => m.since));
    expect(since).toEqual(new Set(['selector up', 'selector down']));
  });

  it('puts it on the run under the conditions of the sheet, and under the card’s own again', async () => {
    const { store, work, card } = await atWork();
    const length = () => store.state.picture?.timings.find((t) => t.unit === 'left')?.locked ?? NaN;
    work.show(DRY);
    const usual = length();
    const supplyFlow = 1.5e-4;
    card.changeSheet((sheet) => ({ ...sheet, conditions: { supplyFlow } }));
    work.show(DRY);
    expect(store.state.picture?.stood).toEqual({ supplyFlow });
    expect(length()).toBeGreaterThan(1.2 * usual);
    // Another severity of it stands as before.
    store.setFaults([{ fault: 'dry-bearing', on: 'left-leg', severity: 0.1 }]);
    expect(store.state.picture?.stood).toEqual({ supplyFlow });
    work.show(DRY);
    work.showUsual();
    expect(store.state.picture).not.toHaveProperty('stood');
    expect(store.state.picture?.faults).toMatchObject([{ fault: 'dry-bearing' }]);
    expect(length()).toBeCloseTo(usual, 9);
  });

  it('says of an oil that nobody knows that there is none', () => {
    const { reply } = answer({ id: 1, ...source, stood: { fluid: 'whale' } });
    expect(reply).toMatchObject({ kind: 'failure', message: 'there is no oil called whale' });
  });

  it('knows nothing of another aircraft', async () => {
    const { store, tell, stops } = await atWork();
    tell({ id: 1, kind: 'whole', runs: 9, ranking: ranking(DRY) });
    store.open({ file: 'other/other.yaml', text: TEXT });
    await vi.advanceTimersByTimeAsync(1000);
    expect(stops()).toBe(1);
    expect(store.state.diagnosis.ranking).toBeUndefined();
  });
});
