/**
 * What jacks share beside their oil: friction of the seals and of a galled bore, viscous drag, and
 * stops of the jack's own where it bottoms before the mechanism does, or is drawn past its stroke.
 * The rod is link 0 and the force on it force 0.
 *
 * Friction of elastomer seals as a constant part and one in proportion to the pressure force:
 * common practice, no source. A stop is a spring, stiff and taking hold smoothly, with a dashpot.
 */
import type { Frame, GuardFrame, ParameterDefinitions, Parameters } from '../../define/index.js';
import { circle, number } from './parameters.js';
import { rise, riseSlope } from './smooth.js';

/** Numbers that rubbing and stops need in `k`. */
export const RUB_SIZE = 8;

const SEALS = 0;
const PRESSURE_FRICTION = 1;
const DRAG = 2;
const GALLING = 3;
const GALLED_AT = 4;
const GALLED_WIDTH = 5;
const LEAST_TRAVEL = 6;
const MOST_TRAVEL = 7;

/** Rounds the corner of the pressure-dependent friction at zero, Pa. */
const ROUND = 1e5;
/** Speed at which the parameter `drag` holds, m/s. */
const DRAG_SPEED = 0.1;
/** A jack on its own stop: stiffness of head, rod and brackets, N/m, and their damping, N s/m; common practice, no source. */
const STOP = 3e7;
const STOP_DAMPING = 1e5;
/** Travel over which a stop takes hold, m: piston and head do not meet all round at once. */
const STOP_BAND = 2e-4;

/** No step may stride over half a galled place at this speed, m/s, nor far into it: faster than gear moves. */
const MOST_SPEED = 0.3;

export const jackSize: ParameterDefinitions = {
  bore: {
    title: 'bore',
    quantity: 'length',
    range: [0.008, 0.3],
    why: "no default: the actuator's drawing",
  },
  rodDiameter: {
    title: 'rod diameter',
    quantity: 'length',
    range: [0.003, 0.25],
    why: "no default: the actuator's drawing",
  },
  stroke: {
    title: 'stroke',
    quantity: 'length',
    range: [0.01, 2],
    why: "no default: the actuator's drawing; at least the travel of its link",
  },
};

export const jackFriction: ParameterDefinitions = {
  seals: {
    title: 'seal friction without pressure',
    quantity: 'force',
    range: [0, 5000],
    default: 60,
    why: 'elastomer rings on a bore of some 40 mm; common practice, no source',
  },
  pressureFriction: {
    title: 'seal friction as a share of the pressure force across the piston',
    quantity: 'ratio',
    range: [0, 0.5],
    default: 0.02,
    why: 'jacks in good order lose two to five per cent; common practice, no source',
  },
  drag: {
    title: 'viscous drag at 0.1 m/s',
    quantity: 'force',
    range: [0, 5000],
    default: 20,
    why: 'oil film under the seals, small beside their friction; common practice, no source',
  },
};

/** What wears or is set wrong; the defaults change nothing. */
export const jackWear: ParameterDefinitions = {
  galling: {
    title: 'friction added where the bore is galled',
    quantity: 'force',
    range: [0, 1e5],
    default: 0,
    why: 'none in a sound bore; more than the jack can push is a hard stop',
  },
  galledAt: {
    title: 'travel at the middle of the galled place',
    quantity: 'length',
    range: [0, 2],
    default: 0.1,
    why: 'counts only where there is galling; about the middle of a usual stroke',
  },
  galledWidth: {
    title: 'half length of the galled place',
    quantity: 'length',
    range: [1e-3, 0.5],
    default: 0.01,
    why: 'counts only where there is galling; a patch of a few cm; common practice, no source',
  },
  shortRetracted: {
    title: 'how much before its end it bottoms when retracting',
    quantity: 'length',
    range: [0, 0.2],
    default: 0,
    why: "none: a rightly set jack leaves the stop to the mechanism; counts from the jack's own closed length",
  },
  shortExtended: {
    title: 'how much before its end it bottoms when extending',
    quantity: 'length',
    range: [0, 0.2],
    default: 0,
    why: "none: a rightly set jack leaves the stop to the mechanism; counts from the jack's own stroke, whatever it has in hand",
  },
};

export const headArea = (p: Parameters): number => circle(number(p, 'bore'));
export const rodArea = (p: Parameters): number => headArea(p) - circle(number(p, 'rodDiameter'));

/** Findings about bore, rod and stops. */
export const jackFindings = (
  p: Parameters,
): { readonly parameter: string; readonly message: string }[] => [
  ...(number(p, 'rodDiameter') < number(p, 'bore')
    ? []
    : [{ parameter: 'rodDiameter', message: 'must be below the bore' }]),
  ...(number(p, 'shortRetracted') + number(p, 'shortExtended') <= 0.5 * number(p, 'stroke')
    ? []
    : [{ parameter: 'shortExtended', message: 'bottoms before half the stroke is done' }]),
];

/** Writes the constants of rubbing and stops from `k[i]`; `area` bears the pressure across the piston, m2. */
export function writeRub(k: Float64Array, i: number, p: Parameters, area: number): void {
  k[i + SEALS] = number(p, 'seals');
  k[i + PRESSURE_FRICTION] = number(p, 'pressureFriction') * area;
  k[i + DRAG] = number(p, 'drag') / DRAG_SPEED;
  k[i + GALLING] = number(p, 'galling');
  k[i + GALLED_AT] = number(p, 'galledAt');
  k[i + GALLED_WIDTH] = 1 / number(p, 'galledWidth');
  // Set right, it has half its dead volume in hand beyond either end: no rounding at the very end
  // meets a stop, but what is drawn past its travel (a door without restraint) does.
  const [early, late] = [number(p, 'shortRetracted'), number(p, 'shortExtended')];
  const spare = 0.5 * number(p, 'deadVolume');
  k[i + LEAST_TRAVEL] = early > 0 ? early : -spare / headArea(p);
  k[i + MOST_TRAVEL] = number(p, 'stroke') + (late > 0 ? -late : spare / rodArea(p));
}

/** Friction and drag of the rod; `ports` of the two sides of the piston, in the order of the force's `also`, whose entry `rod` is the travel. */
export function rub(d: Frame, i: number, side: number, other: number, rod: number): void {
  const { k } = d;
  const across = d.pressure(side) - d.pressure(other);
  const size = Math.sqrt(across * across + ROUND * ROUND);
  const squeeze = (k[i + PRESSURE_FRICTION] * across) / size;
  const even = k[i + SEALS] + k[i + PRESSURE_FRICTION] * (size - ROUND);
  d.frictionAlso(0, 0, squeeze);
  d.frictionAlso(0, 1, -squeeze);
  if (k[i + GALLING] > 0) {
    const x = (d.travel(0) - k[i + GALLED_AT]) * k[i + GALLED_WIDTH];
    const off = x < 0 ? 1 + x : 1 - x;
    d.friction(0, even + k[i + GALLING] * rise(off));
    const slope = k[i + GALLING] * riseSlope(off) * k[i + GALLED_WIDTH];
    d.frictionAlso(0, rod, x < 0 ? slope : -slope);
  } else {
    d.friction(0, even);
  }
  d.damping(0, k[i + DRAG]);
}

/** Longest step, s: steady motion would let the solver stride over a galled place unseen. What rests strides over nothing. */
export function rubStep(d: GuardFrame, i: number): number {
  if (!(d.k[i + GALLING] > 0) || d.travelRate(0) === 0) return Infinity;
  const width = 1 / d.k[i + GALLED_WIDTH];
  const off = Math.abs(d.travel(0) - d.k[i + GALLED_AT]) - width;
  return Math.max(0.5 * width, off) / MOST_SPEED;
}

/** How far the rod is into a stop of the jack's own, m: positive retracted, negative extended, 0 clear. */
function into(d: GuardFrame, i: number): number {
  const x = d.travel(0);
  const least = d.k[i + LEAST_TRAVEL];
  const most = d.k[i + MOST_TRAVEL];
  return x < least ? least - x : x > most ? most - x : 0;
}

/** Force of the jack's own stops along the rod, N; 0 when clear of them. */
export function stopForce(d: GuardFrame, i: number): number {
  const x = into(d, i);
  if (x === 0) return 0;
  const deep = Math.abs(x);
  if (deep < STOP_BAND) return (0.5 * STOP * x * deep) / STOP_BAND;
  return STOP * (x - Math.sign(x) * 0.5 * STOP_BAND);
}

/** Stiffness of the stop that is met, N/m, and its damping beside the drag that {@link rub} has set. */
export function stopStiffness(d: Frame, i: number): number {
  const x = into(d, i);
  if (x === 0) return 0;
  const share = Math.min(Math.abs(x) / STOP_BAND, 1);
  d.damping(0, d.k[i + DRAG] + STOP_DAMPING * share);
  return STOP * share;
}

/** Energy in the stop that is met, J. */
export function stopEnergy(d: GuardFrame, i: number): number {
  const deep = Math.abs(into(d, i));
  if (deep < STOP_BAND) return (STOP * deep ** 3) / (6 * STOP_BAND);
  return STOP * (0.5 * (deep - 0.5 * STOP_BAND) ** 2 + STOP_BAND ** 2 / 24);
}
