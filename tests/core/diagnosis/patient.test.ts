/** How long a card is played for, so that what never came was really waited for. Invented data. */
import { describe, expect, it } from 'vitest';
import { patient } from '../../../packages/core/src/analysis/diagnosis/patient.js';
import type { Scenario } from '../../../packages/core/src/define/index.js';
import { catalogues, underConditions } from '../../../packages/core/src/index.js';
import { simulateWith } from '../../../packages/core/src/machine/index.js';
import { expectedSwings, WHOLE_GEAR } from '../../../packages/core/src/observation/index.js';
import { oneLeg } from '../../support/one-leg.js';

const scenario = oneLeg();
const [card] = Object.keys(scenario.cards);
const directions = new Set(['up', 'down'] as const);
const FLOW = 120e-6;

let played = 0;
function waited(of: Scenario, noted = 0) {
  played = 0;
  return patient({ scenario: of, card, directions, noted }, (s) => {
    played++;
    return simulateWith(catalogues, s, { card, tolerance: 'draft' });
  });
}
const totals = (run: Parameters<typeof expectedSwings>[0]) =>
  expectedSwings(run).map((m) => m.times[WHOLE_GEAR]?.total);

describe('how long is waited', () => {
  it('is as the card says where a sound gear comes home in it, and that is played once', () => {
    const { scenario: made, longer, run } = waited(scenario);
    expect(longer).toBe(0);
    expect(made).toBe(scenario);
    expect(totals(run).every((t) => t !== undefined)).toBe(true);
    expect(played).toBe(1);
  });

  it('is longer for what was noted later than the card has time for', () => {
    const { longer } = waited(scenario, 30);
    expect(longer).toBeGreaterThanOrEqual(30);
  });

  it('is longer on little flow, until a sound gear is home both ways', () => {
    const weak = underConditions(scenario, card, { supplyFlow: FLOW / 4 });
    expect(totals(simulateWith(catalogues, weak, { card })).slice(0, 1)).toEqual([undefined]);
    const { scenario: made, longer, run } = waited(weak);
    expect(longer).toBeGreaterThan(0);
    expect(totals(run)).toHaveLength(2);
    expect(totals(run).every((t) => t !== undefined)).toBe(true);
    // The lever is not moved down before it is home.
    const [up, down] = expectedSwings(run);
    expect(down.start - up.start).toBeGreaterThan(up.times[WHOLE_GEAR].total ?? Infinity);
    expect(made.cards[card].duration).toBe(weak.cards[card].duration + 2 * longer);
  });

  it('is as the card says where no waiting helps', () => {
    const { longer } = waited(underConditions(scenario, card, { supplyFlow: 0 }));
    expect(longer).toBe(0);
    expect(played).toBeLessThanOrEqual(3);
  });
});
