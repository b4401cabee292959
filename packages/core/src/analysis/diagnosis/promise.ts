/** The most that a cause could come to, from what was played of it so far. */
import type { Likelihood } from './likelihood.js';
import { before } from './posterior.js';
import { preferred, stretchesOf, type Profile } from './profile.js';

/** How far what is foretold may be off, as a share of how far that is from what was played; what is borrowed is known less well. */
const SLACK = { played: 0.2, borrowed: 0.35 } as const;

export interface Promising {
  readonly profile: Profile;
  /** Log of prior times likelihood, and of the likelihood alone. */
  readonly log: number;
  readonly most: number;
  /** Which severity to play for it. */
  readonly severity: number;
}

/** If it goes about straight from one severity to the next. */
export function promise(likelihood: Likelihood, profile: Profile): Promising {
  const open = unplayed(profile);
  const severities = stretchesOf(profile, 'quick').map((s) => s.severity);
  const logs = severities.map((s) => {
    const slack = profile.borrowed(s) ? SLACK.borrowed : SLACK.played;
    const under = profile.colds.map(({ by }) =>
      likelihood.atMost(profile.nearest(s), profile.at(s, by), slack, open),
    );
    return Math.max(...under);
  });
  const most = Math.max(...logs);
  const severity = severities[logs.indexOf(most)];
  return { profile, log: before(likelihood, profile.hypothesis) + most, most, severity };
}

/**
 * If between two severities every figure goes its own way, early or late: a valve that is all but
 * shut does nothing, and then all at once. Undefined where no two severities are further apart than `gap`.
 */
export function hope(likelihood: Likelihood, profile: Profile, gap: number): Promising | undefined {
  const open = unplayed(profile);
  const all = profile.severities;
  let best: Promising | undefined;
  for (let i = 1; i < all.length; i++) {
    const [a, b] = [all[i - 1], all[i]];
    if (b - a < gap) continue;
    const most = likelihood.amid(profile.at(a), profile.at(b), open);
    // Only so much of all severities lies in the gap.
    const log = before(likelihood, profile.hypothesis) + most + Math.log(b - a);
    const severity = preferred((a + b) / 2, (b - a) / 4);
    if (best === undefined || log > best.log) best = { profile, log, most, severity };
  }
  return best;
}

/** Of setups that it was not played under yet nothing is known. */
const unplayed =
  (profile: Profile) =>
  (setup: number): boolean =>
    !profile.known(setup);
