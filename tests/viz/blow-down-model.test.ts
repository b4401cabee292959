import { describe, expect, it } from 'vitest';
import { judgeBlowDown, readScenario, simulate } from '@wheelwell/core';
import type { BlowDownCell } from '@wheelwell/core';
import {
  boundary,
  cellBox,
  cellUnder,
  grid,
  spanOf,
} from '../../packages/viz/src/drawing/heat-map.js';
import { heat } from '../../packages/viz/src/drawing/heat.js';
import { panels, trace } from '../../packages/viz/src/drawing/moment-plot.js';
import {
  BlowDownWork,
  cellAt,
  nearest,
  rangesOf,
  sampleAt,
} from '../../packages/viz/src/model/blow-down.js';
import { Store } from '../../packages/viz/src/model/store.js';
import { answer } from '../../packages/viz/src/worker/answer.js';
import type { MapReply, MapRequest } from '../../packages/viz/src/worker/blow-down-message.js';
import { pictureOf } from '../../packages/viz/src/worker/map.js';
import { poolBehind } from '../../packages/viz/src/worker/port-pool.js';
import type { Picture, RunRequest } from '../../packages/viz/src/worker/message.js';
import { TEXT } from './demo.js';

const FILE = 'hedgelark/hedgelark.yaml';

/** CIELAB from sRGB: CIE 15:2004 with the white point D65, gamma of IEC 61966-2-1. */
function lab(colour: string): [number, number, number] {
  const hex = /^#(..)(..)(..)$/
    .exec(colour)
    ?.slice(1)
    .map((h) => parseInt(h, 16));
  const dec = /rgb\((\d+), (\d+), (\d+)\)/.exec(colour)?.slice(1).map(Number);
  const [r, g, b] = (hex ?? dec ?? []).map((v) => {
    const c = v / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  const f = (t: number): number =>
    t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29;
  const x = f((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / 0.95047);
  const y = f(0.2126729 * r + 0.7151522 * g + 0.072175 * b);
  const z = f((0.0193339 * r + 0.119192 * g + 0.9503041 * b) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

describe('the scale of colours', () => {
  // CIE 1976 colour difference (CIE 15:2004): the distance in CIELAB; about 2.3 can just be told
  // (Mahy, Van Eycken, Oosterlinck 1994, from memory). Rounding to 255 values makes the steps differ.
  it('has steps that look equal, and grows lighter all the way', () => {
    const n = 24;
    const colours = Array.from({ length: n + 1 }, (_, i) => lab(heat(i / n)));
    const steps = colours.slice(1).map((c, i) => {
      const before = colours[i];
      return { far: Math.hypot(...c.map((v, k) => v - before[k])), up: c[0] - before[0] };
    });
    const mean = steps.reduce((sum, s) => sum + s.far, 0) / n;
    for (const { far, up } of steps) {
      expect(Math.abs(far - mean)).toBeLessThan(2.3 / 2);
      expect(up).toBeGreaterThan(0);
    }
    expect(colours[n][0] - colours[0][0]).toBeGreaterThan(70);
  });
});

describe('the map laid out', () => {
  const g = grid([10, 20, 30, 40], [1, 2, 3], 400, 300);

  it('has equal cells with their values in the middle, the higher on top', () => {
    expect(cellBox(g, 0, 0)).toEqual({ x: 0, y: 200, width: 100, height: 100 });
    expect(g.toX(20)).toBeCloseTo(150, 9);
    expect(g.toY(3)).toBeCloseTo(50, 9);
    expect(cellUnder(g, 399, 1)).toEqual([3, 2]);
    expect(cellUnder(g, -5, 400)).toEqual([0, 0]);
  });

  it('draws the boundary along cell edges, and none beside what is unknown', () => {
    // Inside from the third column on: one upright line at x = 200, in three pieces.
    expect(boundary(g, (i) => i >= 2)).toBe('M200.0,200.0v100.0M200.0,100.0v100.0M200.0,0.0v100.0');
    expect(boundary(g, (i) => (i === 1 ? undefined : i >= 2))).toBe('');
    expect(boundary(g, (_, j) => j > 0)).toMatch(/^(M\d+\.0,200\.0h100\.0){4}$/);
  });

  it('spans what is known', () => {
    expect(spanOf([NaN, 3, 1])).toEqual([1, 3]);
    expect(spanOf([NaN])).toBeUndefined();
    expect(spanOf([2, 2])).toEqual([1.5, 2.5]);
  });

  it('breaks a trace where there is nothing, and turns travel round', () => {
    const p = panels([0, 10], [5, 0], [[0, 8], [2]], 100, 200, true);
    expect([p.x(10), p.x(0)]).toEqual([0, 100]);
    expect(p.moment.domain()[0]).toBe(0);
    expect(p.pressure.range()[0]).toBeLessThan(p.moment.range()[1]);
    const { x, moment } = p;
    expect(trace([0, 1, 2, 3], [1, NaN, 1, 1], x, moment).match(/M/g)).toHaveLength(2);
  });
});

function facts(card: string, more: Partial<RunRequest> = {}): Picture {
  const { reply } = answer({ id: 1, file: FILE, text: TEXT, card, ...more });
  if (reply.kind !== 'picture') throw new Error('the demo does not run');
  return reply.picture;
}

describe('the picture of a blow-down', () => {
  const blown = facts('blow-down');

  it('says what core says of every leg', () => {
    const { scenario } = readScenario(TEXT, { file: FILE });
    if (scenario === undefined) throw new Error('the demo does not read');
    const judged = judgeBlowDown(simulate(scenario, { card: 'blow-down' }));
    expect(blown.blowDown?.run?.legs).toEqual(judged.legs);
    expect(blown.blowDown?.run?.verdict).toBe('locked');
    expect(blown.blowDown?.table.rows).toHaveLength(10);
    expect(blown.blowDown?.run?.steps.map((s) => s.step).join()).toContain('Do not select UP');
  });

  it('has a curve for each leg whose least margin is the one told', () => {
    for (const leg of blown.blowDown?.run?.legs ?? []) {
      const curve = blown.blowDown?.run?.curves.find((c) => c.unit === leg.unit);
      if (curve === undefined) throw new Error(`no curve of ${leg.unit}`);
      const { worst, available, needed, held, t } = curve;
      expect(available[worst] - needed[worst]).toBeCloseTo(leg.margin, 1);
      const free = [...t.keys()].filter((i) => held[i] === 0);
      const least = Math.min(...free.map((i) => available[i] - needed[i]));
      expect(available[worst] - needed[worst]).toBeCloseTo(least, 6);
      expect(sampleAt(curve, t[0] - 0.5)).toBe(-1);
      expect(sampleAt(curve, t[7])).toBeGreaterThanOrEqual(7);
    }
  });

  it('is played under another charge and temperature, and says so', () => {
    const condition = { charge: 4e6, temperature: 263.15 };
    const low = facts('blow-down', { condition });
    expect(low.blowDown?.run?.condition).toEqual(condition);
    expect(low.blowDown?.run?.verdict).toBe('not locked');
    expect(low.blowDown?.own).toEqual(blown.blowDown?.own);
  });

  it('has no run where the card pulls no handle, but the cards that do', () => {
    const { blowDown } = facts('healthy');
    expect(blowDown?.run).toBeUndefined();
    expect(blowDown?.cards).toContain('blow-down');
    expect(blowDown?.cards).not.toContain('healthy');
  });
});

const cell = (charge: number, locked: boolean): BlowDownCell => ({
  charge,
  temperature: 300,
  verdict: locked ? 'locked' : 'not locked',
  legs: [1, 2].map((n) => ({
    unit: `unit-${n}`,
    locked,
    time: locked ? n : NaN,
    margin: 10 * n,
    at: 0,
    available: 20 * n,
    needed: 10 * n,
  })),
  gasLeft: 0.5,
  endPressure: 1e6,
  computed: true,
});

describe('the map as arrays', () => {
  it('keeps what is known of each unit, and of the worst', () => {
    const ranges = { charge: [1, 2, 3], temperature: [300] };
    const map = pictureOf(ranges, ['unit-1', 'unit-2'], [undefined, cell(2, false), cell(3, true)]);
    expect([0, 1, 2].map((i) => cellAt(map, i, 0, -1).verdict)).toEqual([
      'unknown',
      'not locked',
      'locked',
    ]);
    expect(cellAt(map, 2, 0, -1)).toMatchObject({ time: 2, margin: 10, gas: 0.5 });
    expect(cellAt(map, 2, 0, 1)).toMatchObject({ time: 2, margin: 20 });
    expect(cellAt(map, 1, 0, 0).time).toBeNaN();
    expect(nearest(map, { charge: 2.4, temperature: 300 })).toBeUndefined();
  });

  it('is played behind several ports, each condition once', async () => {
    const channels = [new MessageChannel(), new MessageChannel()];
    const played: number[] = [];
    channels.forEach(({ port2 }) => {
      port2.onmessage = (e: MessageEvent<{ charge: number }>) => {
        played.push(e.data.charge);
        port2.postMessage(cell(e.data.charge, true));
      };
    });
    const wanted = [5, 6, 7, 8, 9].map((charge) => ({ charge, temperature: 300 }));
    const got: number[] = [];
    const pool = poolBehind<{ charge: number; temperature: number }, BlowDownCell>(
      channels.map((c) => c.port1),
    );
    await pool.play(wanted, (i, c) => (got[i] = c.charge));
    await pool.play([], () => undefined);
    expect(got).toEqual([5, 6, 7, 8, 9]);
    expect(played.sort()).toEqual([5, 6, 7, 8, 9]);
    channels.forEach(({ port1, port2 }) => [port1, port2].forEach((p) => p.close()));
  });
});

describe('the bench', () => {
  /** A store whose runs come at once, and a stand-in for the workers. */
  function bench(): {
    store: Store;
    work: BlowDownWork;
    asked: MapRequest[];
    tell: (reply: MapReply) => void;
    stopped: () => number;
  } {
    const asked: MapRequest[] = [];
    let hear: (reply: MapReply) => void = () => undefined;
    let stops = 0;
    const store: Store = new Store((listener) => ({
      run: (request) => listener(answer({ ...request, id: 1 }).reply),
      ask: () => undefined,
      stop: () => undefined,
    }));
    const work = new BlowDownWork(store, {
      make: (request, listener) => {
        asked.push(request);
        hear = listener;
      },
      stop: () => (stops += 1),
    });
    return { store, work, asked, tell: (reply) => hear(reply), stopped: () => stops };
  }

  it('asks for its map when it comes into sight, and for another when the test is another', () => {
    const { store, asked, tell, stopped } = bench();
    store.open({ file: FILE, text: TEXT });
    store.chooseCard('blow-down');
    expect(asked).toHaveLength(0);
    store.set({ bench: 'blow-down' });
    expect(asked).toHaveLength(1);
    const [request] = asked;
    expect(request.charge.length * request.temperature.length).toBe(25 * 19);
    expect(request.at).toBe(store.state.picture?.blowDown?.own.temperature);
    tell({ kind: 'least', least: { kind: 'found', charge: 8e6, temperature: request.at } });
    expect(store.state.blowDown.least?.charge).toBe(8e6);
    store.chooseCard('blow-down-cold');
    expect(stopped()).toBe(1);
    expect(asked).toHaveLength(2);
    expect(store.state.blowDown.least).toBeUndefined();
  });

  it('plays a cell from the pull of the handle on, keeps the map, and goes back', () => {
    const { store, work, asked, tell } = bench();
    store.open({ file: FILE, text: TEXT });
    store.chooseCard('blow-down');
    store.set({ bench: 'blow-down' });
    const { charge, temperature } = asked[0];
    const cells = temperature.flatMap(() => charge.map((c) => cell(c, c > 8e6)));
    const map = pictureOf({ charge, temperature }, ['left'], cells);
    tell({ kind: 'whole', map, runs: 9 });
    work.play(2, 3);
    const played = store.state.picture?.blowDown?.run;
    expect(played?.condition).toEqual({ charge: charge[2], temperature: temperature[3] });
    expect(store.state.playing).toBe(true);
    expect(store.state.time).toBeCloseTo((played?.curves[0]?.t[0] ?? NaN) - 0.2, 3);
    expect(store.state.blowDown.map).toBe(map);
    expect(asked).toHaveLength(1);
    work.playOwn();
    expect(store.state.picture?.blowDown?.run?.condition).toEqual(
      store.state.picture?.blowDown?.own,
    );
  });

  it('has a cell at the charge that the table asks for, fine or not', () => {
    const { blowDown } = facts('blow-down');
    if (blowDown === undefined) throw new Error('no bottle');
    for (const fineness of ['plain', 'fine'] as const) {
      const { charge, temperature } = rangesOf(blowDown, fineness);
      expect(charge[0]).toBeCloseTo(0.2 * blowDown.table.charge, 3);
      expect(charge.at(-1)).toBeCloseTo(1.4 * blowDown.table.charge, 3);
      expect(temperature[0]).toBeCloseTo(233.15, 9);
      expect(temperature.at(-1)).toBeCloseTo(323.15, 9);
      const full = { charge: blowDown.table.charge, temperature: 293.15 };
      const [i, j] = nearest({ charge, temperature }, full) ?? [-1, -1];
      expect(charge[i]).toBeCloseTo(full.charge, 3);
      expect(temperature[j]).toBeCloseTo(full.temperature, 9);
      if (fineness === 'fine') expect(charge.length * temperature.length).toBeGreaterThan(1600);
    }
  });
});
