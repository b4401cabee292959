import { expect, test } from 'vitest';
import { readWith } from '../../../packages/core/src/scenario/index.js';
import { MADE_UP_TEXT, madeUp } from '../../support/made-up.js';

const INCH = 0.0254; // exact, international yard and pound agreement 1959
const PSI = 4.4482216152605 / INCH ** 2; // lbf/in2, lbf exact from the standard acceleration of free fall
const GALLON = 231 * INCH ** 3; // US liquid gallon, exact

const { scenario, issues } = readWith(madeUp, MADE_UP_TEXT, { file: 'made-up.yaml' });
const s = scenario!;

test('a sound file gives a scenario and no issue', () => {
  expect(issues).toEqual([]);
  expect(s.file).toBe('made-up.yaml');
  expect(s.title).toBe('Made up');
});

test('every quantity is in SI, keys are as in the definitions, defaults are filled', () => {
  const { parameters } = s.components.selector;
  expect(parameters.crackAt).toBeCloseTo(1500 * PSI, 1);
  expect(parameters).toEqual({
    bore: 0.01,
    crackAt: parameters.crackAt,
    style: 'poppet',
    detent: true,
  });
  expect(s.components.pump.parameters.flow).toBeCloseTo((3.2 * GALLON) / 60, 12);
  expect(s.components['left-jack'].parameters.bore).toBeCloseTo(1.75 * INCH, 12);
  expect(s.mechanisms['left-leg'].parameters.pivot).toEqual([0.12, expect.closeTo(3 * INCH, 12)]);
  expect(s.mechanisms['left-leg'].parameters.travel).toBeCloseTo((80 * Math.PI) / 180, 12);
  expect(s.fluid.temperature).toBeCloseTo(293.15, 9);
  expect(s.fluid.freeAir).toBeCloseTo(0.005, 12);
  expect(s.limits).toEqual({
    timeUp: 9,
    peakPressure: expect.closeTo(2025 * PSI, 1),
    arrivalSpeed: 0.6,
    ownLimit: expect.closeTo(0.003, 12),
  });
  expect(s.nodes).toEqual({
    'gauge-stub': {
      volume: expect.closeTo(2e-5, 12),
      air: expect.closeTo(1e-6, 12),
      note: 'deliberate dead end',
    },
  });
});

test('a blanked port ends in a node of its own', () => {
  const nodes = [s.components.selector.ports.drain, s.components['door-jack'].ports.rod];
  expect(new Set(nodes).size).toBe(2);
  expect(s.components.selector.ports).toEqual({
    pressureIn: 'line',
    out: 'up',
    drain: 'selector-drain-blanked',
  });
});

test('pivots give the travel by the law of cosines, zero at the shortest', () => {
  const { x, y } = s.components['left-jack'].links.rod.travel!;
  // Euclid II.12-13 (law of cosines), computed from coordinates of the two ends instead.
  const length = (deg: number) =>
    Math.hypot(
      0.42 - 0.15 * Math.cos((deg * Math.PI) / 180),
      0.15 * Math.sin((deg * Math.PI) / 180),
    );
  expect(x[0]).toBe(0);
  expect(x[x.length - 1]).toBeCloseTo((80 * Math.PI) / 180, 12);
  expect(y[0]).toBe(0);
  expect(y[y.length - 1]).toBeCloseTo(length(120) - length(40), 12);
  expect(y.every((v, i) => i === 0 || v > y[i - 1])).toBe(true);
});

test('a given closed length is taken off instead, and the sense turns the triangle', () => {
  const closed = readWith(
    madeUp,
    MADE_UP_TEXT.replace(
      'at-low: 40 deg, sense: opening',
      'at-low: 130 deg, sense: closing, shortest: 250 mm',
    ),
  ).scenario!;
  const { y } = closed.components['left-jack'].links.rod.travel!;
  const length = (deg: number) =>
    Math.hypot(
      0.42 - 0.15 * Math.cos((deg * Math.PI) / 180),
      0.15 * Math.sin((deg * Math.PI) / 180),
    );
  expect(y[0]).toBeCloseTo(length(130) - 0.25, 12);
  expect(y[y.length - 1]).toBeCloseTo(length(50) - 0.25, 12);
});

test('an expression without a range is sampled over the travel of its mechanism', () => {
  const { x, y } = s.mechanisms['left-leg'].parameters.pull as { x: number[]; y: number[] };
  expect([x[0], x[x.length - 1]]).toEqual([0, expect.closeTo((80 * Math.PI) / 180, 12)]);
  x.forEach((angle, i) => expect(y[i]).toBeCloseTo(40 * Math.cos(angle), 12));
});

test('steps hold the index of the word or the number, the text as written, and the control left out where there is one', () => {
  expect(s.cards.healthy.steps).toEqual([
    { at: 1, device: 'selector', input: 'lever', value: 0, text: 'up' },
    {
      at: 2,
      after: { device: 'left', to: 'up and closed' },
      device: 'selector',
      input: 'lever',
      value: 2,
      text: 'down',
    },
    { at: 3, device: 'pump', input: 'rate', value: expect.closeTo(2e-3 / 60, 12), text: '2 L/min' },
    {
      at: 0,
      after: { device: 'brain', to: 'raising gear' },
      device: 'brain',
      input: 'lever',
      value: 1,
      text: 'down',
    },
  ]);
});

test('a card carries its settings, faults and starting angles in SI', () => {
  const { set, faults, start, temperature, expect: expected } = s.cards.cold;
  expect(temperature).toBeCloseTo(253.15, 9);
  expect(Object.keys(set)).toEqual([
    'components.pump.flow',
    'components.selector.style',
    'fluid.freeAir',
    'fluid.thickness',
    'fluid.warmedBy',
    'mechanisms.left-leg.mass',
  ]);
  expect(set['mechanisms.left-leg.mass']).toBeCloseTo(50 * 0.45359237, 9); // pound, exact 1959
  expect(set['fluid.warmedBy']).toBe(-10);
  expect(faults).toEqual([
    { fault: 'narrow-bore', on: 'left-jack', severity: 0.6 },
    { fault: 'thin-oil', on: 'fluid', severity: 0.5 },
  ]);
  expect(start['left-leg']).toBeCloseTo(Math.PI / 18, 12);
  expect(expected).toEqual([]);
});

test('rules are read with levels in the quantity of their channel', () => {
  const byName = Object.fromEntries(s.rules.map((rule) => [rule.name, rule]));
  expect(byName['hook-first']).toMatchObject({
    kind: 'order',
    severity: 'caution',
    first: { device: 'left-hook', to: 'engaged' },
  });
  expect(byName['in-time']).toMatchObject({ limit: 8, severity: 'fail' });
  expect(byName.quiet).toMatchObject({
    condition: { channel: 'line.pressure', above: 2e7 },
    during: { device: 'selector', in: 'shut' },
  });
  expect(byName.stays).toMatchObject({
    condition: { device: 'left-hook', in: 'engaged', not: false },
  });
  expect(byName.inside).toMatchObject({
    channel: 'left-jack.stroke',
    low: 0,
    high: expect.closeTo(0.3, 12),
  });
});

test('airspeed, warmed and thickened oil and the well of a unit are read in SI', () => {
  expect(s.airspeed).toBeCloseTo((10 * 1852) / 3600, 9); // knot = 1852 m/h, exact
  expect(s.cards.cold.airspeed).toBeCloseTo((90 * 1852) / 3600, 9);
  expect(s.cards.healthy).not.toHaveProperty('airspeed');
  expect(s.fluid).toMatchObject({ thickness: 1.3, warmedBy: 5 });
  expect(s.units.left.bay).toEqual({
    roof: expect.closeTo(0.3, 12),
    walls: [expect.closeTo(-0.2, 12), expect.closeTo(-1.1, 12)],
    ends: [expect.closeTo(-0.4, 12), expect.closeTo(0.5, 12)],
  });
  const plain = readWith(
    madeUp,
    MADE_UP_TEXT.replace(', thickness: 1.3, warmed-by: 5 K', '')
      .replace('airspeed: 10 knot\n', '')
      .replace(/, bay: \{.*?\]/, ', bay: { roof: 1 m, walls: [0 m, 1 m]')
      .replace(/, ends: \[.*?\]/, ''),
  ).scenario!;
  expect(plain.fluid).toMatchObject({ thickness: 1, warmedBy: 0 });
  expect(plain.airspeed).toBe(0);
  expect(plain.units.left.bay).toEqual({ roof: 1, walls: [0, 1] });
});

test('a wire names a device, whose first signal is meant, or one of its signals', () => {
  expect(s.components.brain.signals).toEqual({
    'left-up': { device: 'left-feeler', signal: 'made' },
    'door-shut': { device: 'tail-feeler', signal: 'notMade' },
  });
  expect(s.components['coil-valve'].signals).toEqual({
    coil: { device: 'brain', signal: 'open' },
    spareCoil: { device: 'brain', signal: 'warning-lamp' },
  });
  expect(s.components.selector.signals).toEqual({});
});

test('a state table keeps its states in order, with their rows', () => {
  expect(s.components.brain.parameters.table).toEqual({
    states: [
      {
        name: 'resting',
        drive: [],
        next: [{ if: ['lever up', 'not left-up'], after: 2, to: 'raising gear' }],
      },
      {
        name: 'raising gear',
        drive: ['open', 'warning-lamp'],
        next: [
          { if: ['left-up', 'door-shut'], to: 'resting' },
          { if: [], after: 30, to: 'failed' },
        ],
      },
      { name: 'failed', drive: [], next: [] },
    ],
  });
});

test('a scenario is plain data', () => {
  expect(structuredClone(s)).toEqual(s);
  expect(JSON.parse(JSON.stringify(s))).toEqual(s);
});
