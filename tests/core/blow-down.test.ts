import { beforeAll, describe, expect, it } from 'vitest';
import {
  blowDownCard,
  blowDownMargin,
  catalogues,
  chargeTable,
  followUpSwing,
  gasLeft,
  judgeBlowDown,
  minimumCharge,
  momentCurve,
  playBlowDown,
  readScenario,
  serviceSteps,
  simulate,
  toBlowDownText,
  worstPoint,
  type BlowDownMap,
} from '../../packages/core/src/index.js';
import { runProgram } from '../../packages/core/src/cli/program.js';
import * as engine from '../../packages/core/src/index.js';
import { aircraft } from '../support/aircraft.js';

const PSI = 6894.757;
const { scenario, run } = aircraft('tarnswift');
const CARD = 'blow-down';
const at = (charge: number, temperature = 293.15) =>
  playBlowDown(scenario, CARD, { charge: charge * PSI, temperature });

describe('the card of a blow-down', () => {
  it('is the first that pulls a handle, or the named one if it does', () => {
    expect(blowDownCard(scenario)).toBe(CARD);
    expect(() => blowDownCard(scenario, 'healthy')).toThrow(/pulls no blow-down handle/);
    expect(() => blowDownCard({ ...scenario, components: {} })).toThrow(/no blow-down valve/);
  });
});

describe('the least charge', () => {
  const least = minimumCharge(scenario, { card: CARD });

  it('locks every leg, and 1 % less does not', () => {
    expect(least.kind).toBe('found');
    const charge = least.charge / PSI;
    expect(at(charge).verdict).toBe('locked');
    expect(at(0.99 * charge).verdict).toBe('not locked');
  });

  it('says so where no charge is enough', () => {
    const { bottle } = scenario.components;
    const parameters = { ...bottle.parameters, volume: 5e-5 };
    const small = {
      ...scenario,
      components: { ...scenario.components, bottle: { ...bottle, parameters } },
    };
    const found = minimumCharge(small, { card: CARD, temperature: 233.15 });
    expect(found.kind).toBe('never');
    expect(found.charge).toBeNaN();
  });
});

describe('a map', () => {
  const charge = Array.from({ length: 12 }, (_, i) => (500 + 200 * i) * PSI);
  const temperature = Array.from({ length: 9 }, (_, i) => 253.15 + 8 * i);
  let map: BlowDownMap;
  beforeAll(async () => {
    map = await blowDownMargin(scenario, { charge, temperature }, { card: CARD });
  }, 120_000);

  it('has every cell, fewer runs than cells, and both verdicts', () => {
    expect(map.whole).toBe(true);
    expect(map.cells).toHaveLength(108);
    expect(map.runs).toBeLessThan(108);
    expect(map.runs).toBe(map.cells.filter((c) => c?.computed === true).length);
    const verdicts = new Set(map.cells.map((c) => c?.verdict));
    expect(verdicts).toEqual(new Set(['locked', 'not locked']));
  });

  it('never locks less for more charge', () => {
    for (let j = 0; j < temperature.length; j++) {
      const row = map.cells.slice(12 * j, 12 * j + 12).map((c) => c!.verdict === 'locked');
      expect(row.indexOf(true)).toBeGreaterThanOrEqual(0);
      expect(row.slice(row.indexOf(true)).every(Boolean)).toBe(true);
    }
  });

  it('fills in what a run would have said', () => {
    const filled = map.cells.filter((c) => c?.computed === false);
    expect(filled.length).toBeGreaterThan(5);
    for (const cell of filled.slice(0, 8)) {
      const played = playBlowDown(scenario, CARD, {
        charge: cell!.charge,
        temperature: cell!.temperature,
      });
      expect(cell!.verdict).toBe(played.verdict);
      cell!.legs.forEach((leg, n) => {
        const own = played.legs[n];
        expect(leg.locked).toBe(own.locked);
        if (played.verdict !== 'locked') return;
        // What the middle of a square may miss, and as much again for the rest of it.
        expect(Math.abs(leg.time - own.time)).toBeLessThan(0.2 + 0.08 * own.time);
        expect(Math.abs(leg.margin - own.margin)).toBeLessThan(20 + 0.2 * own.available);
      });
    }
  });

  it('keeps what it has when it is cancelled', async () => {
    const signal = { aborted: false };
    const part = await blowDownMargin(
      scenario,
      { charge, temperature },
      {
        card: CARD,
        signal,
        onProgress: (_, cells) =>
          (signal.aborted = cells.filter((c) => c !== undefined).length >= 3),
      },
    );
    expect(part.whole).toBe(false);
    expect(part.cells.filter((c) => c !== undefined)).toHaveLength(3);
  });

  it('refuses a range that does not rise', async () => {
    const bad = { charge: [2e6, 1e6], temperature: [293.15] };
    await expect(blowDownMargin(scenario, bad)).rejects.toThrow(/must rise/);
  });
});

describe('moments over the travel', () => {
  it('have more available than needed in health, and less where a ramp holds the tyre', () => {
    const sound = worstPoint(momentCurve(run(CARD), 'left').points)!;
    expect(sound.available).toBeGreaterThan(sound.needed);
    const hedgelark = aircraft('hedgelark');
    const jammed = worstPoint(momentCurve(hedgelark.run('blow-down-ramp-jams'), 'left').points)!;
    expect(jammed.available).toBeLessThan(jammed.needed);
    const freed = worstPoint(momentCurve(hedgelark.run('blow-down-ramp-frees'), 'left').points)!;
    expect(freed.available).toBeGreaterThan(freed.needed);
  });

  it('ask nothing of a leg that a lock holds, nor of one that has arrived', () => {
    const hedgelark = aircraft('hedgelark');
    // Almost no gas: the uplocks stay shut.
    const held = playBlowDown(hedgelark.scenario, 'blow-down', {
      charge: 2e6,
      temperature: 293.15,
    });
    expect(held.legs[0]).toMatchObject({ locked: false, margin: NaN });
    const { points } = momentCurve(run(CARD), 'left');
    const worst = worstPoint(points)!;
    const stop = hedgelark
      .run('blow-down')
      .log.find((e) => e.device === 'left-leg' && e.to === 'at down');
    expect(points.filter((p) => p.t > (stop?.t ?? NaN)).every((p) => p.held)).toBe(true);
    expect(worst.t).toBeLessThan(stop?.t ?? NaN);
  });

  it('count what is shut in on the up side while the leg stands', () => {
    const stuck = aircraft('hedgelark').run('blow-down-dump-closed');
    const { points } = momentCurve(stuck, 'left');
    expect(points.at(-1)!.needed).toBeGreaterThan(1000);
    expect(() => momentCurve(run('healthy'), 'left')).toThrow(/pulls no blow-down handle/);
  });
});

describe('after a blow-down', () => {
  const blown = run(CARD);
  const steps = serviceSteps(blown);
  const text = steps
    .map(
      (s) => `${s.step} ${s.reason.map((p) => (typeof p === 'string' ? p : p.quantity)).join('')}`,
    )
    .join('\n');

  it('every valve that has moved is named, and the gas that is left', () => {
    expect(steps[0].step).toMatch(/Do not select UP/);
    for (const name of ['door-shuttle', 'gear-shuttle', 'door-dump', 'gear-dump', 'door-blow-down'])
      expect(text).toContain(name);
    expect(text).toMatch(/of free gas, at ambient pressure, are in the oil side/);
    expect(text).toMatch(/never oxygen/);
    expect(Object.keys(gasLeft(blown))).not.toContain('bottle-out');
    expect(Object.values(gasLeft(blown)).reduce((a, b) => a + b, 0)).toBeGreaterThan(1e-3);
  });

  it('a swing with that gas in the oil comes out otherwise than one without', () => {
    const hedgelark = aircraft('hedgelark');
    const after = followUpSwing(hedgelark.run('blow-down'), 'healthy');
    const down = (r: { timings: typeof after.timings }): number =>
      r.timings.find((t) => t.unit === 'left' && t.direction === 'down')!.total;
    expect(down(after)).toBeGreaterThan(down(hedgelark.run('healthy')) + 0.3);
  });
});

describe('the charge table', () => {
  it('goes from -40 to +50 degC and passes through the placard', () => {
    const table = chargeTable(scenario, [233.15, 294.26, 323.15]);
    expect(table.rows[1].pressure / PSI).toBeCloseTo(2500, 0);
    expect(table.rows[0].pressure).toBeLessThan(table.rows[1].pressure);
    expect(chargeTable(scenario).rows).toHaveLength(10);
  });
});

describe('the command line', () => {
  const play = (...argv: string[]) => {
    const out: string[] = [];
    const io = {
      out: (text: string) => out.push(text),
      error: (text: string) => out.push(text),
      outIsTerminal: false,
      errorIsTerminal: false,
      read: () => engine.writeScenario(scenario, catalogues),
      write: () => undefined,
      now: () => 0,
    };
    const code = runProgram(argv, io, engine, '1');
    return { code, text: out.join('') };
  };

  it('prints cautions, verdict, margins, least charge, charge table and what comes after', () => {
    const { code, text } = play('blow-down', 'file.yaml');
    expect(code).toBe(0);
    for (const part of [
      'CAUTION',
      'Every leg reaches down and locked.',
      'least margin',
      'Least charge that still locks every leg',
      'Charge table of bottle',
      'After the blow-down:',
    ])
      expect(text).toContain(part);
    expect(Math.max(...text.split('\n').map((l) => l.length))).toBeLessThanOrEqual(110);
  });

  it('says which leg does not lock, with exit code 1', () => {
    const { code, text } = play(
      'blow-down',
      'f',
      '--card',
      'blow-down-cable-broken',
      '--units',
      'metric',
    );
    expect(code).toBe(1);
    expect(text).toContain('NOT every leg');
  });

  it('refuses a card that pulls no handle', () => {
    expect(play('blow-down', 'f', '--card', 'healthy')).toMatchObject({ code: 2 });
  });
});

it('the text of a report names no-charge and any-charge outcomes', () => {
  const cell = judgeBlowDown(run(CARD));
  const report = {
    title: 'x',
    card: CARD,
    cell,
    table: chargeTable(scenario),
    steps: [],
    ramps: [{ unit: 'left', margin: -0.1, moment: -55, broken: false }],
    minimum: { card: CARD, charge: 0, kind: 'always' as const, runs: 2, cell },
  };
  expect(toBlowDownText(report, 'us')).toContain('even without gas');
  expect(toBlowDownText(report, 'us')).toMatch(
    /left, were its shortening link to break: the ramp holds/,
  );
  const never = { ...report.minimum, kind: 'never' as const, charge: NaN };
  expect(toBlowDownText({ ...report, minimum: never }, 'us')).toContain('No charge');
  expect(readScenario('').scenario).toBeUndefined();
  expect(simulate(scenario, { card: CARD, until: (e) => e.t > 2 }).duration).toBeLessThan(7);
});
