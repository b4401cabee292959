/** What sits in a line: tubes, hoses, couplings, filters, restrictors and check valves. Inlet left, outlet right. */
import { body, circle, dash, line, rect, solid, thin, tip, way } from './shape.js';
import type { Drawing, Shape } from './shape.js';

/** A tube as a device of its own: the line itself between two cross marks. */
export const tube: Drawing = {
  box: [-2, -0.6, 2, 0.6],
  short: 0.5,
  shapes: [body(rect(-2, -0.35, 4, 0.7)), thin('M-2,-0.6V0.6M2,-0.6V0.6')],
};

/** Pressure waves run in it: marked where its pieces meet. */
export const segmentedTube: Drawing = {
  ...tube,
  shapes: [...tube.shapes, thin('M-1,-0.35V0.35M0,-0.35V0.35M1,-0.35V0.35')],
};

export const hose: Drawing = {
  box: [-2, -0.6, 2, 1.4],
  short: 0.5,
  shapes: [
    line('M-2,0C-1.4,1.7 1.4,1.7 2,0'),
    solid(circle(-1.9, 0, 0.3)),
    solid(circle(1.9, 0, 0.3)),
  ],
};

const throttle = (y: number): Shape =>
  line(`M-0.9,${y - 1}Q0,${y - 0.15} 0.9,${y - 1}M-0.9,${y + 1}Q0,${y + 0.15} 0.9,${y + 1}`);

export const orifice: Drawing = { box: [-2, -1.2, 2, 1.2], shapes: [line('M-2,0H2'), throttle(0)] };

/** Seat and ball; the ball lifts towards the outlet. */
const check = (x: number, y: number): readonly Shape[] => [
  line(`M${x + 0.5},${y - 0.9}L${x - 0.6},${y}L${x + 0.5},${y + 0.9}`),
  body(circle(x + 0.25, y, 0.5), [0.5, 0]),
];

export const checkValve: Drawing = {
  box: [-2, -1.1, 2, 1.1],
  shapes: [line('M-2,0H-0.6M1.3,0H2'), ...check(0, 0)],
};

/** The same for gas, told by the open triangle. */
export const gasCheckValve: Drawing = {
  box: [-2, -1.1, 2, 1.1],
  shapes: [...checkValve.shapes, thin(tip(-0.9, 0, 1, 0, 0.8))],
};

const bypassed: readonly Shape[] = [
  line('M-3,0H-2.2M2.2,0H3'),
  line(way([-0.9, 1.2], [-2.2, 1.2], [-2.2, -1.4], [-0.6, -1.4])),
  line(way([0.9, 1.2], [2.2, 1.2], [2.2, -1.4], [1.3, -1.4])),
  ...check(0, -1.4),
];

/** Free through the check, held back through the throttle. */
export const oneWayRestrictor: Drawing = {
  box: [-3, -2.4, 3, 2.3],
  shapes: [...bypassed, line('M-1,1.2H1'), throttle(1.2)],
};

/** The arrow across the throttle: it holds the flow, whatever the pressure. */
export const flowRegulator: Drawing = {
  box: [-3, -2.4, 3, 2.6],
  shapes: [...oneWayRestrictor.shapes, thin('M-1.1,2.4L0.8,0.3'), solid('M1.1,0L0.9,0.9L0.3,0.4Z')],
};

/** Past a loaded element the ball of the by-pass lifts. */
export const filter: Drawing = {
  box: [-2, -3.2, 2, 1.7],
  shapes: [
    body('M-1.6,0L0,-1.6L1.6,0L0,1.6Z'),
    dash('M0,-1.6V1.6'),
    line('M-2,0H-1.6M1.6,0H2'),
    thin(way([-1.8, 0], [-1.8, -2.3], [-0.5, -2.3])),
    thin(way([1.8, 0], [1.8, -2.3], [1, -2.3])),
    thin('M0.4,-3L-0.5,-2.3L0.4,-1.6'),
    body(circle(0.2, -2.3, 0.4), [0.4, 0]),
  ],
};

/** Two halves, each with its own check. */
export const quickDisconnect: Drawing = {
  box: [-3, -1.1, 3, 1.1],
  shapes: [
    line('M-3,0H-1.9M3,0H1.9M-1.9,0L-0.9,-0.9M-1.9,0L-0.9,0.9M1.9,0L0.9,-0.9M1.9,0L0.9,0.9'),
    body(circle(-1, 0, 0.5)),
    body(circle(1, 0, 0.5)),
    thin('M-0.2,-1V1M0.2,-1V1'),
  ],
};

/** A ball that the higher side pushes over: to the right while oil comes from the left. */
export const shuttle: Drawing = {
  box: [-3, -2, 3, 1.5],
  shapes: [
    body(rect(-2.4, -1.2, 4.8, 2.4)),
    line('M-3,0H-2.4M2.4,0H3M0,-2V-1.2'),
    line('M-2.4,-0.7L-1.8,0L-2.4,0.7M2.4,-0.7L1.8,0L2.4,0.7'),
    solid(circle(1.2, 0, 0.6), [-2.4, 0]),
  ],
};
