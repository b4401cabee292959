/**
 * Over-centre brace: two links, folding at a knee, between structure and leg. Down, the knee
 * stands past the straight line against its stop, and load along the brace only presses it there.
 *
 * Geometry. Leg pivot, upper end (structure) and lower end (leg) make a triangle with sides
 * f = `structure`, m = `onLeg` and the distance c between the ends: c^2 = f^2 + m^2 - 2 f m cos(phi),
 * phi falling by as much as the leg rises. The links a and b make another over c, folded by theta:
 * c^2 = a^2 + b^2 + 2 a b cos(theta). Down, with the knee h past centre, c = sqrt(a^2-h^2) + sqrt(b^2-h^2).
 * With z = 1 - cos(theta) the toggle's lever is
 *   dtheta/dangle = f m sin(phi) / (a b sin(theta)),   sin(theta) = sqrt(z (2 - z)).
 *
 * Open: the spring's moment S at the knee has the potential S theta, so it turns the leg by
 * -S dtheta/dangle, and knee friction reaches the leg through the same lever. Near straight the lever
 * has no limit, but there the parts give; inside the window of the lock (and close to fully
 * folded) the potential goes on as a parabola in z: smooth, and at most half as much again.
 * Locking: at dead centre the leg has no lever on the knee. It goes over when the leg is home and
 * spring and push jack beat the friction, S + P > F; the jack counts for this last bit only.
 * Engaged: a side load puts N = moment / arm into the brace; it holds while S + F + N h > 0, so
 * with h short of centre (negative) it folds under side load, though every swing on jacks is right.
 *
 * The plain downlock has window and pressure but no spring to grow weak.
 * Over 250 lines because of its geometry and its long table of parameters.
 */
import type {
  DeviceDefinition,
  Frame,
  GuardFrame,
  ModeDefinition,
  Parameters,
} from '../define/index.js';
import { LOCK_SIZE, lockConstants, lockInputs, lockModes, lockSignals } from './shared/lock.js';
import { lockCheck, lockParameters } from './shared/lock-parameters.js';
import { circle, number } from './shared/parameters.js';

const DOWN = LOCK_SIZE;
const BASE = LOCK_SIZE + 1;
const SWING = LOCK_SIZE + 2;
const CAP = LOCK_SIZE + 3;
const SPRING = LOCK_SIZE + 4;
const FRICTION = LOCK_SIZE + 5;
const JACK = LOCK_SIZE + 6;
const AMBIENT = LOCK_SIZE + 7;
const ARM = LOCK_SIZE + 8;
const PAST = LOCK_SIZE + 9;
const LINKS = LOCK_SIZE + 10;
const STRAIGHT = LOCK_SIZE + 11;

const LEG = 0;
const PUSH = 1;
const SIDE_LOAD = 1;
const ENGAGED = 1;

/** Fold (as z) beyond which the lever no longer grows, short of fully folded at 2. */
const FOLDED = 1.95;
/** Keeps a lever's arm and a cap above zero. */
const LEAST = 1e-6;

/** z = 1 - cos(theta): 0 straight, 2 folded flat. */
const fold = (d: GuardFrame): number =>
  d.k[BASE] + d.k[SWING] * Math.cos(d.k[DOWN] - d.travel(LEG));

/** Moment at the knee left before it folds, N m. */
const hold = (d: GuardFrame): number => {
  const { k } = d;
  return k[SPRING] + k[FRICTION] + (d.input(SIDE_LOAD) / k[ARM]) * k[PAST];
};

/** Above zero when the knee goes over centre and stays there, the leg being home. */
const carries = (d: GuardFrame): number => {
  const { k } = d;
  const push = Math.max(0, d.pressure(PUSH) - k[AMBIENT]) * k[JACK];
  return Math.min(k[SPRING] + push - k[FRICTION], hold(d)) / (1 + k[SPRING] + k[FRICTION]);
};

/** Modes of a lock, which the knee must carry over centre. */
function modes(): Readonly<Record<string, ModeDefinition>> {
  const plain = lockModes('high');
  const reads = ['leg', 'release', 'cable', 'push', 'sideLoad'];
  const { open, engaged, 'dropping in': slow } = plain;
  return {
    ...plain,
    open: {
      ...open,
      guards: open.guards?.map((g) => ({
        ...g,
        when: (d) => Math.min(g.when(d), carries(d)),
        cause: 'the leg is home and the knee goes over centre',
        reads,
      })),
    },
    engaged: {
      ...engaged,
      guards: [
        ...(engaged.guards ?? []),
        {
          to: 'open',
          when: (d) => -hold(d),
          cause: 'the side load folds the knee, which is not over centre',
          reads: ['sideLoad'],
        },
      ],
    },
    'dropping in': {
      ...slow,
      guards: [
        ...(slow.guards ?? []),
        { to: 'open', when: (d) => -carries(d), cause: 'the knee does not go over centre', reads },
      ],
    },
  };
}

function equations(d: Frame): void {
  const k = d.k;
  const phi = k[DOWN] - d.travel(LEG);
  const z = k[BASE] + k[SWING] * Math.cos(phi);
  const slope = k[SWING] * Math.sin(phi);
  const at = z < k[CAP] ? k[CAP] : z > FOLDED ? FOLDED : z;
  const square = at * (2 - at);
  const bend = (at - 1) / (square * Math.sqrt(square));
  const byFold = 1 / Math.sqrt(square) + bend * (z - at);
  const lever = byFold * slope;
  const leverSlope = bend * slope * slope - byFold * k[SWING] * Math.cos(phi);
  const rub = lever < 0 ? -k[FRICTION] : k[FRICTION];
  d.force(0, d.input(SIDE_LOAD) - k[SPRING] * lever);
  d.forceAlso(0, 0, -k[SPRING] * leverSlope);
  d.friction(0, rub * lever);
  d.frictionAlso(0, 0, rub * leverSlope);
}

const size = 'no default: from the drawing, or measured between the bolts';

export const overCentreBrace: DeviceDefinition = {
  kind: 'over-centre-brace',
  title: 'Over-centre brace',
  summary:
    'Folding brace that locks the leg down when its knee passes centre, by its spring or by pressure; take the plain downlock where the spring does not matter.',
  source:
    'law of cosines and virtual work of a two-bar toggle (engineering mechanics textbooks); window, play and release: common practice, no source',
  role: 'downlock',
  parameters: {
    ...lockParameters(0, 'legs count their angle from down'),
    upper: { title: 'upper link', quantity: 'length', range: [0.05, 2], why: size },
    lower: { title: 'lower link', quantity: 'length', range: [0.05, 2], why: size },
    structure: {
      title: 'leg pivot to upper end on the structure',
      quantity: 'length',
      range: [0.05, 3],
      why: size,
    },
    onLeg: {
      title: 'leg pivot to lower end on the leg',
      quantity: 'length',
      range: [0.05, 3],
      why: size,
    },
    overCentre: {
      title: 'knee past centre, down',
      quantity: 'length',
      range: [-0.02, 0.03],
      default: 0.004,
      why: 'some millimetres against its stop, read with a straightedge; short of centre (negative) it holds by spring and friction alone; common practice, no source',
    },
    spring: {
      title: 'spring force at the knee',
      quantity: 'force',
      range: [0, 20_000],
      default: 250,
      why: 'several times what the knee rubs, by spring scale; common practice, no source',
    },
    arm: {
      title: 'arm of spring and push jack about the knee',
      quantity: 'length',
      range: [0.005, 0.3],
      default: 0.04,
      why: 'a lug beside the knee; common practice, no source',
    },
    strength: {
      title: 'share of the spring force that is left',
      quantity: 'ratio',
      range: [0, 1],
      default: 1,
      why: '1 when fresh; a tired or parted spring no longer carries the knee over in a free fall',
    },
    friction: {
      title: 'friction moment at the knee',
      quantity: 'moment',
      range: [0, 200],
      default: 2,
      why: 'three greased pins; common practice, no source',
    },
    pushBore: {
      title: 'bore of the push jack',
      quantity: 'length',
      range: [0.004, 0.1],
      default: 0.016,
      why: 'pushes the knee over while the push port has pressure; common practice, no source',
    },
  },
  ports: {
    release: { title: 'release', volume: 2e-6, optional: true },
    push: { title: 'push over centre', volume: 2e-6, optional: true },
  },
  links: { leg: { title: 'leg', shape: 'plain' } },
  inputs: {
    ...lockInputs,
    sideLoad: { title: 'side load on the leg, folding the brace', quantity: 'moment', initial: 0 },
  },
  forces: { toggle: { link: 'leg', also: ['leg'] } },
  energy: (d) => {
    const z = fold(d);
    const at = Math.min(Math.max(z, d.k[CAP]), FOLDED);
    const square = at * (2 - at);
    const rest = z - at;
    const bend = (at - 1) / square ** 1.5;
    return d.k[SPRING] * (Math.acos(1 - at) + rest / Math.sqrt(square) + 0.5 * bend * rest * rest);
  },
  readings: {
    overCentre: {
      title: 'knee past centre',
      quantity: 'length',
      value: (d) => {
        const { k } = d;
        if (d.mode === ENGAGED) return k[PAST];
        const z = Math.min(Math.max(fold(d), 0), 2);
        const c = Math.sqrt(Math.max(k[STRAIGHT] ** 2 - 2 * k[LINKS] * z, LEAST));
        return (-k[LINKS] * Math.sqrt(z * (2 - z))) / c;
      },
    },
    hold: { title: 'moment at the knee before it folds', quantity: 'moment', value: hold },
  },
  signals: lockSignals,
  modes: modes(),
  check: (p) => {
    const h = number(p, 'overCentre');
    const c = ends(number(p, 'upper'), number(p, 'lower'), h);
    const [f, m] = [number(p, 'structure'), number(p, 'onLeg')];
    return [
      ...(lockCheck?.(p) ?? []),
      ...(c < f + m && c > Math.abs(f - m)
        ? []
        : [
            {
              parameter: 'upper',
              message:
                'with the lower link does not fit between structure and leg: stretched out they must be shorter than both distances from the leg pivot together, and longer than their difference',
            },
          ]),
    ];
  },
  prepare: (p, s) => {
    const k = new Float64Array(LOCK_SIZE + 12);
    k.set(lockConstants(p, s, -1));
    const [a, b] = [number(p, 'upper'), number(p, 'lower')];
    const [f, m] = [number(p, 'structure'), number(p, 'onLeg')];
    const c = ends(a, b, number(p, 'overCentre'));
    const down = spread(f, m, c);
    const arm = number(p, 'arm');
    k[DOWN] = down + number(p, 'at');
    k[BASE] = ((a + b) ** 2 - f * f - m * m) / (2 * a * b);
    k[SWING] = (f * m) / (a * b);
    k[CAP] = Math.min(1, Math.max(1e-3, k[BASE] + k[SWING] * Math.cos(down - number(p, 'window'))));
    k[SPRING] = number(p, 'strength') * number(p, 'spring') * arm;
    k[FRICTION] = number(p, 'friction');
    k[JACK] = circle(number(p, 'pushBore')) * arm;
    k[AMBIENT] = s.ambient;
    k[ARM] = Math.max(LEAST, (f * m * Math.sin(down)) / c);
    k[PAST] = number(p, 'overCentre');
    k[LINKS] = a * b;
    k[STRAIGHT] = a + b;
    return k;
  },
  equations,
  symbol: { name: 'brace', size: [6, 4], ports: { release: [-2, -2], push: [2, -2] } },
};

/** Distance between the ends of two links whose knee stands h off the line between them, m. */
function ends(a: number, b: number, h: number): number {
  return Math.sqrt(a * a - h * h) + Math.sqrt(b * b - h * h);
}

/** Angle at the leg pivot between two sides of a triangle with the third c opposite, rad. */
function spread(f: number, m: number, c: number): number {
  return Math.acos((f * f + m * m - c * c) / (2 * f * m));
}

/** A brace's bars, for drawings: lengths in m, `upperAt` is the angle of the leg at which it would point at the upper end. */
export interface BraceBars {
  readonly upper: number;
  readonly lower: number;
  readonly structure: number;
  readonly onLeg: number;
  readonly upperAt: number;
}

export function braceBars(p: Parameters): BraceBars {
  const [upper, lower] = [number(p, 'upper'), number(p, 'lower')];
  const [structure, onLeg] = [number(p, 'structure'), number(p, 'onLeg')];
  const down = spread(structure, onLeg, ends(upper, lower, number(p, 'overCentre')));
  return { upper, lower, structure, onLeg, upperAt: down + number(p, 'at') };
}
