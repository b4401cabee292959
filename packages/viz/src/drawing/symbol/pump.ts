/** What turns power into flow: pumps, their drives, a whole power pack. Outlet at the top. */
import { body, circle, dash, line, rect, solid, thin, tip, way } from './shape.js';
import type { Drawing, Shape } from './shape.js';

/** ISO 1219-1: a circle, a filled triangle towards the outlet, two lines for the shaft. */
const turning: readonly Shape[] = [
  body(circle(0, 0, 2.4)),
  solid(tip(0, -2.4, 0, -1, 1.5)),
  line('M0,2.4V3M0,-2.4V-3'),
];
const shaft = thin('M-2.4,-0.25H-3.4M-2.4,0.25H-3.4');

export const pump: Drawing = { box: [-3.5, -3, 3, 3], shapes: [...turning, shaft] };

/** The slanting arrow says adjustable, the short one beside it that pressure does it. */
export const compensatedPump: Drawing = {
  box: [-3.5, -3, 3, 3],
  shapes: [
    ...turning,
    shaft,
    thin('M-2.2,2.3L2.1,-2.1'),
    solid('M2.6,-2.6L1.4,-2.1L2.1,-1.4Z'),
    dash('M2.3,0.8L3,2'),
  ],
};

/** Dash-dot round it: a cart of its own, not on the aircraft. */
export const groundSupply: Drawing = {
  box: [-3, -3, 3, 3],
  shapes: [...turning, dash(rect(-2.9, -2.7, 5.8, 5.4))],
};

export const handPump: Drawing = {
  box: [-3.6, -3, 3, 3],
  shapes: [...turning, line('M-2.4,0H-3.2L-3.6,-1.6'), thin('M-3.5,0.5H-2.9')],
};

/** Motor and pump for both ways, suction valves between tank and either side, a lock valve at the up port. */
export const powerPack: Drawing = {
  box: [-6, -5, 6, 5],
  shapes: [
    dash(rect(-5.8, -4.6, 11.6, 9.2)),
    body(circle(-3.3, 1.2, 1.5)),
    line(way([-4.1, 1.9], [-4.1, 0.5], [-3.3, 1.4], [-2.5, 0.5], [-2.5, 1.9])),
    thin('M-1.8,1H-0.9M-1.8,1.4H-0.9'),
    body(circle(0.6, 1.2, 1.5)),
    solid(tip(0.6, -0.3, 0, -1, 1)),
    solid(tip(0.6, 2.7, 0, 1, 1)),
    line(way([0.6, -0.3], [0.6, -1], [-3, -1], [-3, -1.7])),
    line(way([0.6, 2.7], [0.6, 3.4], [3, 3.4], [3, -5])),
    body(rect(-4, -3.5, 2, 1.8)),
    solid(circle(-3, -2.8, 0.4)),
    thin('M-3.6,-2.9L-3,-2.2L-2.4,-2.9'),
    line('M-3,-3.5V-5'),
    dash(way([3, -2.6], [-2, -2.6])),
    line('M0,5V3.4H0.6'),
  ],
};
