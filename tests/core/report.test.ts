/* eslint-disable no-control-regex -- escape codes are what these tests look for */
import { describe, expect, it } from 'vitest';
import { toCsv, toDocument, toJson, toTable } from '../../packages/core/src/report/index.js';
import { columns, plain, wrap } from '../../packages/core/src/report/layout.js';
import { swing, type Story } from '../support/evidence.js';
import { runOf } from '../support/run.js';

const table = (change?: (s: Story) => void, units: 'us' | 'metric' = 'us'): string =>
  toTable(runOf(swing(change)), { units });

/** Rows of the event table with its head. */
const eventRows = (change?: (s: Story) => void, everyEvent = false): string[] => {
  const lines = toTable(runOf(swing(change)), { units: 'us', everyEvent }).split('\n');
  const from = lines.findIndex((line) => /^ +# +time s/.test(line));
  return lines.slice(from, lines.indexOf('', from));
};

const rotten = (s: Story): void => {
  s.left.doorCloses = 5.2;
  s.limits.arrivalSpeed = 0.35;
  s.limits.spread = 1;
};

describe('test card', () => {
  it('opens with the cautions', () => {
    const lines = table().split('\n');
    expect(lines[0]).toMatch(/^CAUTION {2}Simulation, not approved data/);
    expect(lines.slice(1, 4).every((l) => l.startsWith('         '))).toBe(true);
  });
  it('shows fails with margin, time, devices, explanation and what to do next', () => {
    const text = table(rotten);
    expect(text).toContain('FAIL  -0.800 s  asked for: Doors wait for the gear  [door-before-leg]');
    expect(text).toContain('at 5.20 to 6.00 s: left-door, left-leg');
    expect(text).toMatch(/Next: Look at what lets oil/);
  });
  it('shows margins in the units asked for', () => {
    // 0.05 rad/s is 2.9 deg/s; both systems show degrees.
    expect(table(rotten)).toContain('CAUTION  -2.9 deg/s');
    const pressure = (s: Story): void => {
      s.limits.residualPressure = 0;
      s.channels['up-line.pressure'] = [
        'pressure',
        'up-line',
        [
          [0, 101325],
          [25, 101325 + 6894757.29],
        ],
      ];
    };
    // 1000 psi = 6.894757 MPa = 68.95 bar (exact definition of the pound-force and the inch).
    expect(table(pressure, 'us')).toContain('-1000 psi');
    expect(table(pressure, 'metric')).toContain('-68.9 bar');
  });
  it('shows times from the selector, per unit and side by side', () => {
    const text = table();
    expect(text).toMatch(/left +left +up +1\.00 +0\.50 +5\.00 +6\.40 +6\.40/);
    expect(text).toContain('Left to right, up at 1.00 s: 0.30 s apart, left first');
    expect(table((s) => (s.right.doorClosed = null))).toMatch(
      /right +right +up +1\.00 +0\.80 +5\.30 +- +-/,
    );
  });
  it('lists events in aligned columns with their causes', () => {
    const rows = eventRows();
    expect(rows).toHaveLength(1 + swing().log.length);
    const at = rows[0].indexOf('device');
    expect(rows.slice(1).every((r) => r[at - 1] === ' ' && r[at] !== ' ')).toBe(true);
    expect(rows[1]).toMatch(/^ +0 +1\.000 {2}selector +up +operator$/);
  });
  it('says the result in its head and on its last line', () => {
    for (const [text, result] of [
      [table(), 'nothing flagged'],
      [table(rotten), 'FLAGGED, 1 fail, 2 cautions'],
    ]) {
      expect(text).toMatch(new RegExp(`^Result +${result}$`, 'm'));
      expect(text.endsWith(`\n\nResult: ${result}\n`)).toBe(true);
    }
    const stuck = table((s) => {
      s.outcome = { kind: 'stuck', time: 20, where: ['pump'], why: 'It stuck.', hint: 'Look.' };
    });
    expect(stuck).toMatch(/Result: NOT FINISHED \(stuck at 20\.000 s\): It stuck\. Look\./);
  });
  it('shows what fails before what wants care', () => {
    const words = [...table(rotten).matchAll(/^ {2}(FAIL|CAUTION) /gm)].map((match) => match[1]);
    expect(words).toEqual(['FAIL', 'CAUTION', 'CAUTION']);
  });
  it('gives the same advice once', () => {
    const text = table((s) => (s.limits.arrivalSpeed = 0.05));
    expect(text.match(/\[hard-arrival\]/g)!.length).toBeGreaterThan(1);
    expect(text.match(/Next: Look at the restrictors/g)).toHaveLength(1);
  });
  it('has no trailing blanks, no line over 120 columns and no escape codes unless painted', () => {
    const text = table(rotten);
    for (const line of text.split('\n')) {
      expect(line).toBe(line.trimEnd());
      expect(line.length).toBeLessThanOrEqual(120);
    }
    expect(text).not.toContain('\u001b');
    const painted = toTable(runOf(swing(rotten)), {
      units: 'us',
      paint: (t, s) => `<${s}>${t}</>`,
    });
    expect(painted).toContain('<fail>FAIL  -0.800 s  asked for: Doors wait for the gear</>');
  });
  it('keeps control characters of a scenario away from the terminal', () => {
    const text = table((s) => {
      s.extraLog.push({
        t: 1,
        device: 'x',
        from: 'a\u001b[31m',
        to: 'b\n',
        cause: '\u202e',
        by: -1,
        kind: 'mode',
        speed: 0,
      });
    });
    expect(text).not.toMatch(/[\u001b\u202e]/);
  });
});

describe('events on paper', () => {
  const change = (t: number, from: string, to: string, by = -1) =>
    ({ t, device: 'flap', from, to, cause: `now ${to}`, by, kind: 'motion', speed: 0 }) as const;
  const of = (entries: ReturnType<typeof change>[], everyEvent = false): string[] =>
    eventRows((s) => void s.extraLog.push(...entries), everyEvent).filter((row) =>
      row.includes('flap'),
    );

  it('leave out a state that lasts less than a blink, and tell how many', () => {
    const bounce = [
      change(2, 'rising', 'at up'),
      change(2.01, 'at up', 'falling'),
      change(2.02, 'falling', 'at up'),
      change(9, 'at up', 'falling'),
    ];
    expect(of(bounce).map((row) => row.trim().split(/ {2,}/).slice(1))).toEqual([
      ['2.000', 'flap', 'at up', 'now at up'],
      ['9.000', 'flap', 'falling', 'now falling'],
    ]);
    expect(of(bounce, true)).toHaveLength(4);
    const text = toTable(runOf(swing((s) => void s.extraLog.push(...bounce))), { units: 'us' });
    expect(text).toContain('Left out: 2 changes back and forth within 0.05 s.');
  });
  it('call a state that is left and taken up again for longer to and fro', () => {
    const hunting = Array.from({ length: 20 }, (_, i) =>
      i % 2 === 0 ? change(2 + i / 50, 'shut', 'open') : change(2 + i / 50, 'open', 'shut'),
    );
    expect(
      of([change(1.5, '', 'shut'), ...hunting]).map((row) => row.trim().split(/ {2,}/)[3]),
    ).toEqual(['shut', 'to and fro', 'shut']);
  });
  it('put how all stood at the start in a sentence', () => {
    const text = table((s) => (s.starts = true));
    expect(text).toMatch(/^ {2}At the start: /m);
    expect(eventRows((s) => (s.starts = true)).some((row) => / 0\.000 /.test(row))).toBe(false);
  });
});

describe('JSON', () => {
  it('is versioned, in SI, and holds what the run holds', () => {
    const run = runOf(swing(rotten));
    const read = JSON.parse(toJson(run)) as ReturnType<typeof toDocument>;
    expect(read.format).toBe('wheelwell-run');
    expect(read.version).toBe(1);
    expect(read.flags).toEqual(run.flags);
    expect(read.events).toEqual(run.log);
    expect(read.timings[0].total).toBeCloseTo(6.4, 12);
    expect(read.differences[0].seconds).toBeCloseTo(0.3, 12);
    expect(read.cautions[0]).toContain('not approved data');
  });
  it('keeps its members: a change here is a change of version', () => {
    expect(Object.keys(toDocument(runOf(swing())))).toEqual([
      'format',
      'version',
      'units',
      'cautions',
      'scenario',
      'card',
      'outcome',
      'tolerance',
      'tick',
      'timings',
      'differences',
      'flags',
      'events',
      'statistics',
    ]);
  });
  it('says null for what was not reached', () => {
    const read = JSON.parse(toJson(runOf(swing((s) => (s.right.doorClosed = null))))) as ReturnType<
      typeof toDocument
    >;
    expect(read.timings[1]).toMatchObject({ unit: 'right', doors: null, total: null });
    expect(read.differences[0].seconds).toBeNull();
  });
});

/** Reads RFC 4180 text back. */
function parse(text: string): string[][] {
  return text
    .split('\r\n')
    .filter((l) => l !== '')
    .map((l) =>
      [...l.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)]
        .slice(0, -1)
        .map((m) => m[1].replace(/^"|"$/g, '').replaceAll('""', '"')),
    );
}

describe('CSV', () => {
  it('holds every event, quoted where needed', () => {
    const run = runOf(
      swing((s) =>
        s.extraLog.push({
          t: 2,
          device: 'x',
          from: 'a',
          to: 'b',
          cause: 'one, "two"',
          by: 3,
          kind: 'note',
          speed: 0,
        }),
      ),
    );
    const rows = parse(toCsv(run, { units: 'us', content: 'events' }));
    expect(rows).toHaveLength(run.log.length + 1);
    const row = rows.find((r) => r[3] === 'x');
    expect(row?.slice(1, 8)).toEqual(['2', 'note', 'x', 'a', 'b', 'one, "two"', '3']);
  });
  it('holds the traces with units in their heads', () => {
    const run = runOf(swing());
    const rows = toCsv(run, { units: 'us', content: 'traces', channels: ['left-leg.angle'] }).split(
      '\r\n',
    );
    expect(rows[0]).toBe('time (s),left-leg.angle (deg)');
    expect(rows).toHaveLength(1 + 6 + 1);
    // 1.5 rad = 85.94367 deg.
    expect(rows[3]).toBe('6,85.94367');
    const si = toCsv(run, { units: 'si', content: 'traces', channels: ['left-leg.angle'] }).split(
      '\r\n',
    );
    expect(si[3]).toBe('6,1.5');
  });
  it('is a head alone when there is no such channel', () => {
    expect(toCsv(runOf(swing()), { units: 'us', content: 'traces', channels: ['nothing'] })).toBe(
      'time (s)\r\n',
    );
  });
});

describe('layout', () => {
  it('aligns columns and trims the end', () => {
    expect(
      columns(
        [{ title: 'a' }, { title: 'bb', align: 'right' }, { title: 'c' }],
        [
          ['xx', '1', ''],
          ['y', '10', 'z'],
        ],
      ),
    ).toEqual(['a   bb  c', 'xx   1', 'y   10  z']);
  });
  it('wraps at blanks only and keeps long words whole', () => {
    expect(wrap('aa bb cccccccccc d', 6, ' ')).toEqual([' aa bb', ' cccccccccc', ' d']);
    expect(wrap('', 6, ' ')).toEqual([]);
  });
  it('makes control characters blanks', () => {
    expect(plain('a\u001b[31mb\r\nc')).toBe('a [31mb c');
  });
});
