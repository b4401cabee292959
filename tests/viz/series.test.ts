/** Channels of the run on show: asked for once, of the right run, with the run's own values. */
import { describe, expect, it } from 'vitest';
import { valueAt } from '../../packages/viz/src/model/series.js';
import { Store } from '../../packages/viz/src/model/store.js';
import { answer } from '../../packages/viz/src/worker/answer.js';
import type { Reply, SeriesRequest } from '../../packages/viz/src/worker/message.js';
import { afterOf, seriesOf } from '../../packages/viz/src/worker/series.js';
import { demoRun, TEXT } from './demo.js';

function open(): { store: Store; asked: SeriesRequest[]; answerAll: () => void } {
  const asked: SeriesRequest[] = [];
  let hear: (reply: Reply) => void = () => undefined;
  let id = 0;
  const store = new Store((listener) => {
    hear = listener;
    return {
      run: (request) => listener(answer({ ...request, id: ++id }).reply),
      ask: (request) => {
        if (request.kind === 'series') asked.push(request);
        else hear(afterOf(request));
      },
      stop: () => undefined,
    };
  });
  store.open({ file: 'hedgelark.yaml', text: TEXT });
  return { store, asked, answerAll: () => asked.splice(0).forEach((a) => hear(seriesOf(a).reply)) };
}

describe('channels of the run on show', () => {
  it('come with the values of the simulation, at the ends of steps and fine', async () => {
    const { store, answerAll } = open();
    const run = demoRun();
    for (const fine of [false, true]) {
      store.series.want(['left-leg.angle', 'pump.flow', 'no-such.thing'], fine);
      await Promise.resolve();
      answerAll();
      const trace = store.state.series.get('left-leg.angle');
      const own = fine
        ? run.series('left-leg.angle')
        : run.look(['left-leg.angle']).get('left-leg.angle');
      expect(trace?.v).toEqual(Float32Array.from(own?.v ?? []));
      expect(store.state.series.has('no-such.thing')).toBe(false);
    }
  });

  it('are asked for once a run, all that is wanted together; a finer one takes the place of a coarse one', async () => {
    const { store, asked, answerAll } = open();
    store.series.want(['left-leg.angle']);
    store.series.want(['left-leg.angle', 'right-leg.angle']);
    await Promise.resolve();
    expect(asked.map((a) => a.names)).toEqual([['left-leg.angle', 'right-leg.angle']]);
    answerAll();
    store.series.want(['left-leg.angle']);
    await Promise.resolve();
    expect(asked).toEqual([]);
    store.series.want(['left-leg.angle'], true);
    await Promise.resolve();
    answerAll();
    store.series.want(['left-leg.angle']);
    await Promise.resolve();
    expect(asked).toEqual([]);
    expect(store.state.series.get('left-leg.angle')?.fine).toBe(true);
  });

  it('of a run no longer on show are not taken', async () => {
    const { store, asked, answerAll } = open();
    store.series.want(['left-leg.angle']);
    await Promise.resolve();
    const late = asked.splice(0);
    store.chooseCard('hand-pump');
    store.series.want(['left-leg.angle']);
    await Promise.resolve();
    answerAll();
    const shown = store.state.series.get('left-leg.angle');
    expect(shown?.run).toBe(store.state.picture?.run);
    expect(
      late
        .flatMap((a) => seriesOf(a).reply)
        .every((r) => r.kind === 'series' && r.traces.length === 0),
    ).toBe(true);
  });

  it('are read straight between points, after a jump at a jump', () => {
    const trace = {
      run: 1,
      fine: true,
      t: Float32Array.of(0, 1, 1, 2),
      v: Float32Array.of(0, 2, 4, 8),
    };
    expect(valueAt(trace, 0.5)).toBe(1);
    expect(valueAt(trace, 1)).toBe(4);
    expect(valueAt(trace, 1.5)).toBe(6);
    expect(valueAt(trace, 9)).toBe(8);
    expect(valueAt(trace, -1)).toBe(0);
  });
});

describe('a swing after the blow-down on show', () => {
  it('is played when it is asked for, and takes longer with the gas in the oil', () => {
    const { store } = open();
    store.chooseCard('blow-down');
    store.askAfter();
    const { after } = store.state.blowDown;
    expect(after?.run).toBe(store.state.picture?.run);
    const total = (which: 'sound' | 'gassed'): number =>
      after?.found?.[which].find((x) => x.unit === 'left' && x.direction === 'down')?.total ?? NaN;
    expect(total('gassed')).toBeGreaterThan(total('sound') + 0.3);
  });
});
