/**
 * What the nominal aircraft does not tell: what hangs on a hair (a leg that falls on its lock makes it or bounces),
 * and what hangs on the temperature by itself.
 */
import type { Catalogues, Scenario } from '../../define/index.js';
import { playAcross } from './across.js';
import { faultsOf } from './hypothesis.js';
import type { Keys, Vector } from './keys.js';
import { WORST, type Foretold, type Profile } from './profile.js';
import type { SearchSetting } from './search.js';
import type { Hypothesis, SignatureJob } from './shapes.js';
import { known } from './sound-swings.js';
import { temperatureAmong } from './unknown.js';

/** Less bad than the worst: what bounces there tells nothing of what it does before. */
export const MIDDLES = [0.5, 0.25] as const;
/** What bounces is played so bad on each of these aircraft from the scatter: from about there on it is as bad at any severity. */
const BOUNCING = { severity: 0.5, draws: [0, 1, 2, 3, 4, 5] } as const;

export const bounces = ({ hypothesis: { hangsOn } }: Profile): boolean => hangsOn === 'bounce';

/** Where nothing fits well, so many swings of the likeliest are played on each of these aircraft from the scatter. */
export const DRAWN = [
  { most: 96, draws: [0, 1] },
  { most: 12, draws: [2, 3, 4, 5, 6, 7] },
] as const;

/** A swing on an aircraft from the scatter. */
export interface Draw {
  readonly profile: Profile;
  readonly severity: number;
  readonly drawn: number;
}

/** Each on these aircraft, where it fits best on the nominal one; what bounces on others, once. */
export function drawsOf(
  profiles: readonly Profile[],
  draws: readonly number[],
  peakOf: (profile: Profile) => number,
): readonly Draw[] {
  return profiles.flatMap((profile) => {
    const hair = bounces(profile);
    if (hair && profile.drawn.length > 0) return [];
    const severity = hair ? BOUNCING.severity : peakOf(profile);
    return (hair ? BOUNCING.draws : draws).map((drawn) => ({ profile, severity, drawn }));
  });
}

/** The worst of what hangs on the temperature in colder oil, and the sound gear in it first; none where nothing does. */
export function chilledSwings(
  catalogues: Catalogues,
  scenario: Scenario,
  hypotheses: readonly Hypothesis[],
): readonly Pick<SignatureJob, 'faults' | 'unknown'>[] {
  const hanging = hypotheses.filter(hangsOnCold);
  if (hanging.length === 0) return [];
  const unknown = temperatureAmong(catalogues, scenario);
  return [[], ...hanging.map((h) => faultsOf(h, WORST))].map((faults) => ({ faults, unknown }));
}

const hangsOnCold = ({ hangsOn }: Hypothesis): boolean => hangsOn === 'temperature';

/** Plays these, and gives them to the profiles. */
export async function playChilled(
  profiles: readonly Profile[],
  { catalogues, setups: { setups, own }, play }: SearchSetting,
  keys: Keys,
  healthy: Foretold,
): Promise<void> {
  const hanging = profiles.filter(({ hypothesis }) => hangsOnCold(hypothesis));
  const hypotheses = hanging.map(({ hypothesis }) => hypothesis);
  const swings = chilledSwings(catalogues, setups.at(0).scenario, hypotheses);
  const [sound, ...chilled] = await playAcross(swings, own, keys, play);
  if (sound === undefined) return;
  // What a sound gear does in colder oil is in the scatter.
  const alone = (v: Vector, setup: number): Vector =>
    v.map((x, i) => x - known(sound[setup][i] - healthy[setup][i]));
  chilled.forEach((foretold, i) => foretold && hanging[i].chill(foretold.map(alone)));
}
