import { describe, expect, it } from 'vitest';
import { formatIssue, readObservations, readScenario, writeObservations } from '@wheelwell/core';
import { readFileSync } from 'node:fs';

const PSI = 6894.757293168361;
const TEXT = readFileSync(
  new URL('../../../scenarios/hedgelark/hedgelark.yaml', import.meta.url),
  'utf8',
);
const { scenario } = readScenario(TEXT, { file: 'hedgelark.yaml' });
const SHEET = `wheelwell-observations: 1
aircraft: Hedgelark, a tail-wheel single on jacks
date: 2031-05-17
reading-error: 0.3 s
conditions: { supply-flow: 4 gal/min, supply-pressure: 1500 psi, temperature: 68 degF, doors: connected }
swings:
  - direction: up
    times:
      left: { moving: 1.2 s, locked: { at: 7.4 s, error: 0.5 s }, doors: 8.4 s }
      right: { moving: 1.2 s, locked: }
      gear: { total: 8.6 s }
    order: [left moving, tail locked, left locked]
    gauges: { pressure: { static: 1500 psi, moving: 900 psi, dead-head: 1480 psi, peak: 1600 psi } }
    remarks: { tail: [moved by jerks], right: did not move }
    recordings:
      - file: swing-1.csv
        time: { column: t, unit: ms }
        columns: { pressure.pressure: P1 }
`;
const read = (text: string) => readObservations(text, { file: 'a.yaml', scenario });
/** The sheet with one text put in the place of another. */
const withChange = (from: string, to: string) => {
  expect(SHEET).toContain(from);
  return read(SHEET.replace(from, to));
};

describe('an observation sheet', () => {
  it('is read to SI, every time with its reading error', () => {
    const { sheet, issues } = read(SHEET.replace('right: did not move', ''));
    expect(issues.map(formatIssue)).toEqual([]);
    expect(sheet?.swings[0].times.left).toEqual({
      moving: { at: 1.2, error: 0.3 },
      locked: { at: 7.4, error: 0.5 },
      doors: { at: 8.4, error: 0.3 },
    });
    expect(sheet?.conditions.temperature).toBeCloseTo(293.15, 6);
    expect(sheet?.swings[0].gauges.pressure.static).toBeCloseTo(1500 * PSI, -1);
    expect(sheet?.swings[0].order).toContainEqual({ unit: 'tail', event: 'locked' });
  });
  it('takes a hand stopwatch to be 0.2 s off when it does not say', () => {
    const { sheet } = withChange('reading-error: 0.3 s\n', '');
    expect(sheet?.swings[0].times.left.moving).toEqual({ at: 1.2, error: 0.2 });
  });
  it('leaves out what is missing instead of calling it zero', () => {
    const { sheet } = read(SHEET);
    expect(sheet?.swings[0].times.right).toEqual({ moving: { at: 1.2, error: 0.3 } });
    expect(sheet?.swings[0].times).not.toHaveProperty('tail');
    expect(sheet?.conditions).not.toHaveProperty('attitude');
  });
  it('may as well be JSON, on one line', () => {
    const { sheet } = read(SHEET);
    const json = JSON.stringify(JSON.parse(writeObservations(sheet!, { format: 'json' })));
    expect(readObservations(json).sheet).toEqual(sheet);
  });
  it('is written in units that people read', () => {
    const text = writeObservations(read(SHEET).sheet!, { units: 'us' });
    expect(text).toContain('supply-pressure: 1500 psi');
    expect(text).toContain('temperature: 68 degF');
    expect(text).toContain('moving: 1.2 s');
  });
});

describe('what cannot be read is told with its place, and the rest is kept', () => {
  it.each([
    [
      'text for a number',
      'moving: 1.2 s, locked: {',
      'moving: fast, locked: {',
      'times.left.moving',
      /is not a time, found fast; allowed: a time, e\.g\. 0\.2 s/,
    ],
    [
      'a number without its unit',
      'doors: 8.4 s',
      'doors: 8.4',
      'times.left.doors',
      /a unit is missing.*write the unit, e\.g\. 8\.4 s/,
    ],
    [
      'a time before the selector moved',
      'doors: 8.4 s',
      'doors: -8.4 s',
      'times.left.doors',
      /outside its range.*0 s to 3600 s/,
    ],
    ['a day', 'doors: 8.4 s', 'doors: 24 h', 'times.left.doors', /outside its range/],
    [
      'a time that is not a number',
      'doors: 8.4 s',
      'doors: .nan',
      'times.left.doors',
      /is not a time/,
    ],
    ['a misspelt moment', 'doors: 8.4 s', 'dors: 8.4 s', 'times.left.dors', /did you mean doors\?/],
    [
      'a unit the aircraft has not',
      'left: { moving',
      'lft: { moving',
      'times.lft',
      /no unit of this name.*left, right, tail, gear.*did you mean left\?/,
    ],
    [
      'an order that is none',
      'tail locked,',
      'tail,',
      'order.1',
      /a unit and what it did belong here/,
    ],
    [
      'a remark in other words',
      'moved by jerks',
      'jerky',
      'remarks.tail.0',
      /did not move, stopped short, moved by jerks/,
    ],
    [
      'a gauge that is nowhere',
      'gauges: { pressure:',
      'gauges: { presure:',
      'gauges.presure',
      /did you mean pressure\?/,
    ],
  ])('%s', (_, from, to, path, words) => {
    const { sheet, issues } = withChange(from, to);
    const issue = issues.find((i) => i.path === `swings.0.${path}`);
    expect(formatIssue(issue!)).toMatch(words);
    const line = SHEET.slice(0, SHEET.indexOf(from)).split('\n').length;
    expect(issue?.line).toBe(line);
    expect(issues).toHaveLength(1);
    expect(sheet?.swings[0].times.gear).toEqual({ total: { at: 8.6, error: 0.3 } });
  });
  it('a sheet for another aircraft, once and not for each of its names', () => {
    const { sheet, issues } = read(
      SHEET.replace('Hedgelark, a tail', 'Anotherlark, a tail').replace(
        'tail: [moved',
        'nose: [moved',
      ),
    );
    expect(issues.map((i) => i.message)).toEqual(['this sheet is for another aircraft']);
    expect(issues[0]).toMatchObject({ line: 2, allowed: scenario?.title });
    expect(sheet?.swings).toHaveLength(1);
  });
  it('a scenario in place of a sheet', () => {
    const { sheet, issues } = read(TEXT);
    expect(sheet).toBeUndefined();
    expect(issues[0].message).toBe('this is a scenario, not an observation sheet');
  });
  it('a swing without its direction; the next one is read', () => {
    const second = `${SHEET}  - direction: down\n    times: { left: { locked: 5 s } }\n`;
    const { sheet, issues } = read(second.replace('direction: up', 'note: which way?'));
    expect(issues.map((i) => i.path)).toEqual(['swings.0.direction']);
    expect(sheet?.swings.map((s) => s.direction)).toEqual(['down']);
  });
  it.each([
    '',
    '\0',
    '[',
    '- - - -',
    'wheelwell-observations: 1\nswings: 3',
    'a: &a [*a]',
    '"',
    '{'.repeat(500),
  ])('nonsense: %j', (text) => {
    const { issues } = read(text);
    expect(issues.length).toBeGreaterThan(0);
    for (const issue of issues) expect(issue.message).not.toBe('');
  });
});

describe('ten thousand rows', () => {
  const rows = (row: string): string =>
    `wheelwell-observations: 1\nswings:\n${`${row}\n`.repeat(10_000)}`;
  it('are all read', () => {
    const { sheet, issues } = read(
      rows('- { direction: up, times: { left: { locked: 6 s }, right: { locked: 6.2 s } } }'),
    );
    expect(issues).toEqual([]);
    expect(sheet?.swings).toHaveLength(10_000);
  });
  it('that are all wrong are told of in a list of bounded length', () => {
    const { sheet, issues } = read(rows('- { direction: up, times: { left: { locked: six } } }'));
    expect(sheet?.swings).toHaveLength(10_000);
    expect(issues).toHaveLength(200);
  });
});
