import { expect, test } from 'vitest';
import type { Issue } from '../../../packages/core/src/define/index.js';
import { readWith } from '../../../packages/core/src/scenario/index.js';
import { MADE_UP_TEXT, madeUp } from '../../support/made-up.js';

function change(from: string, to: string): string {
  expect(MADE_UP_TEXT).toContain(from);
  return MADE_UP_TEXT.replace(from, to);
}

function issuesOf(text: string): readonly Issue[] {
  const { scenario, issues } = readWith(madeUp, text);
  expect(scenario === undefined).toBe(issues.length > 0);
  return issues;
}

/** 1-based line of a text in the changed file. */
const lineOf = (text: string, what: string): number =>
  text.slice(0, text.indexOf(what)).split('\n').length;

// prettier-ignore
const SINGLE: readonly (readonly [what: string, from: string, to: string, path: string, hint: string])[] = [
  ['a wire from nowhere', 'left-up: left-feeler', 'left-up: left-feeller', 'brain.signals.left-up', 'left-feeler'],
  ['a wire from a device that says nothing', 'left-up: left-feeler', 'left-up: selector', 'brain.signals.left-up', ''],
  ['a wire from a signal that is none', 'tail-feeler.not-made', 'tail-feeler.not-mad', 'brain.signals.door-shut', 'not-made'],
  ['a wire from a signal the table never drives', 'brain.warning-lamp', 'brain.warming-lamp', 'coil-valve.signals.spare-coil', 'warning-lamp'],
  ['a wire to an input that is none', 'spare-coil: brain', 'spare-koil: brain', 'coil-valve.signals.spare-koil', 'spare-coil'],
  ['a wire that no row listens to', 'door-shut: tail-feeler', 'left-up-too: left-feeler, door-shut: tail-feeler', 'brain.signals.left-up-too', ''],
  ['a wire to an input that takes a figure', 'spare-coil: brain', 'load: brain', 'coil-valve.signals.load', ''],
  ['a wire from a state table to a control of three positions', '    detent: yes', '    detent: yes\n    signals: { lever: brain }', 'selector.signals.lever', 'coil'],
  ['a wire into a device without inputs', '    links: { on: { to: tail-door } }', '    links: { on: { to: tail-door } }\n    signals: { coil: brain }', 'tail-feeler.signals', ''],
  ['a wire that is no text', 'left-up: left-feeler', 'left-up: [left-feeler]', 'brain.signals.left-up', ''],
  ['an unheard name', 'left-up: left-feeler, ', '', 'brain.table.resting.next.0.if.1', 'left-up'],
  ['an unheard name near a wired one', 'if: [left-up, door-shut]', 'if: [left-up, door-shot]', 'brain.table.raising gear.next.0.if.1', 'door-shut'],
  ['a position that no control has', 'if: [lever up,', 'if: [lever upp,', 'brain.table.resting.next.0.if.0', 'lever up'],
  ['a control without its position', 'if: [lever up,', 'if: [lever,', 'brain.table.resting.next.0.if.0', ''],
  ['a control that is none', 'if: [lever up,', 'if: [leaver up,', 'brain.table.resting.next.0.if.0', 'lever up'],
];

test.each(SINGLE)('%s is told at its place', (_, from, to, path, hint) => {
  const text = change(from, to);
  const issues = issuesOf(text);
  const issue = issues.find((i) => i.path === `components.${path}`);
  expect(issue, JSON.stringify(issues)).toBeDefined();
  expect(issue!.hint).toContain(hint);
  const [, section, ...rest] = path.split('.');
  const there = section === 'table' ? 'if: [' : (rest[0] ?? section);
  expect(text.split('\n')[issue!.line - 1]).toContain(there);
});

test('a name nobody says is told where the table first listens to it', () => {
  const text = change('left-up: left-feeler, ', '');
  const issues = issuesOf(text);
  expect(issues).toHaveLength(1);
  expect(issues[0]).toMatchObject({
    message: 'nothing says "left-up" to this watcher',
    found: 'not left-up',
    allowed: 'a name wired under signals: door-shut',
    line: lineOf(text, 'if: [lever up, not left-up]'),
  });
  expect(issues[0].column).toBeGreaterThan(20);
});

test('a name that a card works needs no wire', () => {
  const text = change('left-up: left-feeler, ', '').replace(
    'device: brain, input: lever, value: down',
    'device: brain, input: left-up, value: on',
  );
  expect(issuesOf(text)).toEqual([]);
});

test('an input is set by a wire or by a card, not by both', () => {
  const text = change(
    'device: brain, input: lever, value: down',
    'device: brain, input: left-up, value: on',
  );
  const issues = issuesOf(text);
  expect(issues).toHaveLength(1);
  expect(issues[0]).toMatchObject({
    path: 'cards.healthy.steps.3.input',
    message: 'a wire from left-feeler sets this already',
    line: lineOf(text, 'input: left-up'),
  });
  expect(issues[0].hint).toContain('signals of brain');
});

test('cards and rules know the states of a table as modes', () => {
  const card = issuesOf(
    change('device: brain, to: raising gear', 'device: brain, to: raising geer'),
  );
  expect(card).toHaveLength(1);
  expect(card[0]).toMatchObject({
    path: 'cards.healthy.steps.3.after.to',
    hint: 'did you mean raising gear?',
  });
  expect(card[0].allowed).toBe('resting, raising gear, failed');
  const rule = (to: string) =>
    change('first: { device: left-hook, to: engaged }', `first: { device: brain, to: ${to} }`);
  expect(issuesOf(rule('failed'))).toEqual([]);
  expect(issuesOf(rule('faild')).map((i) => i.path)).toEqual(['rules.0.first.to']);
});

test('where a table is wrong nothing else is said about what it would decide', () => {
  const issues = issuesOf(change('to: raising gear }', 'to: raising geer }'));
  expect(issues).toHaveLength(1);
  expect(issues[0]).toMatchObject({
    path: 'components.brain.table.resting.next.0.to',
    found: 'raising geer',
    hint: 'did you mean raising gear?',
    allowed: 'resting, raising gear, failed',
  });
});

test.each([
  ['a table that is none', /table:\n[^]*?failed:\n/, 'table: 3\n', 'table'],
  ['a table without states', /table:\n[^]*?failed:\n/, 'table: {}\n', 'table'],
  // JavaScript would move a state called 1 to the front.
  ['a state of digits', 'failed:\n', '"1":\n', 'table.1'],
  ['a state with a sign', 'failed:\n', '"fa?iled":\n', 'table.fa?iled'],
  ['a state that is a word', 'failed:\n', 'failed: lamp\n', 'table.failed'],
  ['a misspelt key of a state', 'drive: [', 'drives: [', 'table.raising gear.drives'],
  [
    'a drive that is no list',
    'drive: [open, warning-lamp]',
    'drive: open',
    'table.raising gear.drive',
  ],
  [
    'a signal with a space',
    '[open, warning-lamp]',
    '[open, Warning Lamp]',
    'table.raising gear.drive.1',
  ],
  [
    'a signal twice',
    '[open, warning-lamp]',
    '[open, open, warning-lamp]',
    'table.raising gear.drive.1',
  ],
  ['a term of three words', '[lever up, not', '[lever half up, not', 'table.resting.next.0.if.0'],
  ['a time without a unit', 'after: 2 s, to', 'after: 2, to', 'table.resting.next.0.after'],
  ['a misspelt key of a row', 'after: 2 s, to', 'afer: 2 s, to', 'table.resting.next.0.afer'],
  ['a row that leads nowhere', ', to: raising gear }]', ' }]', 'table.resting.next.0.to'],
  [
    'a row that is a word',
    '- { after: 30 s, to: failed }',
    '- failed',
    'table.raising gear.next.1',
  ],
  [
    'a state with more rows than a table may have',
    '{ after: 30 s, to: failed }',
    Array.from({ length: 21 }, (_, i) => `{ after: ${i} s, to: failed }`).join('\n          - '),
    'table.raising gear.next',
  ],
  [
    'more states than a table may have',
    'failed:\n',
    `failed:\n${Array.from({ length: 60 }, (_, i) => `      s${i}:`).join('\n')}\n`,
    'table',
  ],
])('%s is told at its place', (_, from, to, path) => {
  const text = MADE_UP_TEXT.replace(from, to);
  expect(text).not.toBe(MADE_UP_TEXT);
  const issues = issuesOf(text);
  const issue = issues.find((i) => i.path === `components.brain.${path}`);
  expect(issue, JSON.stringify(issues)).toBeDefined();
  const first = lineOf(text, '\n    table:') + 1;
  expect(issue!.line).toBeGreaterThanOrEqual(first);
  expect(issue!.line).toBeLessThanOrEqual(first + 9);
});

test('a card cannot set a state table', () => {
  const text = change(
    'set: { components.pump.flow',
    'set: { components.brain.table: { a: }, components.pump.flow',
  );
  expect(issuesOf(text).map((i) => i.path)).toEqual(['cards.cold.set.components.brain.table']);
});
