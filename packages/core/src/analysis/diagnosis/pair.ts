/** Two faults at once: foretold by adding what each does, since playing every pair would take an hour. */
import { HEALTHY } from './hypothesis.js';
import { logSum, type Likelihood } from './likelihood.js';
import type { Belief } from './posterior.js';
import type { Keys } from './keys.js';
import type { Foretold, Profile } from './profile.js';

/** Severities of the second fault that are tried. */
const TRIED: readonly number[] = [0.15, 0.35, 0.6, 0.9];
/** What a second fault must add to the log likelihood. */
const GAIN = 2;

export function pairBelief(
  likelihood: Likelihood,
  keys: Keys,
  healthy: Foretold,
  first: Belief,
  second: Profile,
): Belief | undefined {
  const a = first.foretold;
  const at = (s: number): Foretold => second.at(s).map((v, i) => keys.added(healthy[i], a[i], v));
  const logs = TRIED.map((s) => likelihood.of(at(s)));
  const causes = [...first.hypothesis.causes, ...second.hypothesis.causes];
  const looks = likelihood.ofLooks(causes);
  // A second fault that explains nothing is not one.
  const alone = likelihood.of(a) + likelihood.ofLooks(first.hypothesis.causes);
  if (Math.max(...logs) + looks < alone + GAIN) return undefined;
  const sum = logSum(logs);
  const severity = TRIED.reduce((mean, s, i) => mean + s * Math.exp(logs[i] - sum), 0);
  const hypothesis = {
    causes,
    // Each with its odds beside a healthy aircraft.
    prior: (first.hypothesis.prior * second.hypothesis.prior) / HEALTHY,
  };
  return {
    hypothesis,
    // The first one's severity was fitted, not summed over: it pays for that as it would alone.
    log: Math.log(hypothesis.prior) + looks + sum - Math.log(TRIED.length) + first.narrowness,
    severity,
    peak: severity,
    narrowness: 0,
    severityRange: [TRIED[0], TRIED[TRIED.length - 1]],
    foretold: at(severity),
    at,
  };
}
