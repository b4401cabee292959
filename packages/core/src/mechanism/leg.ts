/**
 * A retracting leg: wheel, shock strut and pivot, one coordinate from down (0) to up (travel).
 *
 * Leg direction e(q) swings in a vertical plane from rake + q = 0 (plumb) towards the side it
 * retracts to. The wheel hangs at w(q) = e (length - s(q)) + a(q) offset, with s the
 * shortening that the strut's link enforces and a the axle, turned about the leg's own axis in
 * proportion to the angle (bevel gears). Then
 *   potential energy   U(q) = -g d.(mass cog e) - g d.(slidingMass (w - e length)) + E_gas(s) + E_assist(q)
 *   static moment      M(q) = -dU/dq
 *   generalised inertia I(q) = inertia + slidingMass (|w'|^2 - length^2) + spinInertia twist'^2
 * with d the direction of weight in the aircraft's axes, so that the attitude on the jacks counts.
 * Gas spring: polytropic, F(s) = area (p0 (V0 / (V0 - area s))^n - ambient).
 *
 * Over 250 lines because of its long table of parameters.
 * Source: virtual work and potential energy, kinetic energy of a body with one coordinate (any
 * text on engineering mechanics); polytropic change of state (any text on thermodynamics).
 * Also right for a tail or nose leg: leave twist, shortening and gas at zero.
 */
import type { MechanismDefinition, Parameters, Placement, Point3, Shape } from '../define/index.js';
import { inertiaFits, placed, swinging } from './body.js';
import { gasForce, mostShortened, poses } from './pose.js';
import { add, curve, dot, downward, GRAVITY, num, sample, times, windFrom } from './statics.js';
import { lying, rampLoad, rampParameters } from './ramp.js';
import { rubbing } from './tight-spot.js';

const DEG = Math.PI / 180;

/** Friction with that of the ramp added, where the leg lies on one. */
function onRamp(p: Parameters, rub: number | Shape, high: number): number | Shape {
  if (rampLoad(p, high).force === 0) return rub;
  const even = typeof rub === 'number' ? undefined : curve(rub);
  const own = (angle: number): number => even?.(angle).value ?? (rub as number);
  return sample(0, high, (angle) => own(angle) + rampLoad(p, angle).friction);
}

const why = 'common practice, no source; the figure is the aircraft’s own';

export const leg: MechanismDefinition = {
  kind: 'leg',
  title: 'Leg',
  summary:
    'A leg that swings about one pivot, may turn about its own axis and may be shortened by a link as it comes up. Use it for main, nose and tail legs.',
  source:
    'Virtual work and kinetic energy of a body with one coordinate (engineering mechanics textbooks); polytropic gas spring (thermodynamics textbooks).',
  role: 'leg',
  ends: ['down', 'up'],
  parameters: {
    travel: {
      title: 'Travel',
      quantity: 'angle',
      range: [10 * DEG, 170 * DEG],
      why: 'From down lock to up lock; most legs turn through 80 to 110 degrees. Common practice, no source.',
    },
    retract: {
      type: 'choice',
      title: 'Retracts',
      choices: ['aft', 'forward', 'inboard', 'outboard'],
      why: 'Which way the wheel goes on retraction.',
    },
    rake: {
      title: 'Lean when down',
      quantity: 'angle',
      range: [-40 * DEG, 40 * DEG],
      default: 0,
      why: 'From plumb, positive towards the retracted side; plumb unless drawn otherwise.',
    },
    mass: { title: 'Moving mass', quantity: 'mass', range: [0.5, 2000], why },
    cog: {
      title: 'Centre of gravity from pivot',
      quantity: 'length',
      range: [0.01, 4],
      why: 'Leg fully extended, along the leg. ' + why,
    },
    inertia: {
      title: 'Moment of inertia about the pivot',
      quantity: 'inertia',
      range: [0.01, 10_000],
      why: 'Leg fully extended; not less than mass times the square of the centre of gravity distance.',
    },
    length: { title: 'Pivot to axle, extended', quantity: 'length', range: [0.05, 5], why },
    slidingMass: {
      title: 'Mass that slides with the strut',
      quantity: 'mass',
      range: [0, 1500],
      default: 0,
      why: 'Wheel, tyre, brake and sliding tube, taken at the wheel; matters only where the leg turns or shortens.',
    },
    shortening: {
      type: 'shape',
      title: 'Shortening against angle',
      of: 'angle',
      variable: 'angle',
      gives: 'length',
      range: [0, 1],
      default: { x: [0, Math.PI], y: [0, 0] },
      why: 'What the shortening link enforces; zero for a leg without one.',
    },
    linkShare: {
      title: 'Share of the shortening that the link gives',
      quantity: 'ratio',
      range: [0, 1],
      default: 1,
      why: '1 for a whole link; a broken or disconnected one gives none, and the wheel goes up that much further out.',
    },
    stuckShort: {
      title: 'Strut hangs short of full extension by',
      quantity: 'length',
      range: [0, 0.5],
      default: 0,
      why: 'None when serviced and free; a strut that sticks or lacks gas does not come out all the way.',
    },
    gasPressure: {
      title: 'Strut gas, fully extended',
      quantity: 'gauge-pressure',
      range: [0, 20e6],
      default: 0,
      why: 'Charge of the shock strut, hanging free; works against the shortening link.',
    },
    gasArea: {
      title: 'Strut gas area',
      quantity: 'area',
      range: [0, 0.05],
      default: 0,
      why: 'Area the gas pushes the strut out with.',
    },
    gasVolume: {
      title: 'Strut gas volume, fully extended',
      quantity: 'volume',
      range: [1e-6, 0.05],
      default: 1e-3,
      why: 'Gas left above the oil with the strut hanging free.',
    },
    gasIndex: {
      title: 'Polytropic index',
      quantity: 'ratio',
      range: [1, 1.4],
      default: 1.1,
      why: '1 for slow, 1.4 for fast changes; 1.1 is usual where seconds pass. From memory of strut design practice.',
    },
    ...rampParameters,
    twist: {
      title: 'Turn about its own axis',
      quantity: 'angle',
      range: [-190 * DEG, 190 * DEG],
      default: 0,
      why: 'Over the whole travel, geared to the angle; positive turns the outer face of the wheel towards the third axis (up, on a leg that retracts aft).',
    },
    misaligned: {
      title: 'Wheel out of line',
      quantity: 'angle',
      range: [-60 * DEG, 60 * DEG],
      default: 0,
      why: 'About the leg’s own axis, counted like its turn; none when steering or castor is centred by its cam.',
    },
    spinInertia: {
      title: 'Inertia of the turning part about the leg',
      quantity: 'inertia',
      range: [0, 500],
      default: 0,
      why: 'Wheel, brake and strut about the leg’s own axis.',
    },
    wheelOffset: {
      title: 'Wheel outboard of the leg',
      quantity: 'length',
      range: [-1, 1],
      default: 0,
      why: 'Along the axle, for a wheel on one side of the leg.',
    },
    tyreRadius: {
      title: 'Tyre outside radius',
      quantity: 'length',
      range: [0.02, 1],
      why: 'Grown tyre, not the new one, if clearances matter.',
    },
    tyreWidth: {
      title: 'Tyre width',
      quantity: 'length',
      range: [0.01, 0.8],
      why: 'Grown tyre, not the new one, if clearances matter.',
    },
    assistMoment: {
      title: 'Assist spring, moment at down',
      quantity: 'moment',
      range: [0, 20_000],
      default: 0,
      why: 'Bungee or spring that pulls the leg down; none unless drawn.',
    },
    assistRate: {
      title: 'Assist spring, rise with angle',
      quantity: 'angular-stiffness',
      range: [-10_000, 10_000],
      default: 0,
      why: 'How the moment towards down changes as the leg comes up.',
    },
    dragArea: {
      title: 'Drag area, leg down',
      quantity: 'area',
      range: [0, 2],
      default: 0,
      why: 'Drag coefficient times frontal area; no wind in a hangar.',
    },
    dragArm: {
      title: 'Drag, distance from pivot',
      quantity: 'length',
      range: [0, 4],
      default: 0,
      why: 'Where that drag acts.',
    },
    ...swinging({
      what: 'pivot',
      friction: 5,
      frictionMost: 5000,
      frictionWhy:
        'Greased bush: friction coefficient about 0.1 times load times bush radius (from memory).',
      damping: 2,
      dampingMost: 10_000,
      dampingWhy: 'Grease and air; small against the oil.',
      reboundWhy:
        'Steel stop carried by sheet structure gives little back. Common practice, no source.',
    }),
    ...placed('pivot', 'Pivot', '', 'Down, as an aircraft comes onto the jacks.'),
  },
  check: (p) => {
    const found = inertiaFits(p);
    const most = mostShortened(p);
    if (most >= num(p, 'length'))
      found.push({ parameter: 'shortening', message: 'shortens the leg to nothing' });
    if (num(p, 'gasArea') * most >= 0.98 * num(p, 'gasVolume'))
      found.push({
        parameter: 'gasVolume',
        message: 'is used up before the strut is fully shortened',
      });
    if (num(p, 'slidingMass') > num(p, 'mass'))
      found.push({ parameter: 'slidingMass', message: 'is more than the whole moving mass' });
    if (num(p, 'initial') > num(p, 'travel'))
      found.push({ parameter: 'initial', message: 'lies beyond the travel' });
    return found;
  },
  coordinate: (p) => {
    const pose = poses(p);
    const high = num(p, 'travel');
    const d = downward(num(p, 'pitch'));
    const length = num(p, 'length');
    const sliding = num(p, 'slidingMass');
    const offset = num(p, 'wheelOffset');
    const first = num(p, 'mass') * num(p, 'cog');
    const spin = num(p, 'spinInertia') * (num(p, 'twist') / high) ** 2;
    const moment = (angle: number): number => {
      const at = pose(angle);
      const s = at.shortening;
      const weight =
        first * dot(at.alongRate, d) +
        sliding *
          (-s.slope * dot(at.along, d) -
            s.value * dot(at.alongRate, d) +
            offset * dot(at.axleRate, d));
      return (
        GRAVITY * weight -
        gasForce(p, s.value) * s.slope -
        num(p, 'assistMoment') -
        num(p, 'assistRate') * angle +
        rampLoad(p, angle).moment
      );
    };
    const inertia = (angle: number): number => {
      const at = pose(angle);
      const w = add(
        add(
          times(length - at.shortening.value, at.alongRate),
          times(-at.shortening.slope, at.along),
        ),
        times(offset, at.axleRate),
      );
      return num(p, 'inertia') + sliding * (dot(w, w) - length * length) + spin;
    };
    const drag = num(p, 'dragArea') * num(p, 'dragArm');
    return {
      low: 0,
      high,
      inertia: sample(0, high, inertia),
      moment: sample(0, high, moment),
      // Only the part of the wind square to the leg loads it (cross-flow principle for slender bodies).
      ...(drag === 0
        ? {}
        : {
            airload: (sideslip) => {
              const wind = windFrom(sideslip);
              return sample(0, high, (a) => {
                const { along, alongRate } = pose(a);
                return (
                  drag * dot(wind, alongRate) * Math.sqrt(Math.max(0, 1 - dot(wind, along) ** 2))
                );
              });
            },
          }),
      damping: num(p, 'damping'),
      friction: onRamp(p, rubbing(p, high), high),
      staticRatio: num(p, 'staticRatio'),
      restitution: num(p, 'restitution'),
      initial: num(p, 'initial'),
    };
  },
  outline: (p) => {
    const pose = poses(p);
    const shortening = lying(p);
    const pivot: Point3 = { x: num(p, 'pivotAft'), y: num(p, 'pivotRight'), z: num(p, 'pivotUp') };
    return {
      shape: 'leg',
      at: (angle): Placement => {
        const at = pose(angle);
        const foot = add(pivot, times(num(p, 'length') - shortening(angle), at.along));
        const centre = add(foot, times(num(p, 'wheelOffset'), at.axle));
        return {
          line: [pivot, foot, centre],
          tyre: { centre, axle: at.axle, radius: num(p, 'tyreRadius'), width: num(p, 'tyreWidth') },
        };
      },
    };
  },
  symbol: { name: 'leg', size: [4, 6], ports: {} },
};
