import type { Catalogues, Scenario } from '../define/index.js';
import { play, type PlayOptions } from './play.js';
import { Record } from './record.js';
import { SimulatedRun } from './run.js';

/** How a run is made. */
export interface SimulateOptions extends PlayOptions {
  /** Length of a tick, s, 1e-4 to 1; default 5 ms. The result does not depend on it. */
  readonly tick?: number;
}

/**
 * Plays a test card of a scenario. Never throws for a scenario that `readScenario` accepted:
 * a run that cannot go on says so in its outcome and keeps what it has computed.
 *
 * @throws RangeError when `card` names no card, or `tick` is outside its range.
 */
export function simulateWith(
  catalogues: Catalogues,
  scenario: Scenario,
  options: SimulateOptions = {},
): SimulatedRun {
  const tick = options.tick ?? 5e-3;
  if (!(tick >= 1e-4 && tick <= 1)) throw new RangeError(`tick outside 0.0001 to 1 s: ${tick}`);
  const { recorder: record, ...parts } = play(
    catalogues,
    scenario,
    options,
    ({ network, machine }) => new Record(network.size, machine.epochs),
  );
  return new SimulatedRun({ ...parts, record, tick });
}
