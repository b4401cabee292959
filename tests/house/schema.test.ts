/**
 * The committed JSON Schema, which editors read by the line at the top of a scenario, is what the
 * program prints, is valid itself, takes the scenarios that there are and refuses common slips.
 * Source of the dialect: JSON Schema, draft 2020-12; checked by the library ajv.
 */
import { Ajv2020 } from 'ajv/dist/2020.js';
import { dirname, join, posix } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import {
  lessonJsonSchema,
  observationJsonSchema,
  scenarioJsonSchema,
  readObservations,
} from '@wheelwell/core';
import { filesIn, textOf } from './files.js';

const FILE = 'scenarios/scenario.schema.json';
const MODELINE = /^# yaml-language-server: \$schema=(\S+)\n/;
const LESSON_FILE = 'scenarios/lesson.schema.json';
const files = filesIn('scenarios').filter((path) => path.endsWith('.yaml'));
const scenarios = files.filter((path) => !/\/(lessons|observations)\//.test(path));
const lessons = files.filter((path) => path.includes('/lessons/'));
const schema = JSON.parse(textOf(FILE)) as Record<string, unknown>;
// A field may be text or a number: that is a choice of types, which ajv's strict mode asks to confirm.
const ajv = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true });
const validate = ajv.compile(schema);
const lessonSchema = JSON.parse(textOf(LESSON_FILE)) as Record<string, unknown>;
const validateLesson = ajv.compile(lessonSchema);

it('is up to date; npm run schema writes it', () => {
  expect(schema).toEqual(scenarioJsonSchema());
  expect(lessonSchema).toEqual(lessonJsonSchema());
});

it('is a valid schema of draft 2020-12', () => {
  expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
  expect(ajv.validateSchema(schema)).toBe(true);
});

describe.each(scenarios)('%s', (path) => {
  const text = textOf(path);
  it('tells editors where the schema is, on its first line', () => {
    const [, target] = MODELINE.exec(text) ?? [];
    expect(target).toBeDefined();
    expect(posix.normalize(join(dirname(path), target))).toBe(FILE);
  });
  it('is valid', () => {
    validate(parse(text));
    expect(validate.errors ?? []).toEqual([]);
  });
});

describe.each(files.filter((path) => path.includes('/observations/')))('%s', (path) => {
  const text = textOf(path);
  it('tells editors where the schema is, on its first line, and reads without an issue', () => {
    const [, target] = MODELINE.exec(text) ?? [];
    expect(posix.normalize(join(dirname(path), target))).toBe('scenarios/observations.schema.json');
    const { issues, contradictions } = readObservations(text);
    expect([...issues, ...contradictions]).toEqual([]);
  });
});

describe.each(lessons)('%s', (path) => {
  const text = textOf(path);
  it('tells editors where the schema is, on its first line', () => {
    const [, target] = MODELINE.exec(text) ?? [];
    expect(posix.normalize(join(dirname(path), target))).toBe(LESSON_FILE);
  });
  it('is valid, and a slip in it is not', () => {
    validateLesson(parse(text));
    expect(validateLesson.errors ?? []).toEqual([]);
    const slips: readonly [string, string][] = [
      ['kind: tell', 'kind: say'],
      ['card:', 'crad:'],
      ['title:', 'titel:'],
      ['wheelwell-lesson: 1', 'wheelwell-lesson: 2'],
    ];
    for (const [right, wrong] of slips) {
      expect(text).toContain(right);
      expect(validateLesson(parse(text.replace(right, wrong)))).toBe(false);
    }
  });
});

describe('a slip is marked in the editor', () => {
  const demo = 'scenarios/hedgelark/hedgelark.yaml';
  it.each([
    ['a misspelt key', 'title:', 'titel:'],
    ['a parameter that the kind does not have', 'crack: 1500 psi', 'crak: 1500 psi'],
    ['a kind that does not exist', 'is: relief-valve', 'is: releif-valve'],
    ['a number without its unit', 'crack: 1500 psi', 'crack: 1500'],
    ['a unit without its number', 'crack: 1500 psi', 'crack: psi'],
    ['a decimal comma, which leaves no number', 'crack: 1500 psi', 'crack: [1, 5 psi]'],
    [
      'a port that the kind does not have',
      'ports: { inlet: pressure, outlet: tank }',
      'ports: { inlt: pressure, outlet: tank }',
    ],
    ['a port left out', 'ports: { inlet: pressure, outlet: tank }', 'ports: { inlet: pressure }'],
    ['a name with a capital', '  relief:', '  Relief:'],
    ['an oil that is not known', 'kind: mineral-red', 'kind: mineral-blue'],
    ['a choice that is not one', 'centre: closed', 'centre: shut'],
    ['a fault that is not known', 'fault: dry-bearing', 'fault: dry-baering'],
    ['a limit that is not known', 'time-up:', 'time-upp:'],
    [
      'an event without what happens',
      'first: { device: left-door, to: at open }',
      'first: { device: left-door }',
    ],
    ['a card without its length', 'duration: 40 s', 'title: again'],
    ['a version that does not exist', 'wheelwell: 1', 'wheelwell: 2'],
  ])('%s', (_, right, wrong) => {
    const text = textOf(demo);
    expect(text).toContain(right);
    const slipped = text.replace(right, wrong);
    expect(validate(parse(slipped, { uniqueKeys: false }))).toBe(false);
  });
});

describe('the schema of observation sheets', () => {
  const observations = JSON.parse(textOf('scenarios/observations.schema.json')) as object;
  const check = ajv.compile(observations);
  const SHEET = `wheelwell-observations: 1
aircraft: Hedgelark
reading-error: 0.2 s
conditions: { supply-flow: 4 gal/min, fluid: mineral-red, doors: connected }
swings:
  - direction: up
    times: { left: { moving: 1.2 s, locked: { at: 7.4 s, error: 0.5 s } }, gear: { total: 8 s } }
    order: [left moving, left locked]
    gauges: { pressure: { static: 1500 psi, dead-head: 1500 psi } }
    remarks: { tail: [moved by jerks] }
    recordings: [{ file: a.csv, time: t, columns: { pressure.pressure: P1 } }]
`;
  it('is up to date; npm run schema writes it', () => {
    expect(observations).toEqual(observationJsonSchema());
  });
  it('takes a sheet', () => {
    check(parse(SHEET));
    expect(check.errors ?? []).toEqual([]);
  });
  it.each([
    ['a misspelt key', 'direction: up', 'dirction: up'],
    ['a direction that is none', 'direction: up', 'direction: upwards'],
    ['a moment that is none', 'moving: 1.2 s', 'moves: 1.2 s'],
    ['a time without its unit', 'moving: 1.2 s', 'moving: 1.2'],
    ['a remark in other words', 'moved by jerks', 'jerky'],
    ['an oil that is not known', 'mineral-red', 'mineral-blue'],
  ])('%s is marked in the editor', (_, right, wrong) => {
    expect(SHEET).toContain(right);
    expect(check(parse(SHEET.replace(right, wrong)))).toBe(false);
  });
});
