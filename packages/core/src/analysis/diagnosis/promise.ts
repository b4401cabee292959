/** The most that a cause could come to, from what was played of it so far. */
import type { Likelihood } from './likelihood.js';
import { before } from './posterior.js';
import { preferred, stretchesOf, type Profile } from './profile.js';

/** How far what is foretold may be off, as a share of how far that is from what was played; what is borrowed is known less well. */
const SLACK = { played: 0.4, borrowed: 0.7 } as const;
/** So often the places beside the best are halved: to 0.03 of severity. */
const HALVED = 2;

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
  const places = stretchesOf(profile, 'rough').map((s) => s.severity);
  const [severity, most] = highest(places, (s) => {
    const slack = profile.borrowed(s) ? SLACK.borrowed : SLACK.played;
    const under = profile.colds.map(({ by }) =>
      likelihood.atMost(profile.nearest(s), profile.at(s, by), slack, open),
    );
    return Math.max(...under);
  });
  return { profile, log: before(likelihood, profile.hypothesis) + most, most, severity };
}

/** Where it is highest, and how high: of these places, rising, then of those half way to the best one's neighbours. */
function highest(
  places: readonly number[],
  of: (place: number) => number,
): readonly [place: number, height: number] {
  let found = places.map((place) => [place, of(place)] as const);
  const best = (): number => found.reduce((a, [, h], i) => (h > found[a][1] ? i : a), 0);
  for (let time = 0; time < HALVED; time++) {
    const at = best();
    const near = found.slice(Math.max(at - 1, 0), at + 2);
    found = near.flatMap((here, i) => {
      if (i === 0) return [here];
      const between = (near[i - 1][0] + here[0]) / 2;
      return [[between, of(between)] as const, here];
    });
  }
  return found[best()];
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
