import { describe, expect, it } from 'vitest';
import { Keys } from '../../../packages/core/src/analysis/diagnosis/keys.js';
import { inTurn } from '../../../packages/core/src/analysis/diagnosis/order-of-play.js';
import { Profile } from '../../../packages/core/src/analysis/diagnosis/profile.js';
import type { Promising } from '../../../packages/core/src/analysis/diagnosis/promise.js';
import type { Hypothesis } from '../../../packages/core/src/analysis/diagnosis/shapes.js';

const unit = (side: 'left' | 'right', leg: string) => ({
  ...{ side, leg, doors: [`${side}-door`], sequence: ['odd-valve'], actuators: [] },
});
const units = {
  left: { ...unit('left', 'left-leg'), sequence: ['old-valve'] },
  right: unit('right', 'right-leg'),
};
const cause = (on: string, prior = 0.01): Hypothesis => ({
  causes: [{ fault: 'worn', on }],
  prior,
});
const tried = (on: string, most: number): Promising => ({
  ...{ profile: new Profile(cause(on), new Keys(), []), log: most, most, severity: 1 },
});
const order = (all: readonly Hypothesis[], of: readonly Promising[]): string[] =>
  inTurn({ units }, all, of).map(({ causes: [{ on }] }) => on);

describe('which cause is played next', () => {
  const all = ['pump', 'right-door', 'left-door', 'left-leg'].map((on) => cause(on));

  it('befalls the device where another has come nearest to the sheet, then its unit', () => {
    const found = order(all, [tried('left-leg', -30), tried('right-leg', -60), tried('tank', -45)]);
    expect(found).toEqual(['left-leg', 'left-door', 'pump', 'right-door']);
  });

  it('goes by the unit that names the device, whatever the device is called', () => {
    const valves = [cause('odd-valve'), cause('old-valve')];
    expect(order(valves, [tried('left-leg', -30), tried('right-leg', -40)])).toEqual([
      'old-valve',
      'odd-valve',
    ]);
    expect(order(valves, [tried('left-leg', -40), tried('right-leg', -30)])).toEqual([
      'odd-valve',
      'old-valve',
    ]);
  });

  it('is the most common one where nothing is known, and all are there however little they promise', () => {
    const common = [...all, cause('line', 0.05)];
    const found = order(common, []);
    expect(found[0]).toBe('line');
    expect([...found].sort()).toEqual(common.map(({ causes: [{ on }] }) => on).sort());
    expect(order(common, [tried('left-leg', -1e6)])).toHaveLength(common.length);
  });

  it('does not let a place further behind than that outweigh ever more', () => {
    // e^-6 for the place at the most: a cause a thousand times as common goes first.
    const found = order(
      [cause('right-door', 0.5), cause('left-door', 5e-4)],
      [tried('left-leg', 0), tried('right-leg', -1e3)],
    );
    expect(found[0]).toBe('right-door');
  });
});
