/**
 * A small swing as a scenario file: supply, selector and one leg with its jack and locks, raised at
 * 0.2 s and lowered at 7 s, with whatever a test puts into it. Figures are invented.
 */
import { readScenario } from '@wheelwell/core';
import type { Scenario } from '@wheelwell/core';

export type Written = Readonly<Record<string, unknown>>;

const PLACES = {
  suction: ['tank', 'suction'],
  delivery: ['stand', 'pressure'],
  up: ['selector-up', 'up'],
  down: ['selector-down', 'down'],
  return: ['selector-return', 'tank'],
} as const;

export interface SwingOptions {
  /** What stands in a place of the circuit: a device with inlet and outlet, without its ports. */
  readonly between?: Readonly<Partial<Record<keyof typeof PLACES, Written>>>;
  readonly parts?: Readonly<Record<string, Written | undefined>>;
  readonly mechanisms?: Readonly<Record<string, Written>>;
  readonly nodes?: Readonly<Record<string, Written | undefined>>;
  /** Added to the one unit, e.g. its doors. */
  readonly unit?: Written;
  readonly fluid?: Written;
  /** Instead of lever up at 0.2 s, down at 7 s. */
  readonly steps?: readonly Written[];
  /** s */
  readonly duration?: number;
  /** Among hosts of faults: which device a fault befalls here; sends the fault to this host. */
  readonly on?: Readonly<Record<string, string>>;
}

export interface SmallSwing {
  readonly name: string;
  readonly scenario: Scenario;
  readonly on: Readonly<Record<string, string>>;
}

/** The plain leg. */
export const leg = {
  is: 'leg',
  note: 'made up',
  retract: 'inboard',
  travel: '90 deg',
  mass: '70 kg',
  cog: '550 mm',
  inertia: '26 kg m^2',
  length: '900 mm',
  friction: '25 N m',
  'tyre-radius': '300 mm',
  'tyre-width': '150 mm',
  damping: '5 N m s/rad',
};

/** The plain leg's jack; its rod end on a node. */
export const jack = (rod: string): Written => ({
  is: 'double-acting-actuator',
  ports: { head: 'lift', 'head-chamber': 'lift', rod, 'rod-chamber': rod },
  links: {
    rod: {
      to: 'leg',
      pivots: { fixed: '500 mm', moving: '200 mm', 'at-low': '40 deg', sense: 'opening' },
    },
  },
  bore: '44.5 mm',
  'rod-diameter': '22.2 mm',
  stroke: '290 mm',
});

export const lever = (at: number, value: string): Written => ({
  at: `${at} s`,
  device: 'selector',
  input: 'lever',
  value,
});

/** The plain circuit with a host's own parts in it. */
export function swing(name: string, own: SwingOptions = {}): SmallSwing {
  const parts: Record<string, Written | undefined> = {
    tank: { is: 'reservoir', ports: { outlet: 'tank' }, capacity: '4 L', level: '2.5 L' },
    supply: {
      is: 'ground-supply',
      ports: { inlet: 'suction', outlet: 'stand' },
      flow: '3 gal/min',
      pressure: '1000 psi',
      on: true,
    },
    relief: {
      is: 'relief-valve',
      ports: { inlet: 'pressure', outlet: 'tank' },
      crack: '1200 psi',
      full: '1400 psi',
      flow: '4 gal/min',
    },
    selector: {
      is: 'selector-valve',
      ports: {
        pressure: 'pressure',
        return: 'selector-return',
        up: 'selector-up',
        down: 'selector-down',
      },
      bore: '6 mm',
    },
    restrictor: {
      is: 'one-way-restrictor',
      ports: { inlet: 'up', outlet: 'lift' },
      bore: '2.1 mm',
      'free-bore': '3 mm',
    },
    jack: jack('lower'),
    uplock: {
      is: 'uplock',
      ports: { release: 'lower' },
      links: { leg: { to: 'leg' } },
      at: '90 deg',
      release: '250 psi',
    },
    downlock: {
      is: 'downlock',
      ports: { release: 'up' },
      links: { leg: { to: 'leg' } },
      release: '250 psi',
    },
    ...own.parts,
  };
  const joined = new Map<string, string>();
  for (const [place, [near, far]] of Object.entries(PLACES)) {
    const part = own.between?.[place as keyof typeof PLACES];
    if (part !== undefined)
      parts[`in-${place}`] = { ...part, ports: { inlet: near, outlet: far, ...ports(part) } };
    else if (place === 'suction') joined.set(far, near);
    else joined.set(near, far);
  }
  // Where nothing stands between lines and jack, the jack's lower end is the down line itself.
  joined.set('lower', joined.get('lower') ?? 'down');
  const components = Object.fromEntries(
    Object.entries(parts).flatMap(([part, written]) => {
      if (written === undefined) return [];
      const nodes = Object.entries(ports(written)).map(([port, n]) => [port, joined.get(n) ?? n]);
      return [[part, { ...written, note: 'made up', ports: Object.fromEntries(nodes) }]];
    }),
  );
  const document = {
    wheelwell: 1,
    title: `A small swing: ${name}`,
    note: 'Made up, to see what a fault does.',
    fluid: { kind: 'mineral-red', temperature: '20 degC', 'free-air': '0.5 %', ...own.fluid },
    components,
    mechanisms: {
      leg,
      ...own.mechanisms,
    },
    nodes: { pressure: { volume: '300 cm^3', note: 'lines' }, ...own.nodes },
    units: {
      unit: {
        side: 'left',
        leg: 'leg',
        ...(parts.uplock && { uplock: 'uplock' }),
        ...(parts.downlock && { downlock: 'downlock' }),
        actuators: ['jack'],
        ...own.unit,
      },
    },
    cards: {
      swing: {
        title: 'Up and down',
        note: 'made up',
        duration: `${own.duration ?? 14} s`,
        steps: own.steps ?? [lever(0.2, 'up'), lever(7, 'down')],
      },
    },
  };
  const { scenario, issues } = readScenario(JSON.stringify(document), { file: name });
  if (scenario === undefined)
    throw new Error(`${name}: ${issues.map((i) => `${i.path}: ${i.message}`).join('; ')}`);
  return { name, scenario, on: own.on ?? {} };
}

const ports = (part: Written): Record<string, string> =>
  (part.ports ?? {}) as Record<string, string>;
