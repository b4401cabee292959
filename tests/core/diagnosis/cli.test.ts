/** `wheelwell diagnose`: what it prints, its exit codes, and what it says of bad input. */
import { describe, expect, it } from 'vitest';
import { runProgramAsync } from '../../../packages/core/src/cli/program.js';
import * as engine from '../../../packages/core/src/index.js';
import { oneLeg } from '../../support/one-leg.js';

const scenario = engine.writeScenario(oneLeg(), engine.catalogues);
const [unit] = Object.keys(oneLeg().units);
/** What a weak supply makes of the way up. */
const weak = engine.simulate(oneLeg(), {
  faults: [{ fault: 'ground-supply-weak', on: 'stand', severity: 0.7 }],
});
const [slow] = weak.timings;
const TIMES = `{ locked: ${(slow.locked - slow.start).toFixed(1)} s, total: ${slow.total.toFixed(1)} s }`;

async function play(
  sheet: string,
  more: readonly string[] = [],
  files: Readonly<Record<string, string>> = {},
) {
  const out: string[] = [];
  const errors: string[] = [];
  const io = {
    out: (text: string) => out.push(text),
    error: (text: string) => errors.push(text),
    outIsTerminal: false,
    errorIsTerminal: false,
    read: (file: string) => {
      const text = { 'sheet.yaml': sheet, 'one.yaml': scenario, ...files }[file];
      if (text === undefined) throw new Error(`${file} is not there`);
      return text;
    },
    write: () => undefined,
    now: () => 0,
  };
  const code = await runProgramAsync(
    ['diagnose', 'one.yaml', 'sheet.yaml', ...more],
    io,
    engine,
    '1',
  );
  return { code, text: out.join(''), errors: errors.join('') };
}
const sheet = (times: string): string =>
  `wheelwell-observations: 1\nswings:\n  - direction: up\n    times:\n      ${unit}: ${times}\n`;

describe('wheelwell diagnose', () => {
  it('prints cautions first, the ranking with bars, what was seen beside what is foretold, what to do next, and who decides', async () => {
    const { code, text } = await play(sheet(TIMES));
    expect(code).toBe(1);
    const places = ['CAUTION', '1 swing up', '[#', 'foretold', 'check', 'licensed person'].map(
      (w) => text.replace(/\s+/g, ' ').indexOf(w),
    );
    expect(places.every((p) => p >= 0)).toBe(true);
    expect(places.slice(0, 5)).toEqual([...places.slice(0, 5)].sort((a, b) => a - b));
    expect(text).toContain(`${slow.total.toFixed(1)}0 s`);
  });

  it('gives it as JSON that reads back', async () => {
    const { text } = await play(sheet(TIMES), ['--json']);
    const { diagnosis } = JSON.parse(text) as { diagnosis: engine.Diagnosis };
    expect(diagnosis.whole).toBe(true);
    expect(diagnosis.groups[0].probability).toBeGreaterThan(0);
  });

  it('takes the recordings that a sheet names from beside it', async () => {
    const { t, v } = weak.series('leg.angle')!;
    const rows = [...t].flatMap((x, i) => (x < slow.start + 7 ? [`${x},${v[i]}`] : []));
    const up = `time (s),leg.angle (rad)\n${[...new Set(rows)].join('\n')}\n`;
    const named = `${sheet(TIMES)}    recordings: [{ file: up.csv, offset: ${slow.start} s }, { file: lost.csv }]\n`;
    const { text } = await play(named, [], { 'up.csv': up });
    expect(text).toMatch(/right leaves, recorded/);
    expect(text.replace(/\s+/g, ' ')).toMatch(
      /Not used: .*recording lost\.csv: its file is not there/,
    );
  });

  it('says in clear words what is wrong with a sheet, with its line, and does not guess', async () => {
    const { code, errors, text } = await play(sheet('{ total: fast }'));
    expect(code).toBe(2);
    expect(text).toBe('');
    expect(errors).toMatch(/sheet\.yaml:5/);
    expect((await play('wheelwell-observations: 1\n')).errors).toMatch(/no swing/);
    expect((await play('aircraft: x\n')).code).toBe(2);
  });
});
