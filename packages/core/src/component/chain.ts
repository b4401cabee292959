/**
 * Chain (or pushrod with play) from one leg or door to another: the follower's angle is
 * ratio x driver + offset, give or take half the slack. Beyond it the taut strand is a spring
 * that begins smoothly (shared/onset), with damping between the two:
 *   e = follower - (ratio driver + offset + jumped teeth),   x = |e| - slack / 2
 *   moment on the follower  -sign(e) (stiffness push(x) + damping rise(x) x'),  on the driver -ratio times that
 * (virtual work). Where there is no slack and no stretch, let the follower be `driven` instead:
 * that needs no coordinate of its own.
 */
import type { DeviceDefinition, Frame, GuardFrame } from '../define/index.js';
import { push, pushEnergy, pushSlope } from './shared/onset.js';
import { number } from './shared/parameters.js';
import { rise, riseSlope } from './shared/smooth.js';

const RATIO = 0;
const OFFSET = 1;
const PLAY = 2;
const STIFFNESS = 3;
const DAMPING = 4;
const ONSET = 5;

const DRIVER = 0;
const FOLLOWER = 1;

/** Share of the play by which the strand must leave its end to count as slack again. */
const BACK = 0.1;

/** How far the follower is ahead of where the driver has it, rad. */
const ahead = (d: GuardFrame): number =>
  d.travel(FOLLOWER) - d.k[RATIO] * d.travel(DRIVER) - d.k[OFFSET];

/** Stretch of the taut strand, rad at the follower; below 0 it hangs loose. */
const stretch = (d: GuardFrame): number => Math.abs(ahead(d)) - d.k[PLAY];

function equations(d: Frame): void {
  const k = d.k;
  const r = k[RATIO];
  const w = k[ONSET];
  const e = d.travel(FOLLOWER) - r * d.travel(DRIVER) - k[OFFSET];
  const rate = d.travelRate(FOLLOWER) - r * d.travelRate(DRIVER);
  const sign = e < 0 ? -1 : 1;
  const x = sign * e - k[PLAY];
  const grip = k[DAMPING] * rise(x / w);
  const moment = -sign * k[STIFFNESS] * push(x, w) - grip * rate;
  d.force(DRIVER, -r * moment);
  d.force(FOLLOWER, moment);
  if (!d.partials) return;
  const bend = (sign * k[DAMPING] * riseSlope(x / w)) / w;
  const byE = -k[STIFFNESS] * pushSlope(x, w) - bend * rate;
  d.forceAlso(DRIVER, 0, r * r * byE);
  d.forceAlso(DRIVER, 1, -r * byE);
  d.forceAlso(DRIVER, 2, -r * r * grip);
  d.forceAlso(DRIVER, 3, r * grip);
  d.forceAlso(FOLLOWER, 0, -r * byE);
  d.forceAlso(FOLLOWER, 1, byE);
  d.forceAlso(FOLLOWER, 2, r * grip);
  d.forceAlso(FOLLOWER, 3, -grip);
}

const also = ['driver', 'follower', 'driver.rate', 'follower.rate'];

export const chain: DeviceDefinition = {
  kind: 'chain',
  title: 'Chain',
  summary:
    'Chain and sprockets, or a linkage with play, by which one leg or door moves another; slack and a jumped tooth put the two out of step.',
  source:
    'virtual work of a spring and damper between two coordinates (engineering mechanics textbooks)',
  role: 'coupling',
  parameters: {
    ratio: {
      title: 'turn of the follower per turn of the driver',
      quantity: 'ratio',
      range: [-5, 5],
      default: 1,
      why: 'teeth of the driving over the driven sprocket; negative where a crossed run turns it the other way',
    },
    offset: {
      title: 'angle of the follower with the driver at zero',
      quantity: 'angle',
      range: [-10, 10],
      default: 0,
      why: 'both at the low end together unless the rigging says otherwise',
    },
    slack: {
      title: 'free play of the follower, end to end',
      quantity: 'angle',
      range: [0, 1],
      default: 0.01,
      why: 'a well tensioned chain leaves about half a degree; common practice, no source',
    },
    stiffness: {
      title: 'stiffness of the taut chain, at the follower',
      quantity: 'angular-stiffness',
      range: [10, 1e6],
      default: 5000,
      why: 'brackets and sprocket shafts give more than the chain: 50 N m bend them about half a degree; common practice, no source',
    },
    damping: {
      title: 'damping of the taut chain, at the follower',
      quantity: 'angular-damping',
      range: [0, 10_000],
      default: 20,
      why: 'a few tenths of critical with a door of 1 kg m2: a clack, no ringing; common practice, no source',
    },
    onset: {
      title: 'angle over which the sag is pulled out',
      quantity: 'angle',
      range: [1e-4, 0.1],
      default: 0.004,
      why: 'a chain stiffens as it straightens; small for a pushrod; common practice, no source',
    },
    jumped: {
      title: 'teeth jumped',
      quantity: 'count',
      range: [-6, 6],
      default: 0,
      why: 'none when timed by its marks; positive puts the follower ahead, whole teeth only',
    },
    teeth: {
      title: "teeth of the follower's sprocket",
      quantity: 'count',
      range: [6, 120],
      default: 24,
      why: 'one tooth is 15 degrees then; common practice, no source',
    },
  },
  ports: {},
  links: {
    driver: { title: 'driver', shape: 'plain' },
    follower: { title: 'follower', shape: 'plain' },
  },
  forces: {
    onDriver: { link: 'driver', also },
    onFollower: { link: 'follower', also },
  },
  energy: (d) => d.k[STIFFNESS] * pushEnergy(stretch(d), d.k[ONSET]),
  dissipation: (d) => {
    const rate = d.travelRate(FOLLOWER) - d.k[RATIO] * d.travelRate(DRIVER);
    return d.k[DAMPING] * rise(stretch(d) / d.k[ONSET]) * rate * rate;
  },
  readings: {
    lead: { title: 'follower ahead of the driver', quantity: 'angle', value: ahead },
    pull: {
      title: 'moment of the taut chain on the follower',
      quantity: 'moment',
      value: (d) => -Math.sign(ahead(d)) * d.k[STIFFNESS] * push(stretch(d), d.k[ONSET]),
    },
  },
  modes: {
    slack: {
      title: 'slack',
      guards: [
        {
          to: 'taut',
          when: stretch,
          cause: 'the slack is taken up',
          reads: ['driver', 'follower'],
        },
      ],
    },
    taut: {
      title: 'taut',
      active: true,
      guards: [
        {
          to: 'slack',
          // A chain without play never hangs loose, it only pulls with its other strand.
          when: (d) => (d.k[PLAY] > 0 ? -stretch(d) - BACK * d.k[PLAY] : -1),
          cause: 'the follower has come back into the slack',
          reads: ['driver', 'follower'],
        },
      ],
    },
  },
  initialMode: (p) => (number(p, 'slack') > 0 ? 'slack' : 'taut'),
  prepare: (p) =>
    Float64Array.of(
      number(p, 'ratio'),
      number(p, 'offset') + (Math.round(number(p, 'jumped')) * 2 * Math.PI) / number(p, 'teeth'),
      0.5 * number(p, 'slack'),
      number(p, 'stiffness'),
      number(p, 'damping'),
      number(p, 'onset'),
    ),
  equations,
  symbol: { name: 'chain', size: [6, 3], ports: {} },
};
