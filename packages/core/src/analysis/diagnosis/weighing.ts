/** What evidence makes of profiles; of each worked out anew only when something was added to it. */
import type { Likelihood } from './likelihood.js';
import { believe, type Belief } from './posterior.js';
import type { Profile } from './profile.js';
import { hope, promise, type Promising } from './promise.js';

export class Weighing {
  readonly promise: (profile: Profile) => Promising;
  /** What it comes to, summed up roughly, and finely. */
  readonly quick: (profile: Profile) => Belief;
  readonly close: (profile: Profile) => Belief;
  private readonly hopes = new Map<number, (profile: Profile) => Promising | undefined>();

  constructor(readonly likelihood: Likelihood) {
    this.promise = once((profile) => promise(likelihood, profile));
    this.quick = once((profile) => believe(likelihood, profile, 'quick'));
    this.close = once((profile) => believe(likelihood, profile, 'close'));
  }

  /** What it could come to in a gap as wide as this. */
  hope(profile: Profile, gap: number): Promising | undefined {
    const known = this.hopes.get(gap) ?? once((p) => hope(this.likelihood, p, gap));
    this.hopes.set(gap, known);
    return known(profile);
  }

  /** Whether what explains the sheet best does not explain it well. */
  fitsNoBetter(than: 'bad' | 'fair' | 'well', profiles: readonly Profile[]): boolean {
    const best = profiles.map(this.quick).reduce((a, b) => (b.log > a.log ? b : a));
    return this.likelihood.fitsNoBetter(than, best.at(best.peak));
  }

  /** So many of the likeliest, the first before the next. */
  likeliest(profiles: Iterable<Profile>, most: number): Profile[] {
    return [...profiles].sort((a, b) => this.quick(b).log - this.quick(a).log).slice(0, most);
  }

  /** Log of prior times evidence of the likeliest. What promises less than another has come to need not be summed up. */
  highest(profiles: readonly Profile[]): number {
    const promising = profiles.map((p) => this.promise(p)).sort((a, b) => b.log - a.log);
    let most = -Infinity;
    for (const { profile, log } of promising) {
      if (log < most) break;
      most = Math.max(most, this.quick(profile).log);
    }
    return most;
  }
}

function once<T>(make: (profile: Profile) => T): (profile: Profile) => T {
  const known = new WeakMap<Profile, { readonly revision: number; readonly value: T }>();
  return (profile) => {
    const found = known.get(profile);
    if (found?.revision === profile.revision) return found.value;
    const value = make(profile);
    known.set(profile, { revision: profile.revision, value });
    return value;
  };
}
