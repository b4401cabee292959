/**
 * Valves whose envelope of boxes stands over fixed ports and shifts as the spool does (ISO 1219-1:
 * one box for each position). Up side left, down side right; pressure and return below.
 */
import { body, circle, dash, line, rect, solid, spring, stop, thin, tip, way } from './shape.js';
import type { Drawing, Look, Shape } from './shape.js';

/** Width of a box. */
const W = 3;

type Inside = (x: number) => readonly (readonly [Look, string])[];

const up = (x: number): string => way([x, 2], [x, -1.3]);
const down = (x: number): string => way([x, -2], [x, 1.3]);

/** Pressure to the up line, down line to return. */
const parallel: Inside = (x) => [
  ['line', up(x - 1) + down(x + 1)],
  ['solid', tip(x - 1, -2, 0, -1) + tip(x + 1, 2, 0, 1)],
];
const crossed: Inside = (x) => [
  ['line', way([x - 1, 2], [x + 0.75, -1.5]) + way([x - 1, -2], [x + 0.75, 1.5])],
  ['solid', slanted(x + 1, -2, -1) + slanted(x + 1, 2, 1)],
];
/** The head of an arrow that comes slanting from the left. */
const slanted = (x: number, y: number, sense: 1 | -1): string =>
  `M${x},${y}L${x - 0.75},${y - sense * 0.6}L${x - 0.05},${y - sense * 0.9}Z`;

const shut: Inside = (x) => [
  ['line', stop(x - 1, 2) + stop(x + 1, 2) + stop(x - 1, -2) + stop(x + 1, -2)],
];
/** Pressure goes round to return, both lines shut. */
const round: Inside = (x) => [
  ['line', way([x - 1, 2], [x - 1, 0.6], [x + 1, 0.6], [x + 1, 2])],
  ['line', stop(x - 1, -2) + stop(x + 1, -2)],
];
const allJoined: Inside = (x) => [['line', `M${x - 1},2V-2M${x + 1},2V-2M${x - 1},0h2`]];
const linesToReturn: Inside = (x) => [
  ['line', stop(x - 1, 2) + way([x - 1, -2], [x - 1, 0], [x + 1, 0]) + `M${x + 1},-2V2`],
];
const through: Inside = (x) => [
  ['line', up(x)],
  ['solid', tip(x, -2, 0, -1)],
];
const closed: Inside = (x) => [['line', stop(x, 2) + stop(x, -2)]];
/** Shut one way, free the other. */
const freeBack: Inside = (x) => [
  ['line', `M${x},2V0.6M${x},-2V-0.9M${x - 0.9},-0.5L${x},0.6L${x + 0.9},-0.5`],
  ['body', circle(x, -0.3, 0.5)],
];
const bothWays: Inside = (x) => [
  ['line', way([x, 1.3], [x, -1.3])],
  ['solid', tip(x, -2, 0, -1) + tip(x, 2, 0, 1)],
];

/** Boxes side by side, the middle of the first at `first`; all shift together. */
function envelope(boxes: readonly Inside[], first: number, by: number): Shape[] {
  return boxes.flatMap((inside, i) => {
    const x = first + W * i;
    const frame: Shape = body(rect(x - W / 2, -2, W, 4), [by, 0]);
    return [frame, ...inside(x).map(([look, d]): Shape => ({ look, d, by: [by, 0] }))];
  });
}

const lever = (x: number, by: number): readonly Shape[] => [
  line(`M${x},0.6h1M${x + 0.9},1.1L${x + 1.5},-1.1`, [by, 0]),
];
const coil = (x: number, side: 1 | -1, by: number): readonly Shape[] => [
  body(rect(side > 0 ? x : x - 1.5, -0.4, 1.5, 1.8), [by, 0]),
  thin(`M${side > 0 ? x : x - 1.5},${side > 0 ? 1.4 : -0.4}l1.5,${side > 0 ? -1.8 : 1.8}`, [by, 0]),
];
const roller = (x: number, by: number): readonly Shape[] => [
  line(`M${x},0h0.7`, [by, 0]),
  body(circle(x + 1.2, 0, 0.5), [by, 0]),
];
const springAt = (x: number, by: number): Shape => thin(spring(x - 1.6, x, 0.9), [by, 0]);

/** Three boxes: up, neutral, down; -1 shifts to down, +1 to up. */
const three = (neutral: Inside, ends: readonly Shape[]): Drawing => ({
  box: [-9.2, -2, 9.2, 2],
  shapes: [...envelope([parallel, neutral, crossed], -W, W), ...ends],
});

const NEUTRAL: Readonly<Record<string, Inside>> = {
  closed: shut,
  open: allJoined,
  'lines-to-return': linesToReturn,
};

export const selector = (centre: string): Drawing =>
  three(NEUTRAL[centre] ?? shut, [...lever(4.5, W), springAt(-4.5, W)]);
export const openCentreSelector: Drawing = three(round, [...lever(4.5, W), springAt(-4.5, W)]);
export const solenoidSelector: Drawing = three(shut, [...coil(4.5, 1, W), ...coil(-4.5, -1, W)]);

/** Two boxes: at rest over the ports, worked beside it; 1 shifts the second one over them. */
const two = (rest: Inside, worked: Inside, at: number, ends: readonly Shape[]): Drawing => ({
  box: [at - 6.2, -2, at + 6.3, 2],
  shapes: [...envelope([rest, worked], at, -W), springAt(at - W / 2, -W), ...ends],
});
/** Where the worked end of two boxes is. */
const END = 1.5 * W;

export const sequenceValve: Drawing = two(freeBack, bothWays, -1, roller(END - 1, -W));
export const blowDownValve: Drawing = two(closed, through, -1, lever(END - 1, -W));
export const solenoidValve = (rest: string): Drawing =>
  rest === 'open'
    ? two(through, closed, -1, coil(END - 1, 1, -W))
    : two(closed, through, -1, coil(END - 1, 1, -W));
const dumped: Drawing = two(closed, through, -1, [solid(tip(END - 1, 0, -1, 0, 0.8), [-W, 0])]);
/** Worked by the gas at its pilot, whose line goes behind the boxes, or by hand. */
export const dumpValve: Drawing = { ...dumped, shapes: [dash('M4,0H0.4'), ...dumped.shapes] };
/** Opened, both lines and return are one. */
export const manualValve: Drawing = two(
  (x) => [['line', stop(x - 1, -2) + stop(x + 1, -2) + stop(x, 2)]],
  (x) => [['line', `M${x - 1},-2V0.3H${x + 1}V-2M${x},0.3V2`]],
  0,
  lever(END, -W),
);
