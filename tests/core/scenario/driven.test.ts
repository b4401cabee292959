import { expect, test } from 'vitest';
import type { Issue, MechanismEntry } from '../../../packages/core/src/define/index.js';
import { readWith, writeScenario } from '../../../packages/core/src/scenario/index.js';
import { MADE_UP_TEXT, madeUp } from '../../support/made-up.js';

const DEG = Math.PI / 180;
const TAIL_DOOR = `    driven:
      by: left-leg
      linkage: { ground: 300 mm, crank: 80 mm, coupler: 280 mm, rocker: 90 mm, crank-at-low: 40 deg, sense: opening }
`;

function change(from: string, to: string): string {
  expect(MADE_UP_TEXT).toContain(from);
  return MADE_UP_TEXT.replace(from, to);
}

function mechanism(name: string, text = MADE_UP_TEXT): MechanismEntry {
  const { scenario, issues } = readWith(madeUp, text);
  expect(issues).toEqual([]);
  return scenario!.mechanisms[name];
}

function only(from: string, to: string): Issue {
  const { scenario, issues } = readWith(madeUp, change(from, to));
  expect(scenario).toBeUndefined();
  expect(issues).toHaveLength(1);
  return issues[0];
}

/** 1-based line of a text in the changed file. */
const lineOf = (text: string, what: string): number =>
  text.slice(0, text.indexOf(what)).split('\n').length;

test('a table, an expression and a ratio give the angle over the whole travel of the driver', () => {
  expect(mechanism('nose-flap').driven).toEqual({
    by: 'left-door',
    angle: {
      x: [0, expect.closeTo(90 * DEG, 12)],
      y: [expect.closeTo(5 * DEG, 12), expect.closeTo(75 * DEG, 12)],
    },
  });
  const { angle } = mechanism('nose-cover').driven!;
  expect([angle.x[0], angle.x[angle.x.length - 1]]).toEqual([0, expect.closeTo(80 * DEG, 12)]);
  angle.x.forEach((x, i) => expect(angle.y[i]).toBeCloseTo(0.9 * Math.sin(x), 12));
  const { by, angle: chain } = mechanism('tail-flap').driven!;
  expect(by).toBe('tail-door');
  expect(chain.x).toEqual([0, 1.5]);
  expect(chain.y).toEqual([expect.closeTo(90 * DEG, 12), expect.closeTo(90 * DEG - 0.75, 12)]);
});

test('a linkage starts at the low end of what it drives, or at the high end where that falls', () => {
  const rising = mechanism('tail-door').driven!.angle;
  expect(rising.x).toHaveLength(181);
  expect(rising.y[0]).toBe(0);
  expect(rising.y[180]).toBeGreaterThan(0.5);
  const falling = mechanism(
    'tail-door',
    change('sense: opening }\n  tail-flap', 'sense: closing }\n  tail-flap'),
  ).driven!.angle;
  falling.y.forEach((y, i) => expect(y).toBeCloseTo(1.5 - rising.y[i], 12));
  const set = mechanism(
    'tail-door',
    change('sense: opening }\n  tail-flap', 'sense: opening }\n      at-low: 0.1 rad\n  tail-flap'),
  ).driven!.angle;
  set.y.forEach((y, i) => expect(y).toBeCloseTo(0.1 + rising.y[i], 12));
});

test('without at-low a ratio begins at the low end, a falling one at the high end', () => {
  const from = 'ratio: -0.5, at-low: 90 deg';
  const rises = mechanism('tail-flap', change(from, 'ratio: 0.5')).driven!.angle.y;
  expect(rises).toEqual([0, expect.closeTo(0.75, 12)]);
  const falls = mechanism('tail-flap', change(from, 'ratio: -50 %')).driven!.angle.y;
  expect(falls).toEqual([expect.closeTo(100 * DEG, 12), expect.closeTo(100 * DEG - 0.75, 12)]);
});

test('figures on the edge of the travel count as inside', () => {
  const text = change('0.9 * sin(angle)', '1.5 * angle / (80 / 180 * pi) + 1e-7');
  const { y } = mechanism('nose-cover', text).driven!.angle;
  expect(y[y.length - 1]).toBe(1.5);
});

// prettier-ignore
test.each([
  ['a driver that does not exist', 'driven: { by: tail-door', 'driven: { by: tail-dor', 'tail-flap.driven.by', 'tail-door'],
  ['a mechanism that drives itself', 'driven: { by: tail-door', 'driven: { by: tail-flap', 'tail-flap.driven.by', ''],
  ['no way to follow', ', ratio: -0.5, at-low: 90 deg', '', 'tail-flap.driven', ''],
  ['two ways to follow', 'ratio: -0.5', 'ratio: -0.5, expression: angle', 'tail-flap.driven', ''],
  ['a ratio of nothing', 'ratio: -0.5', 'ratio: 0', 'tail-flap.driven.ratio', ''],
  ['a ratio with a unit', 'ratio: -0.5', 'ratio: 2 mm', 'tail-flap.driven.ratio', ''],
  ['a ratio that asks for too much', 'ratio: -0.5', 'ratio: -1.5', 'tail-flap.driven.ratio', 'at-low'],
  ['a start beside a table', 'table: [[0 deg, 5 deg]', 'at-low: 5 deg, table: [[0 deg, 5 deg]', 'nose-flap.driven.at-low', ''],
  ['a table that leaves the travel', '[90 deg, 75 deg]] } }', '[90 deg, 95 deg]] } }', 'nose-flap.driven.table.1.1', ''],
  ['a table that ends before its driver does', '[90 deg, 75 deg]] } }', '[60 deg, 75 deg]] } }', 'nose-flap.driven.table', ''],
  ['an expression that leaves the travel', '0.9 * sin(angle)', '1.9 * sin(angle)', 'nose-cover.driven.expression', ''],
  ['an expression that cannot be read', '0.9 * sin(angle)', '0.9 * sine(angle)', 'nose-cover.driven.expression', 'sin'],
  ['a bar without a length', 'coupler: 280 mm, ', '', 'tail-door.driven.linkage.coupler', ''],
  ['a bar of no length', 'coupler: 280 mm', 'coupler: 0 mm', 'tail-door.driven.linkage.coupler', ''],
  ['bars that cannot close', 'coupler: 280 mm', 'coupler: 240 mm', 'tail-door.driven.linkage', 'lengthen'],
  ['a misspelt key', 'crank-at-low', 'crank-at-lo', 'tail-door.driven.linkage.crank-at-lo', 'crank-at-low'],
  ['a start of its own', 'start: { left-leg: 10 deg', 'start: { tail-flap: 10 deg', 'cards.cold.start.tail-flap', 'tail-door'],
])('%s is told at its place', (_, from, to, path, hint) => {
  const text = change(from, to);
  const { scenario, issues } = readWith(madeUp, text);
  expect(scenario).toBeUndefined();
  const full = path.startsWith('cards') ? path : `mechanisms.${path}`;
  const issue = issues.find((i) => i.path === full);
  // What is missing is told at the key of what should hold it.
  const [name, , missing = ''] = path.split('.');
  const line = to === '' ? lineOf(text, `${name}:`) + (missing === '' ? 0 : 4) : lineOf(text, to);
  expect(issue?.line, JSON.stringify(issues)).toBe(line);
  expect(issue?.hint).toContain(hint);
});

test('the angle at which a linkage cannot close, and the travel left, are told', () => {
  const stuck = only('coupler: 280 mm', 'coupler: 240 mm');
  expect(stuck.message).toMatch(/cannot close with the driver at \d+(\.\d)? deg/);
  const off = only('ratio: -0.5', 'ratio: -1.5');
  expect(off).toMatchObject({ found: '-38.9 deg', allowed: '0 deg to 100 deg' }); // 90 deg - 1.5 x 1.5 rad
  expect(off.message).toContain('85.9 deg');
});

test('a circle of drivers is told at every mechanism in it', () => {
  const text = change(TAIL_DOOR, '    driven: { by: nose-flap, ratio: 1 }\n').replace(
    'by: left-door',
    'by: tail-flap',
  );
  const { issues } = readWith(madeUp, text);
  expect(issues.map((i) => i.path)).toEqual(
    ['tail-door', 'tail-flap', 'nose-flap'].map((name) => `mechanisms.${name}.driven.by`),
  );
  expect(issues[0].message).toContain('tail-door by nose-flap by tail-flap by tail-door');
});

test('a lock hangs on what is driven only where that always turns on', () => {
  const there = 'hook\n    links: { on: { to: tail-flap } }';
  const rests = change(there, there.replace('tail-flap', 'nose-flap')).replace(
    '[90 deg, 75 deg]] } }',
    '[45 deg, 75 deg], [90 deg, 75 deg]] } }',
  );
  const { issues } = readWith(madeUp, rests);
  expect(issues).toHaveLength(1);
  expect(issues[0]).toMatchObject({
    path: 'components.tail-hook.links.on.to',
    found: 'nose-flap',
    hint: 'hang it on left-door',
    line: lineOf(rests, '{ to: nose-flap }'),
  });
  // The one it follows turns back, so it turns back too.
  const back = change('by: tail-door, ratio', 'by: nose-cover, ratio').replace(
    '0.9 * sin(angle)',
    '0.9 * sin(2 * angle)',
  );
  expect(readWith(madeUp, back).issues.map((i) => i.path)).toEqual([
    'components.tail-hook.links.on.to',
  ]);
});

test('a driven door may belong to a unit and carry links', () => {
  const text = change('doors: [left-door]', 'doors: [left-door, tail-door]');
  expect(readWith(madeUp, text).issues).toEqual([]);
});

test('a driven mechanism has no start of its own to set', () => {
  for (const [from, to, path] of [
    [
      'is: flap, travel: 100 deg,',
      'is: flap, initial: 3 deg, travel: 100 deg,',
      'mechanisms.tail-flap.initial',
    ],
    [
      'fluid.thickness: 2',
      'mechanisms.tail-flap.initial: 3 deg',
      'cards.cold.set.mechanisms.tail-flap.initial',
    ],
  ]) {
    const { flap, arm } = madeUp.mechanisms;
    const initial = {
      title: 'start',
      why: 'invented',
      quantity: 'angle',
      range: [0, 3],
      default: 0,
    } as const;
    const started = { ...flap, parameters: { ...flap.parameters, initial } };
    const { issues } = readWith(
      { ...madeUp, mechanisms: { arm, flap: started } },
      change(from, to),
    );
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({
      path,
      message: 'tail-flap is driven: it starts where tail-door puts it',
      hint: 'give tail-door its start instead',
    });
  }
});

test('what is driven is written as a table that reads to the last bit the same, without a start', () => {
  const { flap, arm } = madeUp.mechanisms;
  const initial = {
    title: 'start',
    why: 'invented',
    quantity: 'angle',
    range: [0, 3],
    default: 1,
  } as const;
  const catalogues = {
    ...madeUp,
    mechanisms: { arm, flap: { ...flap, parameters: { ...flap.parameters, initial } } },
  };
  const { scenario } = readWith(catalogues, MADE_UP_TEXT);
  const text = writeScenario(scenario!, catalogues);
  expect(readWith(catalogues, text).scenario?.mechanisms).toEqual(scenario!.mechanisms);
  expect(text.match(/initial: 1 rad/g)).toHaveLength(1); // the one door that moves by itself
});
