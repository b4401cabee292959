/** Small gears for the written cases: one leg each, with the parts that the case is about. Figures are invented. */
import type { Scenario } from '@wheelwell/core';
import { enginePump, turning } from './engine-supply.js';
import { door } from './fault-hosts.js';
import { oneLeg, pivots } from './one-leg.js';
import { jack, leg, lever, swing, type Written } from './small-swing.js';

/** A leg whose door closes behind it, worked by plungers. */
export const doored: Scenario = swing('door', door).scenario;

/** The same leg light, its striker with some leverage, beside a heavier one without doors: nose and main. */
export const noseAndMain: Scenario = (() => {
  const { scenario } = swing('nose and main', {
    ...door,
    parts: {
      ...door.parts,
      'main-jack': {
        is: 'double-acting-actuator',
        ports: { head: 'lift', 'head-chamber': 'lift', rod: 'let-down', 'rod-chamber': 'let-down' },
        links: {
          rod: {
            to: 'main-leg',
            pivots: { fixed: '500 mm', moving: '200 mm', 'at-low': '40 deg', sense: 'opening' },
          },
        },
        bore: '44.5 mm',
        'rod-diameter': '22.2 mm',
        stroke: '290 mm',
      },
      'close-valve': {
        is: 'sequence-valve',
        ports: { inlet: 'up', outlet: 'door-close' },
        links: { plunger: { to: 'leg', expression: '0.2 * angle' } },
        trip: '309.68 mm',
        bore: '1.2 mm',
      },
    },
    mechanisms: {
      ...door.mechanisms,
      leg: { ...leg, mass: '50 kg', inertia: '18 kg m^2' },
      'main-leg': { ...leg, mass: '80 kg', inertia: '30 kg m^2' },
    },
    steps: [lever(0.2, 'up')],
    duration: 10,
  });
  const main = {
    side: 'right',
    leg: 'main-leg',
    doors: [],
    sequence: [],
    actuators: ['main-jack'],
  };
  const { unit } = scenario.units;
  return { ...scenario, units: { nose: { ...unit, side: 'centre' }, main } } as Scenario;
})();

const command = (at: number, value: string): Written => ({
  at: `${at} s`,
  device: 'supply',
  input: 'command',
  value,
});
/** Draws its leg up: more oil comes out of its lowering side than goes in above. */
const drawing: Written = {
  ...jack('lift'),
  ports: { head: 'down', 'head-chamber': 'down', rod: 'lift', 'rod-chamber': 'lift' },
  links: {
    rod: {
      to: 'leg',
      pivots: { fixed: '500 mm', moving: '200 mm', 'at-low': '130 deg', sense: 'closing' },
    },
  },
};

/** A power pack that works its leg without a selector. */
export const packed: Scenario = swing('power pack', {
  parts: {
    supply: {
      is: 'power-pack',
      ports: { up: 'up', down: 'down', reservoir: 'tank' },
      displacement: '1 cm^3/rev',
      'cut-out': '1030 psi',
      'cut-in': '850 psi',
      'relief-up': '1300 psi',
      'relief-down': '500 psi',
    },
    jack: drawing,
    relief: undefined,
    selector: undefined,
  },
  nodes: { pressure: undefined },
  steps: [command(0.2, 'up'), command(12, 'down')],
  duration: 20,
}).scenario;

/** An electric pump that a pressure switch holds off, and a selector that is tight: nothing gets out. */
export const shutIn: Scenario = swing('shut in', {
  parts: {
    selector: {
      is: 'selector-valve',
      ports: {
        pressure: 'pressure',
        return: 'selector-return',
        up: 'selector-up',
        down: 'selector-down',
      },
      bore: '6 mm',
      leak: '1e-17 m^3/(s Pa)',
    },
    switch: {
      is: 'pressure-switch',
      ports: { pressure: 'up' },
      opens: '600 psi',
      closes: '400 psi',
    },
    supply: {
      is: 'ground-supply',
      ports: { inlet: 'suction', outlet: 'stand' },
      flow: '3 gal/min',
      pressure: '1000 psi',
      signals: { on: 'switch.closed' },
    },
    jack: { ...jack('lower'), 'rod-diameter': '31 mm' },
  },
  steps: [lever(2, 'up')],
  duration: 8,
}).scenario;

/** An engine's pump. */
export const engined: Scenario = swing('engine pump', {
  parts: { supply: enginePump },
  steps: [turning(0.05), lever(0.2, 'up'), lever(7, 'down')],
}).scenario;

/** A switch at each end of the leg, for the lights, beside a lock that cannot be seen: in the jack. */
export const lit: Scenario = swing('lights', {
  parts: {
    downlock: undefined,
    jack: {
      ...jack('lower'),
      is: 'locking-actuator',
      links: { ...pivots, leg: { to: 'leg' } },
      lock: 'retracted',
      'extended-at': '90 deg',
      'retracted-at': '0 deg',
    },
    'up-switch': { is: 'position-switch', links: { mechanism: { to: 'leg' } }, at: '89.5 deg' },
    'down-switch': {
      is: 'position-switch',
      links: { mechanism: { to: 'leg' } },
      at: '0.5 deg',
      side: 'below',
    },
  },
  unit: { downlock: 'jack' },
}).scenario;

/** A check valve in the way home. */
export const checked: Scenario = swing('check valve', {
  between: { return: { is: 'check-valve' } },
}).scenario;

export const handPumped: Scenario = swing('hand pump', {
  parts: {
    supply: {
      is: 'hand-pump',
      ports: { inlet: 'suction', outlet: 'stand' },
      'stroke-volume': '60 cm^3',
      force: '500 N',
    },
  },
  steps: [{ at: '0.1 s', device: 'supply', input: 'pumping', value: 'on' }, lever(0.2, 'up')],
  duration: 20,
}).scenario;

/** An engine's pump behind an unloader, an accumulator, and a service that uses a little. */
export const regulated: Scenario = swing('unloader', {
  parts: {
    supply: enginePump,
    accumulator: {
      is: 'accumulator',
      ports: { oil: 'pressure' },
      volume: '1 L',
      precharge: '500 psi',
    },
    use: { is: 'orifice', ports: { inlet: 'pressure', outlet: 'tank' }, bore: '0.5 mm' },
    tank: { is: 'reservoir', ports: { outlet: 'tank' }, capacity: '10 L', level: '8 L' },
  },
  between: {
    delivery: {
      is: 'unloader',
      ports: { return: 'tank' },
      'cut-out': '1100 psi',
      'cut-in': '900 psi',
    },
  },
  steps: [turning(0.05), lever(4, 'up')],
  duration: 25,
}).scenario;

/** Oil reaches the selector only while the squat switch says air. */
export const interlocked: Scenario = oneLeg({
  components: {
    squat: { is: 'squat-switch' },
    stand: {
      is: 'ground-supply',
      ports: { inlet: 'tank', outlet: 'main' },
      flow: '120 cm^3/s',
      pressure: '10 MPa',
      on: true,
    },
    gate: {
      is: 'solenoid-valve',
      ports: { inlet: 'main', outlet: 'pressure' },
      signals: { coil: 'squat.in-air' },
    },
  },
});

/** A leg that is drawn together on its way up. */
export const shortened: Scenario = swing('shortened leg', {
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
}).scenario;

/** Engine's pump, gear and, called while the gear is on its way, flaps. */
export const withFlaps: Scenario = swing('gear and flaps', {
  parts: {
    supply: enginePump,
    'flap-valve': { is: 'solenoid-valve', ports: { inlet: 'pressure', outlet: 'flap-out' } },
    'flap-jack': {
      is: 'double-acting-actuator',
      ports: {
        head: 'flap-out',
        'head-chamber': 'flap-out',
        rod: 'tank',
        'rod-chamber': 'tank',
      },
      links: {
        rod: {
          to: 'flap',
          pivots: { fixed: '500 mm', moving: '200 mm', 'at-low': '40 deg', sense: 'opening' },
        },
      },
      bore: '44.5 mm',
      'rod-diameter': '22.2 mm',
      stroke: '290 mm',
    },
  },
  mechanisms: {
    leg: { ...leg, mass: '180 kg', inertia: '67 kg m^2' },
    flap: { ...leg, mass: '180 kg', inertia: '67 kg m^2' },
  },
  steps: [
    turning(0.05, 700),
    lever(0.2, 'up'),
    { at: '1 s', device: 'flap-valve', input: 'coil', value: 'on' },
  ],
  duration: 30,
}).scenario;
