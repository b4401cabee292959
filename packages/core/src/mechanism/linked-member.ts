/**
 * A linked member: any further part that a leg or door takes along or that is moved by a jack of its
 * own, such as a tail unit's fairing or steering arm. One coordinate from home (0) to out (travel).
 *
 * It points along e(q) = -cos(lean + q) up + sin(lean + q) h, h horizontal the way it swings; a
 * `level` one turns about an upright axis, from aft to outboard. Static moment mass g cog e'(q).d
 * with d the direction of weight in the aircraft's axes.
 *
 * Source: statics of a hinged body (any text on engineering mechanics).
 */
import type { MechanismDefinition, Parameters, Placement, Point3 } from '../define/index.js';
import { inertiaFits, placed, swinging } from './body.js';
import { towards } from './pose.js';
import { add, cross, dot, downward, GRAVITY, num, sample, times } from './statics.js';
import { rubbing } from './tight-spot.js';

const DEG = Math.PI / 180;

const why = 'common practice, no source; the figure is the aircraft’s own';

const UP: Point3 = { x: 0, y: 0, z: 1 };
const AFT: Point3 = { x: 1, y: 0, z: 0 };

/** Unit vectors: where it points with lean and angle zero, where after a quarter turn, and its hinge. */
function axes(p: Parameters): {
  readonly rest: Point3;
  readonly turned: Point3;
  readonly hinge: Point3;
} {
  const right = num(p, 'pivotRight');
  const level = p.swings === 'level';
  const rest = level ? AFT : times(-1, UP);
  const turned = towards(level ? 'outboard' : p.swings, right);
  return { rest, turned, hinge: cross(rest, turned) };
}

export const linkedMember: MechanismDefinition = {
  kind: 'linked-member',
  title: 'Linked member',
  summary:
    'A further part with one angle, such as a tail unit’s fairing or steering arm. Let a leg drive it through a linkage, or join it by a chain.',
  source: 'Statics of a hinged body (engineering mechanics textbooks).',
  role: 'other',
  ends: ['home', 'out'],
  parameters: {
    travel: {
      title: 'Travel',
      quantity: 'angle',
      range: [DEG, 170 * DEG],
      why: 'From where it rests with the gear down to the other end. Aircraft drawing.',
    },
    swings: {
      type: 'choice',
      title: 'Swings',
      choices: ['aft', 'forward', 'inboard', 'outboard', 'level'],
      why: 'Which way its end goes from hanging plumb; level turns about an upright axis, from aft to outboard.',
    },
    lean: {
      title: 'Lean at home',
      quantity: 'angle',
      range: [-180 * DEG, 180 * DEG],
      default: 0,
      why: 'From plumb (level ones: from aft), positive the way it swings; 90 degrees lies level.',
    },
    mass: { title: 'Mass', quantity: 'mass', range: [0.01, 500], why },
    cog: {
      title: 'Centre of gravity from pivot',
      quantity: 'length',
      range: [0, 3],
      why: 'About half its length for an even part; 0 if balanced.',
    },
    inertia: {
      title: 'Moment of inertia about the pivot',
      quantity: 'inertia',
      range: [1e-4, 1000],
      why: 'A third of mass times length squared for an even part.',
    },
    length: { title: 'Pivot to tip', quantity: 'length', range: [0.02, 4], why },
    width: {
      title: 'Width along its hinge',
      quantity: 'length',
      range: [0.005, 4],
      default: 0.05,
      why: 'An arm or rod; a fairing is as wide as its drawing says.',
    },
    ...swinging({
      what: 'pivot',
      friction: 0.5,
      frictionMost: 1000,
      frictionWhy: 'A greased pin, from memory.',
      damping: 0.2,
      dampingMost: 2000,
      dampingWhy: 'Air and grease; small against what moves it.',
      reboundWhy: 'Sheet structure gives little back. Common practice, no source.',
    }),
    ...placed('pivot', 'Pivot', '', 'Home, with the gear down.'),
  },
  check: (p) => {
    const found = inertiaFits(p);
    if (num(p, 'initial') > num(p, 'travel'))
      found.push({ parameter: 'initial', message: 'lies beyond the travel' });
    return found;
  },
  coordinate: (p) => {
    const high = num(p, 'travel');
    const lean = num(p, 'lean');
    const { rest, turned } = axes(p);
    const d = downward(num(p, 'pitch'));
    const weight = num(p, 'mass') * GRAVITY * num(p, 'cog');
    return {
      low: 0,
      high,
      inertia: sample(0, high, () => num(p, 'inertia')),
      moment: sample(
        0,
        high,
        (q) => weight * (Math.cos(lean + q) * dot(turned, d) - Math.sin(lean + q) * dot(rest, d)),
      ),
      damping: num(p, 'damping'),
      friction: rubbing(p, high),
      staticRatio: num(p, 'staticRatio'),
      restitution: num(p, 'restitution'),
      initial: num(p, 'initial'),
    };
  },
  outline: (p) => {
    const { rest, turned, hinge } = axes(p);
    const pivot: Point3 = { x: num(p, 'pivotAft'), y: num(p, 'pivotRight'), z: num(p, 'pivotUp') };
    const half = times(0.5 * num(p, 'width'), hinge);
    const line = [add(pivot, half), add(pivot, times(-1, half))];
    return {
      shape: 'door',
      at: (angle): Placement => {
        const t = num(p, 'lean') + angle;
        const reach = times(
          num(p, 'length'),
          add(times(Math.cos(t), rest), times(Math.sin(t), turned)),
        );
        return { line, edge: line.map((point) => add(point, reach)) };
      },
    };
  },
  symbol: { name: 'linkage', size: [4, 3], ports: {} },
};
