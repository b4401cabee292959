/**
 * The loop over all passages restates the orifice law so as to make no calls; here it is held to
 * the law as medium/orifice and PassageLaw state it.
 */
import { describe, expect, it } from 'vitest';
import type { PassageLaw } from '../../../packages/core/src/define/index.js';
import type { Exchange } from '../../../packages/core/src/network/exchange.js';
import { Passages } from '../../../packages/core/src/network/passages.js';
import { passage } from '../../support/fake-frame.js';

const bore = { constant: 5.8e-7, transition: 1e4 };
const check = { constant: 9e-7, transition: 2e4, crack: 2e4, full: 2e5 };
const LAWS: Readonly<Record<string, PassageLaw>> = {
  'a hole': { ...bore, open: 1, leak: 0 },
  'a leak alone': { constant: 0, transition: 1, open: 0, leak: 3e-14 },
  'a check valve with a leak': { ...bore, open: 0, leak: 2e-14, check: { ...check, sense: 1 } },
  'a one-way restrictor': { ...bore, open: 1, leak: 0, check: { ...check, sense: 1 } },
  'a one-way restrictor turned round': {
    ...bore,
    open: 1,
    leak: 0,
    check: { ...check, sense: -1 },
  },
  'a valve half open': { ...bore, open: 0.5, leak: 1e-14 },
  'a cushion': { ...bore, open: 0.2, leak: 0, check: { ...check, sense: 1, fills: true } },
};
const DROPS = [-2e7, -3e5, -1e5, -3e4, -1e3, 0, 500, 2e4, 5e4, 1.1e5, 2e5, 7e5, 2e7];
const OPENING_SLOPE = 37;

/** One passage between two nodes, with a further dependence. */
function loop(law: PassageLaw, dp: number): { q: number; from: number; to: number; also: number } {
  const zeros = (n: number): Float64Array => new Float64Array(n);
  const x = {
    w: { pressure: Float64Array.of(3e7 + dp, 3e7), wantJacobian: true },
    flow: zeros(1),
    byFrom: zeros(1),
    byTo: zeros(1),
    opening: zeros(1),
    openingSlope: Float64Array.of(OPENING_SLOPE),
    flowAlso: zeros(1),
  };
  const exchange = x as unknown as Exchange;
  new Passages(exchange, [law], Int32Array.of(0), Int32Array.of(1), Int32Array.of(0, 1)).evaluate();
  return { q: x.flow[0], from: x.byFrom[0], to: x.byTo[0], also: x.flowAlso[0] };
}

describe.each(Object.entries(LAWS))('%s', (_, law) => {
  it.each(DROPS)('passes what its law says at a drop of %d Pa, with its slopes', (drop) => {
    // The drop that the two pressures really make.
    const dp = 3e7 + drop - 3e7;
    const found = loop(law, drop);
    const said = passage(law, dp, law.open);
    const near = (value: number, wanted: number): void =>
      expect(Math.abs(value - wanted)).toBeLessThanOrEqual(1e-12 * Math.abs(wanted));
    near(found.q, said.q);
    near(found.from, said.slope);
    near(found.to, -said.slope);
    // A passage that is shut and just about to open does so without a step.
    if (law.open > 0) near(found.also, OPENING_SLOPE * said.byOpening);
  });
});
