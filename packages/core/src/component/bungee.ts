/**
 * Bungee: a rubber cord or coil spring between structure and a leg or door. It always pulls to
 * shorten: F = strength (preload + rate x), x its stretch beyond the shortest length in the travel.
 * Through the travel of its link (pivots, table or expression) that is the moment F dx/dangle on
 * what it hangs on. Energy stored: strength (preload x + rate x^2 / 2).
 *
 * Rubber gives back less than it takes: `loss` is a friction that is a share of the force.
 * For a spring whose moment against the angle is known, a leg's own assist spring is plainer.
 */
import type { DeviceDefinition } from '../define/index.js';
import { number } from './shared/parameters.js';

const PRELOAD = 0;
const RATE = 1;
const LOSS = 2;

const END = 0;

export const bungee: DeviceDefinition = {
  kind: 'bungee',
  title: 'Bungee',
  summary:
    'Rubber cord or spring from the structure that pulls a leg or door one way; helps a leg down and into its lock.',
  source:
    'linear spring, virtual work (engineering mechanics textbooks); loss of rubber as friction in proportion to the force: common practice, no source',
  role: 'other',
  parameters: {
    preload: {
      title: 'pull at its shortest',
      quantity: 'force',
      range: [0, 50_000],
      why: 'no default: pull where the travel of its link is zero, from the rigging sheet or a spring scale',
    },
    rate: {
      title: 'spring rate',
      quantity: 'stiffness',
      range: [0, 500_000],
      why: 'no default: rise of the pull per length of stretch; 0 for a constant pull',
    },
    strength: {
      title: 'share of that pull that is left',
      quantity: 'ratio',
      range: [0, 1],
      default: 1,
      why: '1 when fresh; perished cord or a tired coil pulls less, a parted one nothing',
    },
    loss: {
      title: 'loss, share of the pull',
      quantity: 'ratio',
      range: [0, 0.3],
      default: 0,
      why: 'none in a coil spring; rubber cord pulls 5 to 15 per cent less on the way back; from memory',
    },
  },
  ports: {},
  links: { end: { title: 'moving end', shape: 'travel' } },
  forces: { pull: { link: 'end', also: ['end'] } },
  energy: (d) => {
    const x = d.travel(END);
    return x * (d.k[PRELOAD] + 0.5 * d.k[RATE] * x);
  },
  readings: {
    pull: {
      title: 'pull',
      quantity: 'force',
      value: (d) => d.k[PRELOAD] + d.k[RATE] * d.travel(END),
    },
  },
  prepare: (p) => {
    const strength = number(p, 'strength');
    return Float64Array.of(
      strength * number(p, 'preload'),
      strength * number(p, 'rate'),
      number(p, 'loss'),
    );
  },
  equations: (d) => {
    const k = d.k;
    const pull = k[PRELOAD] + k[RATE] * d.travel(END);
    d.force(0, -pull);
    d.forceAlso(0, 0, -k[RATE]);
    // A cord cannot push; a table that dips below zero travel must not make friction negative.
    if (k[LOSS] > 0) {
      d.friction(0, pull > 0 ? k[LOSS] * pull : 0);
      d.frictionAlso(0, 0, pull > 0 ? k[LOSS] * k[RATE] : 0);
    }
  },
  symbol: { name: 'spring', size: [6, 2], ports: {} },
};
