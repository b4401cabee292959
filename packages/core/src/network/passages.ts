import type { PassageLaw } from '../define/index.js';
import type { Exchange } from './exchange.js';

/** Numbers of a law in the flat array. */
const SIZE = 10;

/**
 * All passages of a network (flow paths with a law, see PassageLaw), evaluated in one loop
 * without a call: most of the oil goes through these, and a call for each would cost more than
 * the law. Source: medium/orifice.ts and component/shared/smooth.ts, of which this is the loop.
 */
export class Passages {
  private readonly path: Int32Array;
  private readonly from: Int32Array;
  private readonly to: Int32Array;
  /** Slot of the first further dependence, -1 when there is none. */
  private readonly also: Int32Array;
  private readonly law: Float64Array;

  /** `laws` by flow, over all instances; flows between one node and itself are left out. */
  constructor(
    private readonly x: Exchange,
    laws: readonly (PassageLaw | undefined)[],
    from: Int32Array,
    to: Int32Array,
    alsoAt: Int32Array,
  ) {
    const path = laws.flatMap((l, i) => (l !== undefined && from[i] !== to[i] ? [i] : []));
    this.path = Int32Array.from(path);
    this.from = Int32Array.from(path, (i) => from[i]);
    this.to = Int32Array.from(path, (i) => to[i]);
    this.also = Int32Array.from(path, (i) => (alsoAt[i + 1] > alsoAt[i] ? alsoAt[i] : -1));
    this.law = Float64Array.from(path.flatMap((i) => flat(laws[i]!)));
    laws.forEach((l, i) => (x.opening[i] = l?.open ?? 0));
  }

  evaluate(): void {
    const { path, from, to, also, law } = this;
    const { flow, byFrom, byTo, opening, openingSlope, flowAlso } = this.x;
    const { pressure, wantJacobian } = this.x.w;
    for (let j = 0, k = 0; j < path.length; j++, k += SIZE) {
      const i = path[j];
      const dp = pressure[from[j]] - pressure[to[j]];
      const square = dp * dp;
      const open = opening[i];
      let q = law[k + 2] * dp;
      let slope = law[k + 2];
      let byOpening = 0;
      if (open !== 0) {
        const sum = square + law[k + 1];
        const unit = law[k] / Math.sqrt(Math.sqrt(sum));
        const full = unit * dp;
        q += open * full;
        if (wantJacobian) {
          slope += (open * unit * (0.5 * square + law[k + 1])) / sum;
          byOpening = full;
        }
      }
      const x = (law[k + 7] * dp - law[k + 5]) * law[k + 6];
      if (x > 0) {
        const fills = law[k + 8];
        const share = 1 - fills * open;
        const lift = x >= 1 ? 1 : x * x * (3 - 2 * x);
        const sum = square + law[k + 4];
        const unit = law[k + 3] / Math.sqrt(Math.sqrt(sum));
        const full = unit * dp;
        q += share * lift * full;
        if (wantJacobian) {
          slope += (share * lift * unit * (0.5 * square + law[k + 4])) / sum;
          if (x < 1) slope += share * 6 * x * (1 - x) * law[k + 6] * law[k + 7] * full;
          byOpening -= fills * lift * full;
        }
      }
      flow[i] = q;
      if (wantJacobian) {
        byFrom[i] = slope;
        byTo[i] = -slope;
        if (also[j] >= 0) flowAlso[also[j]] = openingSlope[i] * byOpening;
      }
    }
  }
}

/** constant, transition^2, leak, the check's constant, transition^2, crack, 1 / band, sense, fills; a spare. */
function flat(l: PassageLaw): number[] {
  const c = l.check;
  const check =
    c === undefined
      ? [0, 1, 0, 0, 0, 0]
      : [
          c.constant,
          c.transition * c.transition,
          c.crack,
          1 / (c.full - c.crack),
          c.sense,
          c.fills === true ? 1 : 0,
        ];
  return [l.constant, l.transition * l.transition, l.leak, ...check, 0];
}
