/**
 * Two doors that meet, the edge of one (over) lapping the edge of the other (under) from outside.
 * Under must close first and open last. With both angles counted from closed, the pair cannot be in
 *   0 < under < lap  and  over < ratio x under
 * the under door's edge would be inside the panel of the over door. Two ways lead out of this
 * triangle: back past the lap (depth a = lap - under), where an over door that closed first stops
 * the under door; and outward (depth b = ratio under - over), where the over door rests on the
 * under door. The contact is a spring against d = a b / sqrt(a^2 + b^2), nearly the smaller of the
 * two: a potential, so moment along the nearer way out, no energy lost but by its damping. d is
 * largest about half way in: what is forced past that point springs out on the far side, as doors
 * that bend past each other do.
 *
 * Source: penalty method for unilateral contact (Brogliato, Nonsmooth Mechanics, from memory);
 * the shape of the forbidden region is plane geometry.
 */
import type { DeviceDefinition, Frame, GuardFrame } from '../define/index.js';
import { push, pushEnergy, pushSlope } from './shared/onset.js';
import { number } from './shared/parameters.js';
import { rise, riseSlope } from './shared/smooth.js';

const LAP = 0;
const RATIO = 1;
const STIFFNESS = 2;
const DAMPING = 3;
const ONSET = 4;
/** Depth at which the doors count as touching, rad. */
const TOUCH = 5;

const UNDER = 0;
const OVER = 1;

/** Share of the onset by which they must have met: a graze is no clash. */
const GRAZE = 0.1;
/** Share of the lap by which the over door must be behind for the under door to count as forced on it. */
const FORCED = 0.25;
/** Onsets that the under door must leave the edge by to be clear again. */
const REBOUND = 3;

const byLap = (d: GuardFrame): number => d.k[LAP] - d.travel(UNDER);
const byEdge = (d: GuardFrame): number => d.k[RATIO] * d.travel(UNDER) - d.travel(OVER);

/** Depth of the contact, rad; 0 where the doors are clear of each other. */
function depth(d: GuardFrame): number {
  const a = byLap(d);
  const b = byEdge(d);
  return a > 0 && b > 0 ? (a * b) / Math.sqrt(a * a + b * b) : 0;
}

function none(d: Frame): void {
  d.force(UNDER, 0);
  d.force(OVER, 0);
  if (!d.partials) return;
  for (let i = 0; i < 4; i++) {
    d.forceAlso(UNDER, i, 0);
    d.forceAlso(OVER, i, 0);
  }
}

function equations(d: Frame): void {
  const k = d.k;
  const r = k[RATIO];
  const w = k[ONSET];
  const a = k[LAP] - d.travel(UNDER);
  const b = r * d.travel(UNDER) - d.travel(OVER);
  if (!(a > 0 && b > 0)) {
    none(d);
    return;
  }
  const square = a * a + b * b;
  const size = Math.sqrt(square);
  const depth = (a * b) / size;
  // Slopes of the depth against a and b, and their rates of change.
  const ga = (b * b * b) / (square * size);
  const gb = (a * a * a) / (square * size);
  const bent = (3 * a * b) / (square * square * size);
  const da = -d.travelRate(UNDER);
  const db = r * d.travelRate(UNDER) - d.travelRate(OVER);
  const rate = ga * da + gb * db;
  const grip = k[DAMPING] * rise(depth / w);
  const press = k[STIFFNESS] * push(depth, w) + grip * rate;
  // Moments along a and b are -press ga and -press gb.
  d.force(UNDER, press * (ga - r * gb));
  d.force(OVER, press * gb);
  if (!d.partials) return;
  const gaa = -bent * b * b;
  const gab = bent * a * b;
  const gbb = -bent * a * a;
  const byDepth =
    k[STIFFNESS] * pushSlope(depth, w) + (k[DAMPING] * riseSlope(depth / w) * rate) / w;
  const pa = byDepth * ga + grip * (gaa * da + gab * db);
  const pb = byDepth * gb + grip * (gab * da + gbb * db);
  // Stiffness against a and b, then against the angles: a = lap - under, b = ratio under - over.
  const aa = pa * ga + press * gaa;
  const ab = pb * ga + press * gab;
  const ba = pa * gb + press * gab;
  const bb = pb * gb + press * gbb;
  d.forceAlso(UNDER, 0, -(aa - r * ba) + r * (ab - r * bb));
  d.forceAlso(UNDER, 1, -(ab - r * bb));
  d.forceAlso(OVER, 0, -ba + r * bb);
  d.forceAlso(OVER, 1, -bb);
  const along = ga - r * gb;
  d.forceAlso(UNDER, 2, -grip * along * along);
  d.forceAlso(UNDER, 3, -grip * along * gb);
  d.forceAlso(OVER, 2, -grip * along * gb);
  d.forceAlso(OVER, 3, -grip * gb * gb);
}

const also = ['under', 'over', 'under.rate', 'over.rate'];

export const doorLap: DeviceDefinition = {
  kind: 'door-lap',
  title: 'Door lap',
  summary:
    'Two doors whose edges overlap when closed: if the overlapping door closes first, the other is stopped on it. Both angles must count from closed.',
  source:
    'plane geometry of the overlap; contact as a stiff spring (penalty method), common practice, no source',
  role: 'coupling',
  parameters: {
    lap: {
      title: 'angle at which the under door meets a closed over door',
      quantity: 'angle',
      range: [0.01, 0.6],
      default: 0.15,
      why: 'edges that overlap by 10 mm on panels of 0.9 m part at about 8.5 degrees: cos(lap) = 1 - overlap / chord',
    },
    ratio: {
      title: 'angle of the over door per angle of the under door when one lies on the other',
      quantity: 'ratio',
      range: [0.2, 5],
      default: 1,
      why: 'chord of the under door over that of the over door; 1 for a pair alike',
    },
    stiffness: {
      title: 'stiffness of the meeting edges',
      quantity: 'angular-stiffness',
      range: [100, 1e6],
      default: 50_000,
      why: 'a jack of 500 N m bends the edges by about half a degree; common practice, no source',
    },
    damping: {
      title: 'damping of the meeting edges',
      quantity: 'angular-damping',
      range: [0, 10_000],
      default: 100,
      why: 'about a quarter of critical with a door of 1 kg m2: a clap, no ringing; common practice, no source',
    },
    onset: {
      title: 'angle over which edge strips are pressed flat',
      quantity: 'angle',
      range: [1e-4, 0.02],
      default: 0.004,
      why: 'some millimetres of rubber or sheet edge; common practice, no source',
    },
  },
  ports: {},
  links: {
    under: { title: 'under door', shape: 'plain' },
    over: { title: 'over door', shape: 'plain' },
  },
  forces: { onUnder: { link: 'under', also }, onOver: { link: 'over', also } },
  energy: (d) => d.k[STIFFNESS] * pushEnergy(depth(d), d.k[ONSET]),
  dissipation: (d) => {
    const a = byLap(d);
    const b = byEdge(d);
    if (!(a > 0 && b > 0)) return 0;
    const cube = Math.hypot(a, b) ** 3;
    const over = d.k[RATIO] * d.travelRate(UNDER) - d.travelRate(OVER);
    const rate = (-(b ** 3) * d.travelRate(UNDER) + a ** 3 * over) / cube;
    return d.k[DAMPING] * rise(depth(d) / d.k[ONSET]) * rate * rate;
  },
  readings: {
    depth: { title: 'edges pressed into each other by', quantity: 'angle', value: depth },
    press: {
      title: 'moment between the doors',
      quantity: 'moment',
      value: (d) => d.k[STIFFNESS] * push(depth(d), d.k[ONSET]),
    },
  },
  modes: {
    clear: {
      title: 'clear of each other',
      guards: [
        {
          to: 'clashed',
          when: (d) => depth(d) - d.k[TOUCH],
          cause: 'the under door has met the over door, which had closed before it',
          reads: ['under', 'over'],
        },
        {
          to: 'overlapped',
          // Closed doors lie edge on edge: no more than a graze apart.
          when: (d) => Math.min(byLap(d) - d.k[TOUCH], d.k[TOUCH] - byEdge(d)),
          cause: 'the under door lies inside the over door',
          reads: ['under', 'over'],
        },
      ],
    },
    overlapped: {
      title: 'under door inside the over door',
      guards: [
        {
          to: 'clear',
          when: (d) => -byLap(d),
          cause: 'the under door has opened past the lap',
          reads: ['under', 'over'],
        },
        {
          to: 'clashed',
          // Not where one edge slips off the other, at the end of the lap.
          when: (d) => Math.min(byEdge(d) - byLap(d), byEdge(d) - FORCED * d.k[RATIO] * d.k[LAP]),
          cause: 'the under door is forced against the closed over door',
          reads: ['under', 'over'],
        },
      ],
    },
    clashed: {
      title: 'edges clashed',
      active: true,
      guards: [
        {
          to: 'clear',
          // A rebound is still the same clash.
          when: (d) => -byLap(d) - REBOUND * d.k[ONSET],
          cause: 'the under door has gone back past the lap',
          reads: ['under', 'over'],
        },
        {
          to: 'overlapped',
          when: (d) => -byEdge(d),
          cause: 'the over door has opened off the edge of the under door',
          reads: ['under', 'over'],
        },
      ],
    },
  },
  prepare: (p) =>
    Float64Array.of(
      number(p, 'lap'),
      number(p, 'ratio'),
      number(p, 'stiffness'),
      number(p, 'damping'),
      number(p, 'onset'),
      GRAZE * number(p, 'onset'),
    ),
  equations,
  symbol: { name: 'linkage', size: [6, 3], ports: {} },
};
