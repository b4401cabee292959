/** Runs of the sound gear that tell how far a setup is played, kept for when the sheet has grown by an entry. */
import type { Scenario } from '../../define/index.js';
import type { SimulatedRun } from '../../machine/index.js';

/** So many of a scenario, those asked for last: a run has some megabytes. */
const KEPT = 6;

const kept = new WeakMap<Scenario, Map<string, SimulatedRun>>();

/** @param key what the run is of, beside its scenario */
export function soundRun(scenario: Scenario, key: string, play: () => SimulatedRun): SimulatedRun {
  const runs = kept.get(scenario) ?? new Map<string, SimulatedRun>();
  kept.set(scenario, runs);
  const run = runs.get(key) ?? play();
  // Asked for last, it stands last.
  runs.delete(key);
  runs.set(key, run);
  for (const old of [...runs.keys()].slice(0, -KEPT)) runs.delete(old);
  return run;
}
