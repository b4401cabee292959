/**
 * The way between an actuator's port and its chamber: an orifice whose way out of the chamber
 * narrows smoothly (C1) as the piston nears that end, with a check valve beside it that leaves
 * the way in free: it adds what the cushion takes away. Common practice, no source.
 */
import type { FlowDefinition, Frame, Parameters } from '../../define/index.js';
import { boreLaw, number } from './parameters.js';
import { rise, riseSlope } from './smooth.js';

/**
 * Numbers a way needs in `k`: share left open at the end, 1 / cushion length (1/m), way left to the
 * end at no travel (m), share of the way out that nothing blocks.
 */
export const WAY_SIZE = 4;

/** The check valve begins to open at this drop and is open at that, Pa. */
const CRACK = 10_000;
const FULL = 160_000;

/** Writes a way's constants at `at`: cushion length and way left at no travel, m; share of the way out that is blocked. */
export function writeWay(
  k: Float64Array,
  at: number,
  p: Parameters,
  length: number,
  left: number,
  blocked: number,
): void {
  k[at] = number(p, 'cushionArea');
  k[at + 1] = 1 / length;
  k[at + 2] = left;
  k[at + 3] = 1 - blocked;
}

/** A way from a port to its chamber. */
export function way(from: string, to: string, title: string): FlowDefinition {
  return {
    from,
    to,
    also: ['rod'],
    title,
    law: (p, s) => {
      const bore = boreLaw(p, s, number(p, 'portBore'));
      return { ...bore, check: { ...bore, crack: CRACK, full: FULL, sense: 1, fills: true } };
    },
  };
}

/**
 * Opening of the way `path`; what is left to the cushion's end grows with the travel of link 0
 * (`sense` 1) or shrinks (-1).
 */
export function cushion(d: Frame, path: number, at: number, sense: number): void {
  const narrow = d.k[at];
  const x = (d.k[at + 2] + sense * d.travel(0)) * d.k[at + 1];
  const free = d.k[at + 3];
  d.opening(path, free * (narrow + (1 - narrow) * rise(x)));
  d.openingSlope(path, free * sense * (1 - narrow) * riseSlope(x) * d.k[at + 1]);
}
