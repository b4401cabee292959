/** What a run would have put on a sheet. */
import type { Catalogues, Evidence, Scenario } from '../../define/index.js';
import { simulateWith } from '../../machine/index.js';
import { expectedSwings, type ObservationSheet } from '../../observation/index.js';
import { setupsOf, type Setup } from './setup.js';
import type { Signature, SignatureJob } from './shapes.js';
import { unknownsOf } from './unknown.js';

/** The first movement of each direction counts. */
export function signatureOf(e: Evidence): Signature {
  const out: Record<string, number> = {};
  const swings = expectedSwings(e);
  for (const swing of swings) {
    const { direction: d } = swing;
    if (`${d}` in out) continue;
    out[d] = 1;
    for (const [unit, times] of Object.entries(swing.times))
      for (const [event, t] of Object.entries(times)) out[`${d}/${unit}/${event}`] = t;
    for (const [node, readings] of Object.entries(swing.gauges))
      for (const [moment, p] of Object.entries(readings)) out[`${d}/gauge/${node}/${moment}`] = p;
    const next = swings[swings.indexOf(swing) + 1]?.start ?? Infinity;
    for (const [unit, { leg }] of Object.entries(e.scenario.units)) {
      const starts = e.log.filter(
        (x) =>
          x.kind === 'motion' &&
          x.device === leg &&
          x.t >= swing.start &&
          x.t < next &&
          x.to === (d === 'up' ? 'rising' : 'falling'),
      ).length;
      out[`${d}/${unit}/moved`] = Number(starts > 0);
      out[`${d}/${unit}/pauses`] = Math.max(0, starts - 1);
    }
  }
  return out;
}

/** Plays one job. @throws RangeError when a fault of it cannot befall what it names. */
export function playSignature(
  catalogues: Catalogues,
  setups: readonly Setup[],
  job: SignatureJob,
): Signature {
  const { scenario, card } = setups[job.setup];
  const moved =
    job.unknown === undefined ? scenario : unknownsOf(catalogues, scenario)[job.unknown].moved();
  return signatureOf(
    simulateWith(catalogues, moved, { card, faults: job.faults, tolerance: 'draft' }),
  );
}

/** Plays the jobs of a sheet's diagnosis; makes the setups once. */
export function signaturePlayer(
  catalogues: Catalogues,
  scenario: Scenario,
  sheet: ObservationSheet,
): (job: SignatureJob) => Signature {
  const { setups } = setupsOf(catalogues, scenario, sheet);
  return (job) => playSignature(catalogues, setups, job);
}
