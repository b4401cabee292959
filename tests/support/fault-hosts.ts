/**
 * Host circuits: for each kind of device one small swing in which its faults can be seen.
 * `tests/laws/fault-monotone.test.ts` runs every fault of the catalogue in them.
 *
 * To add a host: one entry in `hosts` below, written as in a scenario file. Start from
 * {@link swing}: one leg with uplock and downlock, raised at 0.2 s and lowered later.
 *  - A device with an inlet and an outlet: name the place where it stands,
 *    `swing('my-valve', { between: { up: { is: 'my-valve', bore: '2 mm' } } })`. Places, in the way the
 *    oil goes when the leg goes up: `suction` (tank to supply), `delivery` (supply to relief valve and
 *    selector), `up` (selector to jack), `down` (selector to jack), `return` (selector to tank).
 *  - Anything else: `parts: { name: { is, ports, links, ... } }`, which also replaces parts of the
 *    plain circuit (`tank`, `supply`, `relief`, `selector`, `jack`, `uplock`, `downlock`) or, with
 *    `undefined`, leaves them out. Nodes: `tank`, `suction`, `pressure`, `up`, `down`, `lift`, `lower`.
 *  - More mechanisms, other steps, another duration: the fields of {@link SwingOptions} of that name.
 *  - `on: { 'my-fault': 'device' }` where a fault is to befall another device than the first it can.
 * A fault is looked at in the first host that has what it befalls; name it in `on` of another host
 * to send it there (a fault that `slows` needs a circuit where it matters).
 *
 * One table, so that it can be searched: longer than other files.
 */
import { catalogues } from '@wheelwell/core';
import type { FaultDefinition, FaultEntry } from '@wheelwell/core';
import { canBefall } from '../../packages/core/src/scenario/patch.js';
import { jack, lever, swing, type SmallSwing } from './small-swing.js';

/** Where a fault is looked at: the host that asks for it, else the first that has what it befalls. */
export function hostOf(
  fault: FaultDefinition,
): { readonly host: SmallSwing; readonly entry: FaultEntry } | undefined {
  const asks = hosts.find((host) => Object.hasOwn(host.on, fault.kind));
  const host = asks ?? hosts.find(({ scenario }) => canBefall(scenario, fault).length > 0);
  if (host === undefined) return undefined;
  const on = host.on[fault.kind] ?? canBefall(host.scenario, fault)[0];
  return { host, entry: { fault: fault.kind, on, severity: 1 } };
}

/** Every fault of the catalogue, by name. */
export const everyFault: readonly FaultDefinition[] = Object.values(catalogues.faults);

const pump = {
  is: 'engine-pump',
  ports: { inlet: 'suction', outlet: 'stand' },
  displacement: '0.36 in^3/rev',
  'rated-speed': '2000 rpm',
};
const running = { at: '0.05 s', device: 'supply', input: 'speed', value: '2000 rpm' };
const swings = [lever(0.2, 'up'), lever(7, 'down')];
const pack = (at: number, value: string) => ({
  at: `${at} s`,
  device: 'supply',
  input: 'command',
  value,
});
const tube = { bore: '4 mm', length: '3 m' };

/** A door that opens first going down, closes last going up, worked by two sequence valves. */
export const door = {
  parts: {
    uplock: {
      is: 'uplock',
      ports: { release: 'let-down' },
      links: { leg: { to: 'leg' } },
      at: '90 deg',
      release: '700 psi',
    },
    // Its lower end lies beyond the valve that the door works (a node `lower` would be the down line).
    jack: jack('let-down'),
    'door-jack': {
      is: 'double-acting-actuator',
      ports: {
        head: 'door-open',
        'head-chamber': 'door-open',
        rod: 'door-close',
        'rod-chamber': 'door-close',
      },
      links: {
        rod: {
          to: 'door',
          pivots: { fixed: '350 mm', moving: '100 mm', 'at-low': '35 deg', sense: 'opening' },
        },
      },
      bore: '25 mm',
      'rod-diameter': '12.5 mm',
      stroke: '160 mm',
      seals: '30 N',
    },
    'door-feed': { is: 'orifice', ports: { inlet: 'down', outlet: 'door-open' }, bore: '1.1 mm' },
    'close-valve': {
      is: 'sequence-valve',
      ports: { inlet: 'up', outlet: 'door-close' },
      links: { plunger: { to: 'leg', expression: '0.1 * angle' } },
      trip: '152.6 mm',
      bore: '1.2 mm',
    },
    'lower-valve': {
      is: 'sequence-valve',
      ports: { inlet: 'down', outlet: 'let-down' },
      links: { plunger: { to: 'door', expression: '0.1 * angle' } },
      trip: '152.6 mm',
    },
  },
  mechanisms: {
    door: {
      is: 'door',
      note: 'made up',
      travel: '90 deg',
      initial: '90 deg',
      mass: '6 kg',
      cog: '200 mm',
      inertia: '0.35 kg m^2',
      chord: '400 mm',
      span: '700 mm',
      'seal-moment': '20 N m',
      friction: '2 N m',
      damping: '1 N m s/rad',
    },
  },
  unit: { doors: ['door'], sequence: ['close-valve', 'lower-valve'] },
};

/** The hosts, plain one first. */
export const hosts: readonly SmallSwing[] = [
  swing('plain'),
  swing('filter', { between: { delivery: { is: 'filter', flow: '3 gal/min', drop: '6 psi' } } }),
  swing('return-filter', {
    between: { return: { is: 'filter', flow: '3 gal/min', drop: '6 psi' } },
    on: { 'return-filter-loaded': 'in-return' },
  }),
  swing('check-valve', { between: { delivery: { is: 'check-valve' } } }),
  swing('line', { between: { up: { is: 'line', ...tube }, down: { is: 'line', ...tube } } }),
  swing('long-lines', {
    between: {
      up: { is: 'line', bore: '7 mm', length: '4 m' },
      down: { is: 'line', bore: '7 mm', length: '4 m' },
    },
    steps: [lever(0.2, 'up'), lever(25, 'down')],
    duration: 60,
    on: { 'cold-oil': 'fluid', 'oil-too-thick': 'fluid' },
  }),
  swing('hose', { between: { up: { is: 'hose', ...tube } } }),
  swing('orifice', { between: { down: { is: 'orifice', bore: '3 mm' } } }),
  swing('quick-disconnect', { between: { delivery: { is: 'quick-disconnect' } } }),
  swing('engine-pump', { parts: { supply: pump }, steps: [running, ...swings] }),
  // The engine turns a pump that holds 900 psi in an accumulator behind its unloader before the lever goes up.
  swing('unloader', {
    between: {
      delivery: {
        is: 'unloader',
        ports: { return: 'tank' },
        'cut-out': '1100 psi',
        'cut-in': '900 psi',
      },
    },
    parts: {
      supply: pump,
      accumulator: {
        is: 'accumulator',
        ports: { oil: 'pressure' },
        volume: '300 cm^3',
        precharge: '500 psi',
      },
    },
    steps: [running, lever(1.5, 'up'), lever(8, 'down')],
  }),
  // Cut-out is not far above what the leg takes, so that a lower one stops it on the way.
  swing('power-pack', {
    parts: {
      supply: {
        is: 'power-pack',
        ports: { up: 'up', down: 'down', reservoir: 'tank' },
        displacement: '1 cm^3/rev',
        'cut-out': '600 psi',
        'cut-in': '450 psi',
        'relief-up': '900 psi',
        'relief-down': '700 psi',
      },
      relief: undefined,
      selector: undefined,
    },
    nodes: { pressure: undefined },
    steps: [pack(0.2, 'up'), pack(12, 'down')],
    duration: 20,
  }),
  swing('door', door),
  swing('pressure-sequence', {
    ...door,
    parts: {
      ...door.parts,
      'close-valve': {
        is: 'pressure-sequence-valve',
        ports: { inlet: 'up', outlet: 'door-close', outside: 'tank' },
        crack: '800 psi',
        full: '900 psi',
        bore: '1.2 mm',
      },
    },
    unit: { doors: ['door'], sequence: ['close-valve', 'lower-valve'] },
  }),
  swing('thermal-relief', {
    parts: {
      guard: {
        is: 'thermal-relief',
        ports: { inlet: 'up', outlet: 'tank' },
        crack: '1500 psi',
        full: '1650 psi',
      },
    },
  }),
  swing('hand-pump', {
    parts: {
      supply: {
        is: 'hand-pump',
        ports: { inlet: 'suction', outlet: 'stand' },
        'stroke-volume': '30 cm^3',
        force: '500 N',
      },
    },
    on: { 'free-air': 'fluid' },
    steps: [
      { at: '0.1 s', device: 'supply', input: 'pumping', value: 'on' },
      lever(0.2, 'up'),
      lever(45, 'down'),
    ],
    duration: 80,
  }),
  // The lever goes to neutral first, which lets both lines empty: the leg hangs on its hook.
  swing('late-uplock', {
    steps: [lever(0.2, 'up'), lever(5, 'neutral'), lever(7, 'down')],
    parts: {
      selector: {
        is: 'selector-valve',
        ports: {
          pressure: 'pressure',
          return: 'selector-return',
          up: 'selector-up',
          down: 'selector-down',
        },
        centre: 'lines-to-return',
      },
      uplock: {
        is: 'uplock',
        ports: { release: 'lower' },
        links: { leg: { to: 'leg' } },
        at: '90 deg',
        release: '700 psi',
      },
    },
    on: { 'uplock-roller-seized': 'uplock', 'uplock-release-leak': 'uplock' },
  }),
  swing('shortened-leg', {
    mechanisms: {
      leg: {
        is: 'leg',
        note: 'made up',
        retract: 'inboard',
        travel: '90 deg',
        mass: '70 kg',
        cog: '550 mm',
        inertia: '26 kg m^2',
        length: '900 mm',
        'sliding-mass': '40 kg',
        shortening: { expression: '0.12 * (1 - cos(angle))', from: '0 deg', to: '90 deg' },
        'gas-pressure': '380 psi',
        'gas-area': '16 cm^2',
        'gas-volume': '1000 cm^3',
        friction: '25 N m',
        'tyre-radius': '300 mm',
        'tyre-width': '150 mm',
        damping: '5 N m s/rad',
      },
    },
    on: { 'strut-overcharged': 'leg' },
  }),
  swing('bungee', {
    parts: {
      bungee: {
        is: 'bungee',
        links: { end: { to: 'leg', expression: '0.15 * angle' } },
        preload: '300 N',
        rate: '500 N/m',
      },
    },
  }),
  swing('locking-actuator', {
    parts: {
      downlock: undefined,
      jack: {
        is: 'locking-actuator',
        ports: { head: 'lift', 'head-chamber': 'lift', rod: 'lower', 'rod-chamber': 'lower' },
        links: {
          rod: {
            to: 'leg',
            pivots: { fixed: '500 mm', moving: '200 mm', 'at-low': '40 deg', sense: 'opening' },
          },
          leg: { to: 'leg' },
        },
        bore: '44.5 mm',
        'rod-diameter': '22.2 mm',
        stroke: '290 mm',
        lock: 'retracted',
        'extended-at': '90 deg',
        'retracted-at': '0 deg',
      },
    },
    unit: { downlock: 'jack' },
  }),
  swing('chain', {
    parts: {
      chain: { is: 'chain', links: { driver: { to: 'leg' }, follower: { to: 'flap' } } },
    },
    mechanisms: { flap: { ...door.mechanisms.door, initial: '0 deg' } },
  }),
  swing('switches', {
    parts: {
      'up-switch': {
        is: 'position-switch',
        links: { mechanism: { to: 'leg' } },
        at: '88 deg',
      },
      squat: { is: 'squat-switch', 'strut-extension': '250 mm' },
    },
  }),
  swing('blow-down', {
    parts: {
      bottle: {
        is: 'gas-bottle',
        ports: { outlet: 'bottle-out' },
        volume: '800 cm^3',
        charge: '1500 psi',
      },
      'blow-down': { is: 'blow-down-valve', ports: { inlet: 'bottle-out', outlet: 'gas' } },
      shuttle: {
        is: 'shuttle-valve',
        ports: { normal: 'down', emergency: 'gas', outlet: 'pushed' },
      },
      dump: { is: 'dump-valve', ports: { line: 'up', return: 'tank', pilot: 'gas' } },
      jack: jack('pushed'),
      uplock: {
        is: 'uplock',
        ports: { release: 'pushed' },
        links: { leg: { to: 'leg' } },
        at: '90 deg',
        release: '250 psi',
      },
    },
  }),
];
