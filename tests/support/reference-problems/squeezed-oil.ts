import type { Equations } from './equations.js';
import type { ReferenceProblem } from './reference-problem.js';

/** Moment of inertia, kg m2; flow into the chamber, m3/s; what the volume comes to at a right angle, m3. */
const INERTIA = 0.005;
const FLOW = 1e-4;
const SWEPT = 2e-4;
/** Pressure per volume squeezed in, Pa/m3: 30 cm3 of oil. */
const STIFFNESS = 1.5e9 / 3e-5;
const START = 0.2;
/** The flow comes through a narrow passage from this pressure, Pa: what the piston needs takes little off it. */
const SUPPLY = 1e7;

/**
 * Oil flows steadily into a chamber behind a piston whose volume goes with the sine of the angle:
 * the oil hardly gives, so the angle is where the volume is. A light door, so what turns it takes
 * next to nothing off the flow. Angle, speed, content.
 */
export const oilBehindPiston = (bends: boolean): Equations => ({
  names: ['angle', 'speed', 'content'],
  scale: [0.01, 1, 2.5e6 / STIFFNESS],
  fast: [0, 0, 1],
  rate: (_t, [angle, speed, content], rate) => {
    const pressure = STIFFNESS * (content - SWEPT * Math.sin(angle));
    rate[0] = speed;
    rate[1] = (pressure * SWEPT * Math.cos(angle)) / INERTIA;
    rate[2] = FLOW * (1 - pressure / SUPPLY);
  },
  partials: (_t, [angle, , content]) => {
    const arm = SWEPT * Math.cos(angle);
    const pressure = STIFFNESS * (content - SWEPT * Math.sin(angle));
    const turning = (-STIFFNESS * arm * arm - pressure * SWEPT * Math.sin(angle)) / INERTIA;
    return [
      [0, 1, 0],
      [turning, 0, (STIFFNESS * arm) / INERTIA],
      [(FLOW * STIFFNESS * arm) / SUPPLY, 0, (-FLOW * STIFFNESS) / SUPPLY],
    ];
  },
  ...(bends
    ? {
        bends: {
          follower: Int32Array.of(2),
          leader: Int32Array.of(0),
          pace: Int32Array.of(1),
          at: (_bend, x) => {
            const value = SWEPT * Math.sin(x);
            return { value, slope: SWEPT * Math.cos(x), curvature: -value };
          },
        },
      }
    : {}),
});

const angleAt = (t: number): number => Math.asin(Math.sin(START) + (FLOW * t) / SWEPT);
const END = 1.5;

export const squeezedOil: ReferenceProblem = {
  name: 'oil behind a piston',
  source: 'closed form for oil that does not give: the angle whose volume is what has flowed in',
  equations: () => oilBehindPiston(true),
  start: [START, FLOW / (SWEPT * Math.cos(START)), SWEPT * Math.sin(START)],
  end: END,
  answer: [
    angleAt(END),
    FLOW / (SWEPT * Math.cos(angleAt(END))),
    SWEPT * Math.sin(START) + FLOW * END,
  ],
  tolerance: 1e-4,
  // The closed form leaves out what turns the mass: up to 600 Pa, 6e-5 of the flow.
  within: [2e-5, 2e-3, 1e-9],
};
