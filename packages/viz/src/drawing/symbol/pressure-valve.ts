/** Valves that pressure itself works: one box whose arrow the pressure moves into line against a spring. */
import { body, circle, dash, line, rect, solid, spring, thin, tip, way } from './shape.js';
import type { Drawing, Shape } from './shape.js';

/** From inlet below to outlet above; closed, the arrow stands beside its ports. */
const arrow: readonly Shape[] = [
  line(way([-0.8, 1.8], [-0.8, -1.2]), [0.8, 0]),
  solid(tip(-0.8, -2, 0, -1), [0.8, 0]),
];
const box = body(rect(-2, -2, 4, 4));
const pilot = dash(way([0, 2], [0, 2.6], [-2.6, 2.6], [-2.6, 0], [-2, 0]));
const loaded = thin(spring(2, 3.6, 0));

export const relief: Drawing = {
  box: [-3, -2, 3.8, 2.8],
  shapes: [box, ...arrow, pilot, loaded],
};

/** The dot: set so high that only warmth gets there. */
export const thermalRelief: Drawing = {
  box: [-3, -2, 3.8, 2.8],
  shapes: [...relief.shapes, thin(way([1.3, 1.4], [1.3, 0.2])), solid(circle(1.3, 1.2, 0.35))],
};

/** Opens the way on when its inlet is high enough; a check beside it lets oil back. */
export const pressureSequenceValve: Drawing = {
  box: [-4.4, -3, 4.2, 3],
  shapes: [
    box,
    ...arrow,
    line('M0,2V3M0,-2V-3'),
    dash(way([0, 2.6], [-2.7, 2.6], [-2.7, 0], [-2, 0])),
    loaded,
    dash('M3,-0.8V0'),
    line(way([0, 2.6], [-3.6, 2.6], [-3.6, 0.6])),
    line(way([0, -2.6], [-3.6, -2.6], [-3.6, -0.9])),
    line('M-4.3,-0.5L-3.6,0.6L-2.9,-0.5'),
    body(circle(-3.6, -0.3, 0.4)),
  ],
};

/** Feeds what matters first, right, always; the rest, above, only when there is pressure enough. */
export const priorityValve: Drawing = {
  box: [-3, -3, 3, 3],
  shapes: [
    box,
    line('M-3,0H3M0,-2V-3'),
    line(way([-0.8, 0], [-0.8, -1.2]), [0.8, 0]),
    solid(tip(-0.8, -2, 0, -1), [0.8, 0]),
    thin(spring(0.6, 1.8, 1.2)),
    dash(way([-1.8, 0], [-1.8, 1.2], [0.6, 1.2])),
    dash('M0,2V3'),
  ],
};

/** On to the system through a check; to return once there is pressure enough. */
export const unloader: Drawing = {
  box: [-3, -3, 3, 3],
  shapes: [
    body(rect(-2.6, -2.4, 5.2, 4.8)),
    line('M-3,0H0.4M1.9,0H3M1.4,-0.9L0.4,0L1.4,0.9'),
    body(circle(1.3, 0, 0.4)),
    line('M-1.4,0V1.4H-0.4'),
    line('M-0.4,1.4H0M0,1.4V3'),
    body(rect(-1, 0.9, 1.2, 1.1)),
    solid(tip(0, 1.4, 1, 0, 0.5), [0, 0.3]),
    dash(way([2.2, 0], [2.2, 1.4], [0.2, 1.4])),
  ],
};

/** The contact closes below its setting and opens above. */
export const pressureSwitch: Drawing = {
  box: [-2, -2, 2, 2],
  shapes: [
    body(rect(-2, -1.4, 4, 2.8)),
    line('M0,2V1.4'),
    solid(tip(0, 0.4, 0, -1, 0.9)),
    thin('M-1.6,-0.7H-0.7M0.7,-0.7H1.6'),
    line('M-0.7,-0.7H0.7', [0, -0.4]),
  ],
};
