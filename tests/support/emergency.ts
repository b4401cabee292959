/**
 * A small gear with an emergency system as a scenario file: supply, selector, two legs with jack and
 * locks, a bottle that blows both down through a shuttle each, and a dump valve that the gas opens.
 * Figures are invented. `at` of a leg: where it starts; hung up, its hook holds it.
 */
import { readScenario } from '@wheelwell/core';
import type { Scenario } from '@wheelwell/core';
import { leg, type Written } from './small-swing.js';

export interface EmergencyOptions {
  readonly parts?: Readonly<Record<string, Written>>;
  /** Both legs hang on their hooks at the start. */
  readonly up?: boolean;
  readonly steps: readonly Written[];
  /** s */
  readonly duration: number;
  readonly limits?: Written;
  readonly nodes?: Written;
}

/** When the handle of {@link handle} is pulled, s. */
export const PULL = 0.5;
export const handle: Written = {
  at: `${PULL} s`,
  device: 'blow-down',
  input: 'handle',
  value: 'open',
};

const SIDES = ['left', 'right'] as const;

const side = (name: string): Readonly<Record<string, Written>> => ({
  [`${name}-restrictor`]: {
    is: 'one-way-restrictor',
    ports: { inlet: 'up', outlet: `${name}-lift` },
    bore: '2.1 mm',
    'free-bore': '3 mm',
  },
  // Without it the oil of one leg, through a shuttle left over, would shift the other's shuttle.
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
    bore: '44.5 mm',
    'rod-diameter': '22.2 mm',
    stroke: '290 mm',
  },
  [`${name}-uplock`]: {
    is: 'uplock',
    ports: { release: `${name}-pushed` },
    links: { leg: { to: `${name}-leg` } },
    at: '90 deg',
    // Above what the other leg's oil makes of a shut-in down side on its way to the dump valve.
    release: '600 psi',
  },
  [`${name}-downlock`]: {
    is: 'downlock',
    ports: { release: 'up' },
    links: { leg: { to: `${name}-leg` } },
    release: '250 psi',
  },
});

/** The gear with its one card. */
export function emergency(o: EmergencyOptions): { readonly scenario: Scenario } {
  const parts: Readonly<Record<string, Written>> = {
    tank: { is: 'reservoir', ports: { outlet: 'tank' }, capacity: '5 L', level: '3 L' },
    supply: {
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
      ports: { pressure: 'pressure', return: 'tank', up: 'up', down: 'down' },
      bore: '6 mm',
    },
    bottle: {
      is: 'gas-bottle',
      ports: { outlet: 'bottle-out' },
      volume: '1 L',
      charge: '1500 psi',
      'table-charge': '1500 psi',
    },
    'blow-down': { is: 'blow-down-valve', ports: { inlet: 'bottle-out', outlet: 'gas-feed' } },
    'gas-tube': { is: 'gas-line', ports: { inlet: 'gas-feed', outlet: 'gas' }, length: '3 m' },
    dump: { is: 'dump-valve', ports: { line: 'up', return: 'tank', pilot: 'gas' } },
    ...Object.assign({}, ...SIDES.map(side)),
  };
  const components = { ...parts };
  for (const [name, own] of Object.entries(o.parts ?? {}))
    components[name] = { ...parts[name], ...own };
  const named = (make: (name: string) => unknown): Record<string, unknown> =>
    Object.fromEntries(SIDES.map((name) => [`${name}-leg`, make(name)]));
  const document = {
    wheelwell: 1,
    title: 'A small emergency system',
    note: 'Made up, to see what a fault does.',
    fluid: { kind: 'mineral-red', temperature: '20 degC', 'free-air': '0.5 %' },
    components: Object.fromEntries(
      Object.entries(components).map(([name, part]) => [name, { ...part, note: 'made up' }]),
    ),
    mechanisms: named(() => leg),
    nodes: { pressure: { volume: '300 cm^3', note: 'lines' }, ...o.nodes },
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
    limits: { 'time-blow-down': '6 s', 'blow-down-spread': '1 s', ...o.limits },
    cards: {
      test: {
        title: 'Test',
        note: 'made up',
        duration: `${o.duration} s`,
        steps: o.steps,
        ...(o.up && { start: named(() => '90 deg') }),
      },
    },
  };
  const { scenario, issues } = readScenario(JSON.stringify(document, null, 1), {
    file: 'emergency',
  });
  if (scenario === undefined)
    throw new Error(issues.map((i) => `${i.path}: ${i.message}`).join('; '));
  return { scenario };
}
