/**
 * A wheel-well door on a fore-and-aft hinge: one coordinate from closed (0) to open (travel),
 * opening downwards.
 *
 * The panel points along f(q) = h cos(q - slope) - z sin(q - slope) from its hinge, h towards
 * the free edge. Static moment about the hinge, positive towards open:
 *   M(q) = mass g cog cos(pitch) cos(q - slope)  +  sealMoment (1 - q / sealAngle)^3  for q < sealAngle
 * The seal's cubic starts with zero slope and zero curvature, so that the moment is smooth
 * where the seal first touches. Its work is sealMoment sealAngle / 4.
 *
 * A wind across the aircraft presses the panel as a flat plate, with the part of it that is square to
 * the panel, at half its chord.
 *
 * Source: statics of a hinged panel (any text on engineering mechanics); hinge moment
 * coefficient C_h = H / (q S c) (any text on aerodynamics); the seal's law is common practice, no source.
 */
import type { MechanismDefinition, Parameters, Placement, Point3 } from '../define/index.js';
import { inertiaFits, placed, swinging } from './body.js';
import { add, GRAVITY, num, sample, times, windFrom } from './statics.js';
import { rubbing } from './tight-spot.js';

const DEG = Math.PI / 180;

/** From the hinge to the free edge with the panel level, unit vector. */
function reach(p: Parameters): Point3 {
  const right = num(p, 'hingeRight') < 0 ? -1 : 1;
  return { x: 0, y: p.freeEdge === 'outboard' ? right : -right, z: 0 };
}

/** Force coefficient of a flat plate square to the wind (Hoerner, Fluid-Dynamic Drag, 3-16; from memory). */
const FLAT_PLATE = 1.17;

const why = 'common practice, no source; the figure is the aircraft’s own';

export const door: MechanismDefinition = {
  kind: 'door',
  title: 'Door',
  summary:
    'A wheel-well door that hangs on a fore-and-aft hinge and squeezes a seal over its last degrees. Drive it with its own actuator.',
  source:
    'Statics of a hinged panel (engineering mechanics textbooks); hinge moment coefficient (aerodynamics textbooks).',
  role: 'door',
  ends: ['closed', 'open'],
  parameters: {
    travel: {
      title: 'Travel',
      quantity: 'angle',
      range: [10 * DEG, 170 * DEG],
      why: 'From flush to fully open; 80 to 110 degrees clears most wheels. Common practice, no source.',
    },
    overTravel: {
      title: 'Travel beyond that',
      quantity: 'angle',
      range: [0, 60 * DEG],
      default: 0,
      why: 'None while the restraint (stop, stay or cable) holds; with it out or broken the door swings on until it meets something.',
    },
    freeEdge: {
      type: 'choice',
      title: 'Free edge lies',
      choices: ['inboard', 'outboard'],
      default: 'inboard',
      why: 'On which side of its hinge the closed panel lies.',
    },
    slope: {
      title: 'Slope when closed',
      quantity: 'angle',
      range: [-60 * DEG, 60 * DEG],
      default: 0,
      why: 'Free edge above the hinge counts positive; a level skin has none.',
    },
    mass: { title: 'Mass', quantity: 'mass', range: [0.1, 300], why },
    cog: {
      title: 'Centre of gravity from hinge',
      quantity: 'length',
      range: [0.005, 2],
      why: 'About half the chord for an even panel.',
    },
    inertia: {
      title: 'Moment of inertia about the hinge',
      quantity: 'inertia',
      range: [0.001, 500],
      why: 'A third of mass times chord squared for an even panel.',
    },
    chord: { title: 'Hinge to free edge', quantity: 'length', range: [0.02, 3], why },
    span: { title: 'Length along the hinge', quantity: 'length', range: [0.02, 6], why },
    sealMoment: {
      title: 'Seal moment, fully closed',
      quantity: 'moment',
      range: [0, 5000],
      default: 0,
      why: 'A rubber seal takes about 1 N per mm of its length when squeezed (from memory).',
    },
    sealAngle: {
      title: 'Seal touches from',
      quantity: 'angle',
      range: [0.5 * DEG, 30 * DEG],
      default: 5 * DEG,
      why: 'The free edge moves about 90 mm per metre of chord over 5 degrees: one seal height.',
    },
    hingeMoment: {
      title: 'Hinge moment coefficient, open',
      quantity: 'ratio',
      range: [-3, 3],
      default: 0,
      why: 'Towards closed when positive; side-hung doors lie along the wind, so little. No wind in a hangar.',
    },
    hingePlay: {
      title: 'Hinge play: panel hangs low by',
      quantity: 'length',
      range: [0, 0.05],
      default: 0,
      why: 'None in a tight hinge; worn pins let the panel down, which takes clearance but no force.',
    },
    ...swinging({
      what: 'hinge',
      friction: 1,
      frictionMost: 1000,
      frictionWhy: 'Greased piano or goose-neck hinge, from memory.',
      damping: 0.5,
      dampingMost: 2000,
      dampingWhy: 'Air and grease; small against the oil.',
      reboundWhy: 'Sheet structure and rubber give little back. Common practice, no source.',
    }),
    ...placed(
      'hinge',
      'Hinge',
      'front end ',
      'Closed unless the aircraft stands with its doors open.',
    ),
  },
  check: (p) => {
    const found = inertiaFits(p);
    if (num(p, 'cog') > num(p, 'chord'))
      found.push({ parameter: 'cog', message: 'lies beyond the free edge' });
    if (num(p, 'sealAngle') > num(p, 'travel'))
      found.push({ parameter: 'sealAngle', message: 'is more than the travel' });
    if (num(p, 'initial') > num(p, 'travel') + num(p, 'overTravel'))
      found.push({ parameter: 'initial', message: 'lies beyond the travel' });
    return found;
  },
  coordinate: (p) => {
    const high = num(p, 'travel') + num(p, 'overTravel');
    const slope = num(p, 'slope');
    const weight = num(p, 'mass') * GRAVITY * num(p, 'cog') * Math.cos(num(p, 'pitch'));
    const seal = num(p, 'sealMoment');
    const reachOfSeal = num(p, 'sealAngle');
    const air = num(p, 'hingeMoment') * num(p, 'chord') ** 2 * num(p, 'span');
    return {
      low: 0,
      high,
      inertia: sample(0, high, () => num(p, 'inertia')),
      moment: sample(
        0,
        high,
        (q) => weight * Math.cos(q - slope) + seal * Math.max(0, 1 - q / reachOfSeal) ** 3,
      ),
      airload: (sideslip) => {
        // Square to the panel, positive towards open: its free edge moves that way.
        const across = windFrom(sideslip).y * reach(p).y;
        return sample(0, high, (q) => {
          const square = -across * Math.sin(q - slope);
          const crossed = 0.5 * FLAT_PLATE * num(p, 'chord') ** 2 * num(p, 'span');
          return crossed * square * Math.abs(square) - air * Math.sin(q) * Math.cos(sideslip) ** 2;
        });
      },
      damping: num(p, 'damping'),
      friction: rubbing(p, high),
      staticRatio: num(p, 'staticRatio'),
      restitution: num(p, 'restitution'),
      initial: num(p, 'initial'),
    };
  },
  outline: (p) => {
    const h = reach(p);
    const front: Point3 = {
      x: num(p, 'hingeAft'),
      y: num(p, 'hingeRight'),
      z: num(p, 'hingeUp') - num(p, 'hingePlay'),
    };
    const rear = add(front, { x: num(p, 'span'), y: 0, z: 0 });
    return {
      shape: 'door',
      at: (angle): Placement => {
        const t = angle - num(p, 'slope');
        const panel = times(
          num(p, 'chord'),
          add(times(Math.cos(t), h), { x: 0, y: 0, z: -Math.sin(t) }),
        );
        return { line: [front, rear], edge: [add(front, panel), add(rear, panel)] };
      },
    };
  },
  symbol: { name: 'door', size: [4, 3], ports: {} },
};
