/** What holds oil or gas: reservoirs open to the air, accumulators, bottles. */
import { body, fluid, line, thin, way } from './shape.js';
import type { Drawing, Shape } from './shape.js';

/** The moving piece is the oil's level. */
const open = (half: number): readonly Shape[] => [
  fluid(`M${-half + 0.15},1.85h${2 * half - 0.3}`, [0, -3]),
  line(way([-half, -2], [-half, 2], [half, 2], [half, -2])),
];

export const reservoir: Drawing = { box: [-3, -2, 3, 2], shapes: open(3) };

/** Oil below the top of the pipe is kept for the hand pump. */
export const standpipeReservoir: Drawing = {
  box: [-4, -2, 4, 2],
  shapes: [...open(4), line('M0,2V-0.2'), thin('M-0.4,-0.2h0.8')],
};

const hull = 'M-1.8,-2.2a1.8,1.8 0 0 1 3.6,0v4.4a1.8,1.8 0 0 1 -3.6,0Z';

/** The bar that parts oil from gas rises as oil comes in. */
export const accumulator: Drawing = {
  box: [-2, -4, 2, 4],
  shapes: [
    body(hull),
    thin('M-0.7,-3.2h1.4l-0.7,1.1Z'),
    line('M-1.8,2.2h3.6', [0, -3.6]),
    line('M0,4V3.9'),
  ],
};

/** An open triangle: gas. */
export const gasBottle: Drawing = {
  box: [-2, -4, 2, 4],
  shapes: [body(hull), line('M-0.9,1.2h1.8l-0.9,1.5Z'), line('M0,4V3.9')],
};

/** What stands at a port that goes to the reservoir, drawn beside the part (ISO 1219-1 allows it anywhere). */
export const tank: readonly Shape[] = [line('M-1,-0.9V0.4H1V-0.9'), line('M0,-1V-0.1')];
