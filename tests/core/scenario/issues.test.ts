import { expect, test } from 'vitest';
import { formatIssue, type Issue } from '../../../packages/core/src/define/index.js';
import { readWith } from '../../../packages/core/src/scenario/index.js';
import { MADE_UP_TEXT, madeUp } from '../../support/made-up.js';

/** Issues after one change to the sound text. */
function broken(from: string, to: string): readonly Issue[] {
  expect(MADE_UP_TEXT).toContain(from);
  const { scenario, issues } = readWith(madeUp, MADE_UP_TEXT.replace(from, to), { file: 'x.yaml' });
  expect(scenario).toBeUndefined();
  return issues;
}

function only(from: string, to: string): Issue {
  const issues = broken(from, to);
  expect(issues.map(formatIssue)).toHaveLength(1);
  return issues[0];
}

/** 1-based line and column of a text in the sound file. */
function placeOf(text: string): { line: number; column: number } {
  const before = MADE_UP_TEXT.slice(0, MADE_UP_TEXT.indexOf(text)).split('\n');
  return { line: before.length, column: before[before.length - 1].length + 1 };
}

test('a pressure where a length belongs is told with place, path, found and allowed', () => {
  const issue = only('bore: 1 3/4 in', 'bore: 45 psi');
  const { line, column } = placeOf('1 3/4 in');
  expect(issue).toMatchObject({
    file: 'x.yaml',
    line,
    column,
    path: 'components.left-jack.bore',
    found: '45 psi',
  });
  expect(issue.message).toContain('pressure');
  expect(issue.allowed).toContain('a length');
});

test('a misspelt key is told at the key with the nearest one', () => {
  const issue = only('crack-at: 1500 psi', 'crack-at: 1500 psi\n    stlye: poppet');
  expect(issue).toMatchObject({
    path: 'components.selector.stlye',
    hint: 'did you mean style?',
    column: 5,
  });
  expect(issue.allowed).toContain('style');
});

test('a key far from every known one has no hint', () => {
  expect(only('detent: yes', 'detent: yes\n    zzzqqq: 1').hint).toBe('');
});

test('a figure outside its range is told in the unit that was written', () => {
  const issue = only('crack-at: 1500 psi', 'crack-at: 9000 psi');
  expect(issue.found).toBe('9000 psi');
  expect(issue.allowed).toBe('14.5038 psi to 4351.13 psi'); // 1e5 and 3e7 Pa by 6894.757 Pa/psi
});

test('a figure on the edge of its range in another unit is inside', () => {
  const { scenario } = readWith(
    madeUp,
    MADE_UP_TEXT.replace('flow: 3.2 gal/min', 'air-share: 7 %'),
  );
  expect(scenario?.components.pump.parameters.airShare).toBe(0.07);
});

test('a missing required parameter is told at its device', () => {
  const issue = only('    crack-at: 1500 psi\n', '');
  expect(issue).toMatchObject({ path: 'components.selector.crack-at', ...placeOf('selector:') });
  expect(issue.message).toContain('missing');
});

// One case a line: what, the change, path, hint.
// prettier-ignore
const SINGLE: readonly (readonly [what: string, from: string, to: string, path: string, hint: string])[] = [
  ['an unknown kind', 'is: tap', 'is: tup', 'components.selector.is', 'tap'],
  ['a wrong version', 'wheelwell: 1', 'wheelwell: 2', 'wheelwell', ''],
  ['an unknown oil', 'kind: red-oil', 'kind: red-oli', 'fluid.kind', 'red-oil'],
  ['a word that is no choice', 'style: poppet', 'style: popet', 'components.selector.style', 'poppet'],
  ['a node that one port joins', 'out: up', 'out: upp', 'components.selector.ports.out', 'up'],
  ['a declared node that no port joins', 'gauge-stub: {', 'gauge-stubs: {', '', ''],
  ['a link to no mechanism', 'guide: { to: left-leg }', 'guide: { to: left-lag }', 'components.left-jack.links.guide.to', 'left-leg'],
  ['a required port left open', 'ports: { head: up, rod: blanked }', 'ports: { head: up }', 'components.door-jack.ports.rod', ''],
  ['a required link left out', '    links: { on: { to: left-leg } }\n', '', 'components.left-hook.links', ''],
  ['two ways of giving a travel', 'rod: { to: left-door,', 'rod: { to: left-door, expression: "angle",', 'components.door-jack.links.rod', ''],
  ['a table that does not rise', '[45 deg, 60 mm]', '[0 deg, 60 mm]', 'components.door-jack.links.rod.table.1.0', ''],
  ['a table cell of the wrong kind', '[45 deg, 60 mm]', '[45 deg, 60 psi]', 'components.door-jack.links.rod.table.1.1', ''],
  ['a table that ends before the travel does', '[90 deg, 90 mm]', '[70 deg, 90 mm]', 'components.door-jack.links.rod.table', ''],
  ['a jack over its dead centre', 'at-low: 40 deg, sense: opening', 'at-low: 120 deg, sense: opening', 'components.left-jack.links.rod.pivots.at-low', 'opening'],
  ['a closed length without room', 'sense: opening', 'sense: opening, shortest: 500 mm', 'components.left-jack.links.rod.pivots.shortest', ''],
  ['an expression with a misspelt function', '40 * cos(angle)', '40 * coss(angle)', 'mechanisms.left-leg.pull.expression', 'cos'],
  ['an expression without a finite value', '40 * cos(angle)', '40 / angle', 'mechanisms.left-leg.pull.expression', 'radians'],
  ['an expression outside its range', '40 * cos(angle)', '4000 * cos(angle)', 'mechanisms.left-leg.pull.expression', ''],
  ['a unit with a device for a leg', 'leg: left-leg, doors', 'leg: left-hook, doors', 'units.left.leg', ''],
  ['a unit with an unknown door', 'doors: [left-door]', 'doors: [left-dor]', 'units.left.doors.0', 'left-door'],
  ['a unit with a jack for an uplock', 'uplock: left-hook', 'uplock: left-jack', 'units.left.uplock', ''],
  ['an unknown side', 'side: left', 'side: lefft', 'units.left.side', 'left'],
  ['an unknown limit', 'time-up: 9 s', 'time-op: 9 s', 'limits.time-op', 'time-up'],
  ['an unknown kind of rule', 'kind: order', 'kind: oder', 'rules.0.kind', 'order'],
  ['a rule on an unknown mode', 'to: engaged }, second', 'to: engagd }, second', 'rules.0.first.to', 'engaged'],
  ['a rule on an unknown device', 'second: { device: left-door', 'second: { device: left-dor', 'rules.0.second.device', 'left-door'],
  ['a rule on an unknown phase', 'to: up and locked', 'to: up and lokked', 'rules.1.second.to', 'up and locked'],
  ['a rule on an unknown channel', 'channel: left-jack.stroke', 'channel: left-jack.strok', 'rules.4.channel', 'left-jack.stroke'],
  ['a level of the wrong kind', 'above: 200 bar', 'above: 200 mm', 'rules.2.condition.above', ''],
  ['two rules of one name', 'name: in-time', 'name: quiet', 'rules.2.name', ''],
  ['a step on an unknown device', 'device: selector, input: lever, value: up', 'device: selektor, input: lever, value: up', 'cards.healthy.steps.0.device', 'selector'],
  ['a step on a device without controls', 'device: selector, input: lever, value: up', 'device: left-jack, input: lever, value: up', 'cards.healthy.steps.0.device', ''],
  ['a step on an unknown control', 'input: lever, value: up', 'input: leaver, value: up', 'cards.healthy.steps.0.input', 'lever'],
  ['a step to an unknown position', 'input: lever, value: up', 'input: lever, value: upp', 'cards.healthy.steps.0.value', 'up'],
  ['a step after an unknown event', 'to: up and closed', 'to: up and cloesd', 'cards.healthy.steps.1.after.to', 'up and closed'],
  ['a step that does not say when', 'at: 1 s, ', '', 'cards.healthy.steps.0', ''],
  ['an unknown expected rule', 'expect: [hook-first]', 'expect: [hook-frist]', 'cards.healthy.expect.0', 'hook-first'],
  ['a fault on something it cannot befall', 'on: left-jack, severity', 'on: left-leg, severity', 'cards.cold.faults.0.on', ''],
  ['an unknown fault', 'fault: narrow-bore', 'fault: narow-bore', 'cards.cold.faults.0.fault', 'narrow-bore'],
  ['a severity above 1', 'severity: 0.6', 'severity: 1.6', 'cards.cold.faults.0.severity', ''],
  ['a setting of an unknown device', 'components.pump.flow', 'components.pomp.flow', 'cards.cold.set.components.pomp.flow', 'pump'],
  ['a setting of an unknown parameter', 'components.pump.flow', 'components.pump.flov', 'cards.cold.set.components.pump.flov', 'flow'],
  ['a setting of the wrong kind', 'components.pump.flow: 4 gal/min', 'components.pump.flow: 4 gal', 'cards.cold.set.components.pump.flow', ''],
  ['a setting that breaks a check', 'components.pump.flow: 4 gal/min', 'components.pump.most: 1 bar', 'cards.cold.set.components.pump.most', ''],
  ['a start outside the travel', 'left-leg: 10 deg', 'left-leg: 100 deg', 'cards.cold.start.left-leg', ''],
  ['parameters that contradict each other', 'flow: 3.2 gal/min', 'least: 250 bar', 'components.pump.least', ''],
  ['a name that is no name', '  pump:\n', '  Pump 1:\n', 'components.Pump 1', ''],
];

test.each(SINGLE)('%s is told at its place', (_, from, to, path, hint) => {
  const issues = broken(from, to);
  const issue = issues.find((i) => i.path === path) ?? issues[0];
  if (path !== '') expect(issue.path).toBe(path);
  expect(issue.line).toBeGreaterThan(0);
  expect(issue.column).toBeGreaterThan(0);
  expect(issue.message).not.toBe('');
  if (hint !== '') expect(issue.hint).toContain(hint);
});

test('an operator of a device with two controls must say which', () => {
  const two = {
    lever: { title: 'lever', choices: ['up', 'down'], initial: 0 },
    knob: { title: 'knob', choices: ['in', 'out'], initial: 0 },
  };
  const tap = { ...madeUp.components.tap, inputs: two };
  const text = MADE_UP_TEXT.replace('input: lever, value: up', 'value: up');
  const { issues } = readWith({ ...madeUp, components: { ...madeUp.components, tap } }, text);
  expect(issues).toHaveLength(1);
  expect(issues[0]).toMatchObject({
    path: 'cards.healthy.steps.0.input',
    message: 'which control is missing',
    allowed: 'lever, knob',
  });
});

test('two parts of one name are told', () => {
  const issues = broken('  left-leg:\n    is: arm', '  pump:\n    is: arm');
  expect(issues.map((i) => i.path)).toContain('mechanisms.pump');
});

test('all issues of a file are told at once, in the order of the file', () => {
  const text = MADE_UP_TEXT.replace('20 degC', '20 psi')
    .replace('is: source', 'is: sauce')
    .replace('crack-at: 1500 psi', 'crack-at: 1500')
    .replace('out: up', 'out: upp')
    .replace('to: left-door,', 'to: left-dor,')
    .replace('time-up: 9 s', 'time-up: 9 m')
    .replace('value: up', 'value: upp');
  const { issues } = readWith(madeUp, text);
  const paths = issues.map((i) => i.path);
  for (const path of [
    'fluid.temperature',
    'components.pump.is',
    'components.selector.crack-at',
    'components.selector.ports.out',
    'components.door-jack.links.rod.to',
    'limits.time-up',
    'cards.healthy.steps.0.value',
  ]) {
    expect(paths).toContain(path);
  }
  expect(issues.map((i) => i.line)).toEqual([...issues.map((i) => i.line)].sort((a, b) => a - b));
});

test('a wrong parameter does not hide a wrong reference of the same device, nor raise others', () => {
  const text = MADE_UP_TEXT.replace('bore: 1 3/4 in', 'bore: 2 psi').replace(
    'guide: { to: left-leg }',
    'guide: { to: left-lag }',
  );
  expect(readWith(madeUp, text).issues.map((i) => i.path)).toEqual([
    'components.left-jack.links.guide.to',
    'components.left-jack.bore',
  ]);
});

test('a file that is no map, or empty, is told', () => {
  for (const text of ['', '- 1\n- 2', 'hello', '42', 'null', '# only a comment\n']) {
    const { scenario, issues } = readWith(madeUp, text);
    expect(scenario).toBeUndefined();
    expect(issues.length).toBeGreaterThan(0);
    expect(issues[0].line).toBe(1);
  }
});

test('a decimal comma between braces, which makes two entries of one, is named as what it is', () => {
  const issues = broken('free-air: 0.5 %', 'free-air: 0,5 %');
  expect(issues[0].message).toBe('"5 %" is not known here');
  expect(issues[0].hint).toBe('a comma ends an entry here: write decimals with a point');
});
