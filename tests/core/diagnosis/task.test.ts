/** How tasks travel to who plays them, and the sound swing that need not be played. Invented data. */
import { describe, expect, it } from 'vitest';
import { setupsOf } from '../../../packages/core/src/analysis/diagnosis/setup.js';
import {
  playSignature,
  signatureOf,
} from '../../../packages/core/src/analysis/diagnosis/signature.js';
import {
  catalogues,
  diagnose,
  readObservations,
  signaturePlayer,
  simulate,
  taskSender,
  type SentTask,
  type SignaturePool,
} from '../../../packages/core/src/index.js';
import { oneLeg } from '../../support/one-leg.js';

const gear = oneLeg();
const [unit] = Object.keys(gear.units);
const sheetOf = (...swings: readonly string[]) =>
  readObservations(`wheelwell-observations: 1\nswings:\n${swings.join('\n')}\n`).sheet!;
const { total = NaN } = simulate(gear, { card: Object.keys(gear.cards)[0] }).timings[0];
const slow = `{ ${unit}: { total: ${(1.4 * total).toFixed(1)} s } }`;
const up = `  - { direction: up, times: ${slow} }`;
const down = '  - direction: down';

describe('a task that is sent to a player', () => {
  it('carries its setup the first time only, and what is concluded is the same', async () => {
    const [send, play] = [taskSender(), signaturePlayer()];
    const whole: string[] = [];
    const pool: SignaturePool = {
      play: async (tasks, onSignature) => {
        for (const [i, task] of tasks.entries()) {
          const sent = structuredClone(send(task));
          if ('scenario' in sent.setup) whole.push(sent.setup.key);
          onSignature(i, play(sent));
        }
        return Promise.resolve();
      },
    };
    const far = await diagnose(gear, sheetOf(up), { pool });
    expect(whole.length).toBeGreaterThan(0);
    expect(new Set(whole).size).toBe(whole.length);
    expect(far.groups).toEqual((await diagnose(gear, sheetOf(up))).groups);
  });

  it('is refused where its setup never came', () => {
    const task: SentTask = { setup: { key: 'in the cold' }, faults: [] };
    expect(() => signaturePlayer()(task)).toThrow(/never sent whole: setup in the cold/);
  });
});

describe('the sound swing of a setup', () => {
  it('is the one that was played to see how far to play it, where that is the whole card', () => {
    const { setups } = setupsOf(catalogues, gear, sheetOf(up, down));
    const { run, reading } = setups.at(0);
    const setup = setups.toPlay(0);
    const played = playSignature(catalogues, { setup, faults: [] });
    const known = signatureOf(run!, reading);
    expect(Object.keys(known)).toEqual(Object.keys(played));
    // One is read off the steps, the other off its ticks between them: a stopwatch has 0.2 s.
    for (const [key, value] of Object.entries(played))
      expect(Math.abs(known[key] - value), key).toBeLessThan(1e-4 * Math.max(1, Math.abs(value)));
  });

  it('is played where the operator goes on to what nobody asks for', () => {
    const { setups } = setupsOf(catalogues, gear, sheetOf(up));
    expect(setups.at(0).ending).toBeDefined();
    expect(setups.at(0).run).toBeUndefined();
  });
});
