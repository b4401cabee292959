/**
 * Four lands of a spool between pressure, return and two lines. +1 is up (pressure to the up line,
 * down line to return), -1 is down. Each land opens smoothly (C1) once the spool has passed its
 * overlap and leaks a little, laminar, where it is shut; a negative overlap leaves it partly open
 * in the centre.
 */
import type { FlowDefinition, Frame, Parameters } from '../../define/index.js';
import { boreLaw, leakIn, number } from './parameters.js';
import { rise, riseSlope } from './smooth.js';

const FEED_UP = 0;
const FEED_DOWN = 1;
const RETURN_UP = 2;
const RETURN_DOWN = 3;

/** Numbers the lands need in `k`: overlap and 1 / (1 - overlap) of the feeding, then of the returning lands; where the spool is held. */
export const LANDS_SIZE = 5;
const HELD = 4;

/** For a spool that is not held: outside its travel. */
const FREE = 2;

/** Laps of the feeding and the returning lands of each centre, as signs of the overlap. */
export const CENTRES: Readonly<Record<string, readonly [number, number]>> = {
  closed: [1, 1],
  open: [-1, -1],
  'lines-to-return': [1, -1],
};

/** Every land is an orifice that the spool opens, with a leak where it is shut. */
const passage: Pick<FlowDefinition, 'also' | 'law'> = {
  also: ['spool'],
  law: (p, s) => ({
    ...boreLaw(p, s, number(p, 'bore')),
    open: 0,
    leak: leakIn(s, number(p, 'leak')),
  }),
};

/** Flows of the four lands; they must be a device's first. */
export const landFlows: Readonly<Record<string, FlowDefinition>> = {
  feedUp: { from: 'pressure', to: 'up', title: 'pressure to up line', ...passage },
  feedDown: { from: 'pressure', to: 'down', title: 'pressure to down line', ...passage },
  returnUp: { from: 'up', to: 'return', title: 'up line to return', ...passage },
  returnDown: { from: 'down', to: 'return', title: 'down line to return', ...passage },
};

/** Writes the lands' constants at `at` from parameters `centre` and `overlap`; `held` where the spool does not follow its state. */
export function writeLands(k: Float64Array, at: number, p: Parameters, held: number = FREE): void {
  k[at + HELD] = held;
  CENTRES[p.centre as string].forEach((sign, i) => {
    k[at + 2 * i] = sign * number(p, 'overlap');
    k[at + 2 * i + 1] = 1 / (1 - k[at + 2 * i]);
  });
}

/**
 * Openings of all lands for a spool at state 0, lands' constants at `at` in `k`. (Only whole
 * numbers are handed over: a fraction would be put on the heap at every call.)
 */
export function openLands(d: Frame, at: number): void {
  land(d, FEED_UP, 1, at, at + HELD);
  land(d, FEED_DOWN, -1, at, at + HELD);
  land(d, RETURN_UP, -1, at + 2, at + HELD);
  land(d, RETURN_DOWN, 1, at + 2, at + HELD);
}

function land(d: Frame, path: number, sense: number, lap: number, held: number): void {
  const perLift = d.k[lap + 1];
  const free = d.k[held] === FREE;
  const x = (sense * (free ? d.state(0) : d.k[held]) - d.k[lap]) * perLift;
  d.opening(path, rise(x));
  d.openingSlope(path, free ? sense * riseSlope(x) * perLift : 0);
}
