import { expect, test } from 'vitest';
import type { Issue } from '../../../packages/core/src/define/index.js';
import { readWith } from '../../../packages/core/src/scenario/index.js';
import { MADE_UP_TEXT, madeUp } from '../../support/made-up.js';

function only(from: string, to: string): Issue {
  expect(MADE_UP_TEXT).toContain(from);
  const text = MADE_UP_TEXT.replace(from, to);
  const { scenario, issues } = readWith(madeUp, text);
  expect(scenario).toBeUndefined();
  expect(issues).toHaveLength(1);
  expect(issues[0].line).toBe(text.slice(0, text.indexOf(to)).split('\n').length);
  return issues[0];
}

// prettier-ignore
test.each([
  ['an airspeed beyond any gear', 'airspeed: 10 knot', 'airspeed: 500 knot', 'airspeed', '0 knot to 388.769 knot'],
  ['an airspeed that is a length', 'airspeed: 90 knot', 'airspeed: 90 m', 'cards.cold.airspeed', 'a speed'],
  ['a thickness of nothing', 'thickness: 1.3', 'thickness: 0', 'fluid.thickness', '0.05 to 20'],
  ['a thickness with a unit', 'thickness: 1.3', 'thickness: 12 cSt', 'fluid.thickness', 'a ratio'],
  ['a warming beyond any hangar', 'warmed-by: 5 K', 'warmed-by: 90 K', 'fluid.warmed-by', '-80 K to 80 K'],
  ['a thickness set beyond its range', 'fluid.thickness: 2', 'fluid.thickness: 200', 'cards.cold.set.fluid.thickness', '0.05 to 20'],
  ['a bay without room', 'walls: [-200 mm, -1100 mm]', 'walls: [-200 mm, -20 cm]', 'units.left.bay.walls', ''],
  ['a bay with its rear ahead', 'ends: [-40 cm, 50 cm]', 'ends: [50 cm, -40 cm]', 'units.left.bay.ends', 'front, then rear'],
  ['a bay with three walls', 'walls: [-200 mm, -1100 mm]', 'walls: [1 m, 2 m, 3 m]', 'units.left.bay.walls', 'two lengths'],
  ['a bay without a roof', 'bay: { roof: 300 mm, ', 'bay: { ', 'units.left.bay.roof', 'a length'],
  ['a fault on the oil that cannot befall it', 'fault: narrow-bore, on: left-jack', 'fault: narrow-bore, on: fluid', 'cards.cold.faults.0.on', 'selector, left-jack, door-jack'],
  ['a fault of the oil on a device', 'thin-oil, on: fluid', 'thin-oil, on: left-jack', 'cards.cold.faults.1.on', 'fluid'],
] as const)('%s is told at its place', (_, from, to, path, allowed) => {
  const issue = only(from, to);
  expect(issue.path).toBe(path);
  expect(issue.allowed).toContain(allowed);
});

test.each(['20 degC', '5 degF', '-400 degF', '-250 degC'])(
  'a temperature where a difference belongs is refused: %s',
  (text) => {
    const own = only('warmed-by: 5 K', `warmed-by: ${text}`);
    expect(own).toMatchObject({ path: 'fluid.warmed-by', found: text });
    expect(own.message).toContain('a difference of temperatures belongs here');
    expect(own.hint).toContain('K');
    const set = only('fluid.warmed-by: -10 K', `fluid.warmed-by: ${text}`);
    expect(set.path).toBe('cards.cold.set.fluid.warmed-by');
  },
);

test('a jack shorter than the travel of its link is told with what it needs', () => {
  // The travel by coordinates of the two ends: 0.42 m and 0.15 m from the pivot, 40 to 120 deg apart.
  const length = (deg: number) =>
    Math.hypot(
      0.42 - 0.15 * Math.cos((deg * Math.PI) / 180),
      0.15 * Math.sin((deg * Math.PI) / 180),
    );
  const needed = Math.ceil((length(120) - length(40)) * 1000);
  const short = only('bore: 1 3/4 in', `stroke: ${needed - 2} mm\n    bore: 1 3/4 in`);
  expect(short).toMatchObject({
    path: 'components.left-jack.stroke',
    message: `the rod link needs ${needed} mm over the travel of left-leg`,
    found: `${needed - 2} mm`,
    allowed: `at least ${needed} mm`,
  });
  const enough = MADE_UP_TEXT.replace('bore: 1 3/4 in', `bore: 1 3/4 in\n    stroke: ${needed} mm`);
  expect(readWith(madeUp, enough).issues).toEqual([]);
});

test('a card cannot set a stroke too short either', () => {
  const issue = only('components.pump.flow: 4 gal/min', 'components.left-jack.stroke: 90 mm');
  expect(issue).toMatchObject({
    path: 'cards.cold.set.components.left-jack.stroke',
    found: '90 mm',
  });
  expect(issue.message).toContain('too short');
});

test('nothing may be called what the oil is called', () => {
  const { issues } = readWith(madeUp, MADE_UP_TEXT.replace('  left-hook:\n', '  fluid:\n'));
  expect(issues.find((i) => i.path === 'components.fluid')?.message).toBe(
    'this is what the oil is called',
  );
});
