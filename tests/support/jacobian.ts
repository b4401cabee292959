import { placeOf } from '../../packages/core/src/solver/index.js';
import type { Network } from '../../packages/core/src/network/index.js';

/** A place where the analytic Jacobian and central differences are set against each other. */
export interface Finding {
  readonly t: number;
  readonly row: string;
  readonly column: string;
  readonly analytic: number;
  readonly difference: number;
}

/** Central differences of the rates against one state, at a step of `share` of the state's scale. */
function differences(
  network: Network,
  t: number,
  y: Float64Array,
  j: number,
  share: number,
): Float64Array {
  const step = network.scale[j] * share;
  const low = new Float64Array(network.size);
  const high = new Float64Array(network.size);
  const moved = y.slice();
  moved[j] = y[j] - step;
  const from = moved[j];
  network.derivatives(t, moved, low);
  moved[j] = y[j] + step;
  network.derivatives(t, moved, high);
  return low.map((l, i) => (high[i] - l) / (moved[j] - from));
}

/** Entries, in units of the states' scales, where Jacobian and differences disagree. */
export function compareJacobian(
  network: Network,
  t: number,
  y: Float64Array,
): { wrong: Finding[]; outside: Finding[]; checked: number } {
  const values = new Float64Array(network.pattern.column.length);
  const rate = new Float64Array(network.size);
  network.jacobian(t, y, rate, values);
  const wrong: Finding[] = [];
  const outside: Finding[] = [];
  let checked = 0;
  // The angle of a held coordinate is constant: whatever stands in its column multiplies zero.
  const held = new Set(
    [...network.wiring.angleState].filter((_, c) => network.workspace.direction[c] === 0),
  );
  for (let j = 0; j < network.size; j++) {
    if (held.has(j)) continue;
    const shares = [1e-4, 1e-5, 1e-6, 1e-7, 1e-8].map((s) => differences(network, t, y, j, s));
    for (let i = 0; i < network.size; i++) {
      const place = placeOf(network.pattern, i, j);
      const unit = network.scale[j] / network.scale[i];
      const analytic = place < 0 ? 0 : values[place] * unit;
      // Curvature spoils long steps, rounding short ones: the best counts.
      const tried = shares.map((d) => d[i] * unit);
      // Where the curvature jumps (the edge of a land) the error is proportional to the step.
      tried.push((10 * tried[2] - tried[1]) / 9, (10 * tried[3] - tried[2]) / 9);
      const difference = tried.reduce((a, b) =>
        Math.abs(b - analytic) < Math.abs(a - analytic) ? b : a,
      );
      // Rounding, and what the edge of a land leaves of the extrapolation.
      const noise = (1e-15 / 1e-5) * (Math.abs(rate[i]) / network.scale[i]) + 3e-6;
      checked++;
      const found = {
        t,
        row: network.wiring.stateNames[i],
        column: network.wiring.stateNames[j],
        analytic,
        difference,
      };
      if (place < 0 && tried.every((d) => Math.abs(d) > noise)) outside.push(found);
      if (!(Math.abs(analytic - difference) <= noise + 2e-4 * Math.abs(analytic)))
        wrong.push(found);
    }
  }
  return { wrong, outside, checked };
}
