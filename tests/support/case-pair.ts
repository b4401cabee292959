/**
 * A gear with two legs for the written cases: a stand, a filter in the return, a selector; for each leg
 * restrictor, hose, jack, hook, downlock and a spring that helps it down; a bottle that blows both down
 * through a shuttle each, and a dump valve. Up and down take about 5 s. Figures are invented.
 */
import { readScenario } from '@wheelwell/core';
import type { Scenario } from '@wheelwell/core';
import { leg, lever, type Written } from './small-swing.js';

/** Heavy enough that its weight, not its lines, makes most of the pressure. */
const heavy: Written = {
  ...leg,
  mass: '250 kg',
  inertia: '93 kg m^2',
  friction: '80 N m',
};

const SIDES = ['left', 'right'] as const;

const side = (name: string): Readonly<Record<string, Written>> => ({
  [`${name}-restrictor`]: {
    is: 'one-way-restrictor',
    ports: { inlet: 'up', outlet: `${name}-up` },
    bore: '1.47 mm',
    'free-bore': '5 mm',
  },
  [`${name}-hose`]: {
    is: 'hose',
    ports: { inlet: `${name}-up`, outlet: `${name}-lift` },
    bore: '8 mm',
    length: '1 m',
  },
  [`${name}-gas-check`]: {
    is: 'gas-check-valve',
    ports: { inlet: 'gas', outlet: `${name}-gas` },
  },
  [`${name}-shuttle`]: {
    is: 'shuttle-valve',
    ports: { normal: 'down', emergency: `${name}-gas`, outlet: `${name}-pushed` },
  },
  [`${name}-jack`]: {
    is: 'double-acting-actuator',
    ports: {
      ...{ head: `${name}-lift`, 'head-chamber': `${name}-lift` },
      ...{ rod: `${name}-pushed`, 'rod-chamber': `${name}-pushed` },
    },
    links: {
      rod: {
        to: `${name}-leg`,
        pivots: { fixed: '500 mm', moving: '200 mm', 'at-low': '40 deg', sense: 'opening' },
      },
    },
    bore: '53.7 mm',
    'rod-diameter': '26.8 mm',
    stroke: '290 mm',
  },
  [`${name}-uplock`]: {
    is: 'uplock',
    ports: { release: `${name}-pushed` },
    links: { leg: { to: `${name}-leg` } },
    at: '90 deg',
    release: '300 psi',
  },
  [`${name}-downlock`]: {
    is: 'downlock',
    ports: { release: 'up' },
    links: { leg: { to: `${name}-leg` } },
    release: '250 psi',
  },
  [`${name}-bungee`]: {
    is: 'bungee',
    links: { end: { to: `${name}-leg`, expression: '0.15 * angle' } },
    preload: '1 kN',
    rate: '1 kN/m',
  },
});

export function pair(parts: Readonly<Record<string, Written>> = {}): Scenario {
  const components: Record<string, Written> = {
    tank: { is: 'reservoir', ports: { outlet: 'tank' }, capacity: '5 L', level: '3 L' },
    stand: {
      is: 'ground-supply',
      ports: { inlet: 'tank', outlet: 'pressure' },
      flow: '4 gal/min',
      pressure: '1000 psi',
      on: true,
    },
    relief: {
      is: 'relief-valve',
      ports: { inlet: 'pressure', outlet: 'tank' },
      crack: '1200 psi',
      full: '1400 psi',
      flow: '5 gal/min',
    },
    selector: {
      is: 'selector-valve',
      ports: { pressure: 'pressure', return: 'drain', up: 'up', down: 'down' },
      bore: '6 mm',
    },
    'return-line': {
      is: 'line',
      ports: { inlet: 'drain', outlet: 'return' },
      bore: '8 mm',
      length: '2 m',
    },
    'return-filter': {
      is: 'filter',
      ports: { inlet: 'return', outlet: 'tank' },
      flow: '4 gal/min',
      drop: '6 psi',
    },
    bottle: {
      is: 'gas-bottle',
      ports: { outlet: 'bottle-out' },
      volume: '1 L',
      charge: '1500 psi',
      'table-charge': '1500 psi',
    },
    'blow-down': { is: 'blow-down-valve', ports: { inlet: 'bottle-out', outlet: 'gas' } },
    dump: { is: 'dump-valve', ports: { line: 'up', return: 'tank', pilot: 'gas' } },
    ...Object.assign({}, ...SIDES.map(side)),
    ...parts,
  };
  const legs = (make: (name: string) => unknown): Record<string, unknown> =>
    Object.fromEntries(SIDES.map((name) => [`${name}-leg`, make(name)]));
  const document = {
    wheelwell: 1,
    title: 'A pair of legs',
    note: 'Made up, to hold what was seen elsewhere against.',
    fluid: { kind: 'mineral-red', temperature: '20 degC', 'free-air': '0.5 %' },
    components,
    mechanisms: legs(() => heavy),
    nodes: { pressure: { volume: '300 cm^3', note: 'lines' } },
    units: Object.fromEntries(
      SIDES.map((name) => [
        name,
        {
          side: name,
          leg: `${name}-leg`,
          uplock: `${name}-uplock`,
          downlock: `${name}-downlock`,
          actuators: [`${name}-jack`],
        },
      ]),
    ),
    cards: {
      swing: {
        title: 'Up and down',
        duration: '24 s',
        steps: [lever(0.2, 'up'), lever(14, 'down')],
      },
      // For what came about when the gear was up.
      down: {
        title: 'Down from up',
        duration: '14 s',
        steps: [lever(0.5, 'down')],
        start: legs(() => '90 deg'),
      },
      'blow-down': {
        title: 'Blow-down',
        duration: '10 s',
        steps: [
          { at: '0.1 s', device: 'stand', input: 'on', value: 'off' },
          { at: '0.5 s', device: 'blow-down', input: 'handle', value: 'open' },
        ],
        start: legs(() => '90 deg'),
      },
    },
  };
  const { scenario, issues } = readScenario(JSON.stringify(document, null, 1), {
    file: 'pair',
  });
  if (scenario === undefined)
    throw new Error(issues.map((i) => `${i.path}: ${i.message}`).join('; '));
  return scenario;
}
