import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findOffset, formatIssue, readRecording, toCsv } from '@wheelwell/core';
import type { ChannelInfo, Series } from '@wheelwell/core';
import { writeTable } from '../../packages/core/src/recording/index.js';
import { demoRun } from '../viz/demo.js';

const CHANNELS: readonly ChannelInfo[] = [
  { name: 'left-leg.angle', title: 'angle from down', quantity: 'angle', of: 'left-leg' },
  { name: 'up-line.pressure', title: 'absolute pressure', quantity: 'pressure', of: 'up-line' },
  { name: 'bottle.gauge', title: 'its gauge', quantity: 'gauge-pressure', of: 'bottle' },
  { name: 'relief.flow', title: 'relief flow', quantity: 'flow', of: 'relief' },
];
const AMBIENT = 95_000;
const PSI = 6894.757293168361;

const read = (text: string, more: Parameters<typeof readRecording>[1] = {}) =>
  readRecording(text, { file: 'rig.csv', channels: CHANNELS, ambient: AMBIENT, ...more });
const said = (text: string, more = {}): string[] => read(text, more).issues.map(formatIssue);
const column = (text: string, index = 1, more = {}): number[] => [
  ...(read(text, more).series.find((s) => s.column === index)?.v ?? []),
];

describe('a table written and read', () => {
  const cell = fc.string({ unit: fc.constantFrom(...'ab ,;"#\r\n\té1-'), maxLength: 8 });
  const table = fc.integer({ min: 2, max: 5 }).chain((width) =>
    fc.array(fc.array(cell, { minLength: width, maxLength: width }), {
      minLength: 1,
      maxLength: 6,
    }),
  );

  it('numbers come back to the last digit, gaps as gaps, whatever the heads are called', () => {
    // A written 0 has no sign.
    const figure = fc.double({ noNaN: true, min: -1e9, max: 1e9 }).map((x) => x + 0);
    const value = fc.oneof(figure, fc.constant(NaN));
    const rows = fc.array(fc.tuple(fc.double({ min: 1e-3, max: 1, noNaN: true }), value, value), {
      minLength: 1,
      maxLength: 40,
    });
    fc.assert(
      fc.property(rows, table, (steps, [heads]) => {
        let now = 0;
        const made = steps.map(([dt, a, b]) => [(now += dt), a, b] as const);
        const text = writeTable([
          // A head that begins with a letter and has no brackets is a name and nothing else.
          ['time (s)', ...heads.slice(0, 2).map((h, i) => `x${i} ${h.replaceAll(',', ';')}`)],
          ...made.map((row) => row.map((x) => (Number.isNaN(x) ? '' : String(x)))),
        ]);
        const { series, columns, issues } = read(text);
        expect(issues).toEqual([]);
        for (const index of [1, 2] as const) {
          const there = made.some((row) => !Number.isNaN(row[index]));
          expect(columns[index].kind).toBe(there ? 'figures' : 'text');
          if (!there) continue;
          const found = series.find((s) => s.column === index)!;
          expect([...found.t]).toEqual(made.map(([t]) => t));
          expect([...found.v]).toEqual(made.map((row) => row[index]));
        }
      }),
    );
  });

  it('a run as CSV reads back as the run, in US and in metric units', () => {
    const run = demoRun();
    const names = run.channels.map((c) => c.name);
    for (const units of ['us', 'metric', 'si'] as const) {
      const text = toCsv(run, { units, content: 'traces' });
      const { series, issues } = readRecording(text, { channels: run.channels });
      expect(issues).toEqual([]);
      expect(series.map((s) => s.channel)).toEqual(names);
      for (const { channel, t, v } of series) {
        const was = run.sampled(channel)!;
        expect(t.length).toBe(was.t.length);
        const size = was.v.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
        // Seven figures are written; a temperature's unit has an offset of some hundred kelvin.
        const off = v.reduce((most, x, i) => Math.max(most, Math.abs(x - was.v[i])), 0);
        expect(off, channel).toBeLessThanOrEqual(1e-6 * size);
      }
    }
  });
});

describe('heads and units', () => {
  it('a unit stands in brackets, behind a comma, or in a row below', () => {
    for (const text of [
      'time (s),left leg angle (deg)\n0,90\n',
      'Time [s];left-leg.angle [deg]\n0;90\n',
      't\t"angle left-leg, deg"\n0\t90\n',
      'time,left_leg angle\ns,deg\n0,90\n',
      'time,left-leg.angle\n(s),(deg)\n0,90\n',
    ]) {
      const { series, issues } = read(text);
      expect(issues).toEqual([]);
      expect(series[0].channel).toBe('left-leg.angle');
      expect(series[0].v[0]).toBeCloseTo(Math.PI / 2, 12);
    }
  });

  it('a pressure is what a gauge shows unless it says absolute', () => {
    const at = (head: string, value = 1000): number => column(`time,${head}\n0,${value}\n`)[0];
    expect(at('up-line.pressure (psi)')).toBeCloseTo(1000 * PSI + AMBIENT, 3);
    expect(at('up-line.pressure (psig)')).toBeCloseTo(1000 * PSI + AMBIENT, 3);
    expect(at('up-line.pressure (psia)')).toBeCloseTo(1000 * PSI, 3);
    expect(at('up-line.pressure (bar)')).toBeCloseTo(1e8 + AMBIENT, 3);
    expect(at('up-line.pressure (Pa)')).toBe(1000);
    expect(at('bottle.gauge (psi)')).toBeCloseTo(1000 * PSI, 3);
    expect(at('some other gauge (psi)')).toBeCloseTo(1000 * PSI, 3);
  });

  it('what the user says of a column goes before what its head says', () => {
    const text = 'time,CH1,CH2 (psi)\n0,2,300\n';
    const choices = {
      1: { channel: 'relief.flow', unit: 'gal/min' },
      2: { channel: 'bottle.gauge' },
    };
    const { series, issues } = read(text, { choices });
    expect(issues).toEqual([]);
    expect(series.map((s) => s.channel)).toEqual(['relief.flow', 'bottle.gauge']);
    expect(series[0].v[0]).toBeCloseTo((2 * 3.785411784e-3) / 60, 12);
    expect(read(text, { choices: { 1: { channel: '' } } }).series[0].channel).toBe('');
  });

  it('times may be in ms, of the day, or dated; the day counts from its first row', () => {
    expect([...read('time (ms),a\n0,1\n250,2\n').series[0].t]).toEqual([0, 0.25]);
    const day = read('clock,a\n23:59:58.50,1\n23:59:59.75,2\n').series[0].t;
    expect([...day]).toEqual([0, 1.25]);
    const dated = read('timestamp,a\n2031-05-01T23:59:59,1\n2031-05-02 00:00:01,2\n');
    expect([...dated.series[0].t]).toEqual([0, 2]);
    expect(dated.issues).toEqual([]);
  });

  it('semicolons and tabs leave the comma to the decimals; remarks and blank lines are passed over', () => {
    const text =
      '\uFEFF# rig 2\r\n\r\ntime;bottle.gauge (bar)\r\n0,5;12,25\r\n# pause\r\n1,0;12,5\r\n';
    const { series, issues } = read(text);
    expect(issues).toEqual([]);
    expect([...series[0].t]).toEqual([0.5, 1]);
    expect(series[0].v[0]).toBeCloseTo(12.25e5, 6);
  });

  it('a column of words is text; one without names has its number', () => {
    const { columns } = read('time,note,x\n0,gear up,1\n1,,2\n');
    expect(columns.map((c) => c.kind)).toEqual(['time', 'text', 'figures']);
    expect(read('0,1\n1,2\n').columns.map((c) => c.title)).toEqual(['column 1', 'column 2']);
  });
});

describe('gaps and what is wrong', () => {
  it('an empty cell, nan and a dash are gaps', () => {
    expect(column('time,a\n0,\n1,NaN\n2,--\n3,4\n')).toEqual([NaN, NaN, NaN, 4]);
  });

  it('a cell that is no number is placed by line and column, and is a gap', () => {
    const text = '# rig\ntime,note,left-leg.angle (deg)\n0,"two\nlines",10\n1,ok,1O\n';
    expect(said(text)).toEqual([
      'rig.csv:5:6: left-leg.angle: this is not a number, found 1O; allowed: a number, or nothing for a gap',
    ]);
    expect(column(text, 2)[1]).toBeNaN();
  });

  it('rows that do not rise, or have no time, are left out and told', () => {
    const { series, issues } = read('time,a\n0,1\n2,2\n1,3\n,4\n3,5\n');
    expect([...series[0].t]).toEqual([0, 2, 3]);
    expect([...series[0].v]).toEqual([1, 2, 5]);
    expect(issues.map((i) => [i.line, i.column])).toEqual([
      [4, 1],
      [5, 1],
    ]);
    expect(issues[0].message).toContain('does not come after');
    expect(issues[1].message).toContain('no time');
  });

  it('a unit that is missing, unknown or of another kind is told at the head', () => {
    expect(said('time,left-leg.angle\n0,1\n')[0]).toContain(
      'rig.csv:1:6: left-leg.angle: a unit is missing: an angle belongs here',
    );
    expect(said('time,left-leg.angle (dog)\n0,1\n')[0]).toContain('did you mean deg?');
    expect(said('time,left-leg.angle (psi)\n0,1\n')[0]).toContain('psi is a pressure');
    expect(said('time,up-line.pressure (deg)\n0,1\n')[0]).toContain('deg is an angle');
    expect(said('time (psi),a\n0,1\n')[0]).toContain('rig.csv:1:1: time: psi is a pressure');
  });

  it('a quote left open, a decimal comma, a wrong channel and an empty file are told', () => {
    expect(said('time,a\n0,"1\n')[0]).toContain('rig.csv:2:3: this quote is never closed');
    expect(said('time,a\n0,1,5\n')[0]).toContain('a decimal comma parts a figure in two');
    const wrong = said('time,a (deg)\n0,1\n', { choices: { 1: { channel: 'left-leg.angel' } } });
    expect(wrong[0]).toContain('did you mean left-leg.angle?');
    for (const text of ['', '\n\n', 'time,a\n', '# nothing\n'])
      expect(said(text)[0]).toContain('there are no figures in this file');
  });

  it('a file that is wrong throughout is told of in a few lines', () => {
    const rows = Array.from({ length: 500 }, (_, i) => `${i},x${i}`).join('\n');
    const found = said(`time,left-leg.angle (deg)\n${rows}\n`);
    expect(found).toHaveLength(21);
    expect(found[20]).toContain('480 more');
  });

  it('never throws, whatever the text', () => {
    const text = fc.string({ unit: fc.constantFrom(...'a1.:-, ;"#\r\n\t(psi)é'), maxLength: 60 });
    fc.assert(
      fc.property(text, (t) => {
        const { series, columns } = read(t);
        for (const s of series) {
          expect(s.t.length).toBe(s.v.length);
          expect(columns[s.column].kind).toBe('figures');
        }
      }),
    );
  });
});

describe('the offset in time', () => {
  const run = demoRun();
  const shifted = (
    s: Series,
    by: number,
    keep = (_t: number, _i: number): boolean => true,
  ): Series => {
    const at = [...s.t.keys()].filter((i) => keep(s.t[i], i));
    return {
      t: Float64Array.from(at, (i) => s.t[i] + by),
      v: Float64Array.from(at, (i) => s.v[i]),
    };
  };
  const pair = (channel: string, by: number, keep?: (t: number, i: number) => boolean) => ({
    recorded: shifted(run.sampled(channel)!, by, keep),
    simulated: run.series(channel)!,
  });
  const angle = 'left-leg.angle';
  const pressure = run.channels.find((c) => c.quantity === 'pressure' && /head/.test(c.name))!.name;

  it('is found to a few milliseconds, ahead or behind', () => {
    for (const by of [-7.3, 0, 0.042, 12.6]) {
      const found = findOffset([pair(angle, by), pair(pressure, by)])!;
      expect(found.offset).toBeCloseTo(-by, 2);
      expect(found.likeness).toBeGreaterThan(0.999);
    }
  });

  it('is found from a part of the swing, thinly sampled, with gaps and a gauge that reads wrong', () => {
    const found = findOffset(
      [
        pair(angle, 3, (t, i) => t > 1 && t < 12 && i % 20 === 0),
        pair(pressure, 3, (t, i) => t > 1 && t < 12 && i % 20 === 0),
      ].map(({ recorded, simulated }) => ({
        simulated,
        recorded: {
          t: recorded.t,
          v: recorded.v.map((v, i) => (i % 7 === 0 ? NaN : 1.03 * v + 2e-3)),
        },
      })),
    )!;
    expect(Math.abs(found.offset + 3)).toBeLessThan(0.02);
  });

  it('is not told where nothing varies', () => {
    const flat: Series = { t: Float64Array.of(0, 1, 2, 3), v: Float64Array.of(5, 5, 5, 5) };
    expect(findOffset([{ recorded: flat, simulated: run.series(angle)! }])).toBeUndefined();
    expect(findOffset([])).toBeUndefined();
  });
});
