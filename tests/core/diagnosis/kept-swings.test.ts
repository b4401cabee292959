/** Swings kept on disk from one diagnosis to the next. */
import { mkdtempSync, readdirSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { keptSwings } from '../../../packages/core/src/cli/kept-swings.js';
import { runProgramAsync } from '../../../packages/core/src/cli/program.js';
import * as engine from '../../../packages/core/src/index.js';
import { oneLeg } from '../../support/one-leg.js';

let root: string;
let program: string;
let folder: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'kept-'));
  program = root;
  folder = join(root, 'cache', 'deep');
  writeFileSync(join(program, 'program.js'), 'one');
});
afterEach(() => {
  rmSync(root, { recursive: true });
});
const kept = (scenario: string) => keptSwings(scenario, folder, program);
const signature = { up: 1, 'up/left/locked': 4.25 };
const files = (): string[] => readdirSync(folder);

describe('swings that were played', () => {
  it('are there again for the same scenario and the same program, and for no other', () => {
    const first = kept('a');
    first.memory.set('swing', signature);
    first.keep();
    expect(kept('a').memory.get('swing')).toEqual(signature);
    expect(kept('b').memory.size).toBe(0);
    writeFileSync(join(program, 'program.js'), 'two');
    expect(kept('a').memory.size).toBe(0);
  });

  it('are not written where nothing came to them', () => {
    const first = kept('a');
    first.memory.set('swing', signature);
    first.keep();
    const file = join(folder, files()[0]);
    utimesSync(file, 1, 1);
    kept('a').keep();
    expect(statSync(file).mtimeMs).toBe(1000);
  });

  it('are begun anew where the file is broken', () => {
    const first = kept('a');
    first.memory.set('swing', signature);
    first.keep();
    for (const text of ['', 'broken', '\u00ff\u000fo{}']) {
      writeFileSync(join(folder, files()[0]), text);
      expect(kept('a').memory.size).toBe(0);
    }
  });

  it('are left out in silence where there is no room for them', () => {
    writeFileSync(join(root, 'cache'), 'a file where the folder should be');
    const first = kept('a');
    first.memory.set('swing', signature);
    expect(first.keep).not.toThrow();
    expect(kept('a').memory.size).toBe(0);
  });

  it('are kept of the last dozen of scenarios', () => {
    for (let i = 0; i < 14; i++) {
      const one = kept(`scenario ${i}`);
      one.memory.set('swing', signature);
      one.keep();
      for (const name of files()) {
        const { mtimeMs } = statSync(join(folder, name));
        utimesSync(join(folder, name), mtimeMs / 1000 - 10, mtimeMs / 1000 - 10);
      }
    }
    expect(files()).toHaveLength(12);
    expect(kept('scenario 0').memory.size).toBe(0);
    expect(kept('scenario 13').memory.size).toBe(1);
  });
});

describe('wheelwell diagnose', () => {
  const scenario = engine.writeScenario(oneLeg(), engine.catalogues);
  const [unit] = Object.keys(oneLeg().units);
  const sheet = `wheelwell-observations: 1\nswings:\n  - direction: up\n    times: { ${unit}: { total: 7 s } }\n  - direction: down\n`;
  async function said(...more: string[]): Promise<{ code: number; text: string }> {
    let text = '';
    const io = {
      out: (s: string) => (text += s),
      error: (s: string) => (text += s),
      outIsTerminal: false,
      errorIsTerminal: false,
      read: (file: string) => (file === 'one.yaml' ? scenario : sheet),
      write: () => undefined,
      kept,
      now: () => 0,
    };
    const code = await runProgramAsync(['diagnose', 'one.yaml', ...more], io, engine, '1');
    return { code, text };
  }
  const runs = async (...more: string[]): Promise<number> => {
    const { text } = await said('sheet.yaml', '--json', ...more);
    return (JSON.parse(text) as { diagnosis: engine.Diagnosis }).diagnosis.runs;
  };

  it('without a sheet plays what one may want, and keeps it', async () => {
    const { code, text } = await said();
    expect(code).toBe(0);
    const [, played, keeps] = /^(\d+) swings were played, (\d+) are kept/.exec(text) ?? [];
    expect(Number(played)).toBeGreaterThan(100);
    expect(keeps).toBe(played);
    const few = await runs();
    expect(few).toBeLessThan(0.3 * (await runs('--afresh')));
    expect((await said()).text).toMatch(/^0 swings were played/);
  });

  it('plays nothing twice, unless it is asked to', async () => {
    const first = await runs();
    expect(first).toBeGreaterThan(20);
    expect(await runs()).toBe(0);
    expect(await runs('--afresh')).toBe(first);
  });
});
