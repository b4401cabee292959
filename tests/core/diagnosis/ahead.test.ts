/** What is played ahead of a sheet, and what is remembered of it. Invented data. */
import { describe, expect, it } from 'vitest';
import { setupsOf } from '../../../packages/core/src/analysis/diagnosis/setup.js';
import { soundRun } from '../../../packages/core/src/analysis/diagnosis/sound-run.js';
import {
  catalogues,
  diagnose,
  playAhead,
  readObservations,
  simulate,
  type ObservationSheet,
  type Signature,
} from '../../../packages/core/src/index.js';
import type { SimulatedRun } from '../../../packages/core/src/machine/index.js';
import { oneLeg } from '../../support/one-leg.js';

function sheetOf(...lines: readonly string[]): ObservationSheet {
  const text = `wheelwell-observations: 1\n${lines.join('\n')}\n`;
  const { sheet, issues } = readObservations(text);
  expect(issues).toEqual([]);
  return sheet!;
}

describe('ahead of a sheet', () => {
  const gear = oneLeg();
  const [unit] = Object.keys(gear.units);
  const [card] = Object.keys(gear.cards);
  const { total = NaN } = simulate(gear, { card }).timings[0];
  const empty = sheetOf('swings:', '  - direction: up');
  const slow = `${(1.4 * total).toFixed(1)} s`;
  const filled = sheetOf(
    'swings:',
    `  - { direction: up, times: { ${unit}: { total: ${slow} } } }`,
  );

  it('is played what the sheet wants when it has been filled in, and what is concluded is the same', async () => {
    const afresh = await diagnose(gear, filled);
    const memory = new Map<string, Signature>();
    const shares: number[] = [];
    const played = await playAhead(gear, empty, { memory, onProgress: (x) => shares.push(x) });
    expect(played).toBe(memory.size);
    expect(shares).toHaveLength(played);
    expect(shares.at(-1)).toBe(1);
    const after = await diagnose(gear, filled, { memory });
    expect(after.groups).toEqual(afresh.groups);
    // What is bisected between severities is the sheet's own.
    expect(after.runs).toBeLessThan(0.35 * afresh.runs);
    // Once more there is nothing to play.
    expect(await playAhead(gear, empty, { memory })).toBe(0);
  });

  it('goes on where it was stopped', async () => {
    const memory = new Map<string, Signature>();
    const signal = { aborted: false };
    const onProgress = () => (signal.aborted = memory.size >= 10);
    expect(await playAhead(gear, empty, { memory, signal, onProgress })).toBe(10);
    signal.aborted = false;
    const stop = () => (signal.aborted = memory.size >= 25);
    expect(await playAhead(gear, empty, { memory, signal, onProgress: stop })).toBe(15);
  });

  it('is nothing of a sheet without swings', async () => {
    expect(await playAhead(gear, { ...empty, swings: [] })).toBe(0);
  });
});

describe('conditions that the scenario has of its own', () => {
  const leg = oneLeg();
  const [card] = Object.keys(leg.cards);
  const { flow } = leg.components.stand.parameters as { flow: number };
  const usual = leg.cards[card].temperature ?? leg.fluid.temperature;
  const blank = sheetOf('swings:', '  - direction: up');
  const keyOf = (conditions: ObservationSheet['conditions']): string =>
    setupsOf(catalogues, leg, { ...blank, conditions }).setups.at(0).key;
  it('make no other swing of it when they are noted', () => {
    const plain = keyOf({});
    expect(keyOf({ supplyFlow: flow, temperature: usual, doors: 'connected' })).toBe(plain);
    expect(keyOf({ supplyFlow: 0.9 * flow })).not.toBe(plain);
    expect(keyOf({ temperature: usual + 1 })).not.toBe(plain);
  });
});

describe('runs of the sound gear', () => {
  it('are played once, and the oldest of many again', () => {
    const leg = oneLeg();
    const run = simulate(leg) as unknown as SimulatedRun;
    const played: string[] = [];
    const ask = (key: string): SimulatedRun =>
      soundRun(leg, key, () => {
        played.push(key);
        return run;
      });
    const keys = ['a', 'b', 'c', 'd', 'e', 'f'];
    for (const key of [...keys, 'a']) expect(ask(key)).toBe(run);
    expect(played).toEqual(keys);
    // B is now the one asked for longest ago.
    ask('g');
    ask('a');
    expect(played).toEqual([...keys, 'g']);
    ask('b');
    expect(played).toEqual([...keys, 'g', 'b']);
    // Of another scenario nothing is known.
    soundRun(oneLeg(), 'a', () => {
      played.push('other');
      return run;
    });
    expect(played.at(-1)).toBe('other');
  });
});
