/** Plays causes on other aircraft than the nominal one, from the scatter of healthy ones. */
import { jobOf } from './hypothesis.js';
import type { Keys } from './keys.js';
import type { Profile } from './profile.js';
import type { Play } from './search.js';
import type { Hypothesis, SignatureJob } from './shapes.js';

/** A cause on one aircraft: a swing for each setup. */
interface Planned {
  readonly profile: Profile;
  readonly jobs: readonly SignatureJob[];
}

export class Draws {
  /** @param setups how many the sheet has */
  constructor(
    private readonly keys: Keys,
    private readonly setups: number,
  ) {}

  /** Every cause at the severity that fits best, on each of these aircraft. */
  plan(
    profiles: readonly Profile[],
    draws: readonly number[],
    severity: (profile: Profile) => number,
  ): readonly Planned[] {
    return profiles.flatMap((profile) => {
      const at = severity(profile);
      return draws.map((drawn) => ({ profile, jobs: this.jobs(profile.hypothesis, at, drawn) }));
    });
  }

  private jobs(hypothesis: Hypothesis, severity: number, drawn: number): SignatureJob[] {
    return Array.from({ length: this.setups }, (_, setup) => ({
      ...jobOf(hypothesis, severity, setup),
      drawn,
    }));
  }

  /** Adds to the profiles what came of it; what was stopped before is left out. */
  put(planned: readonly Planned[], found: Awaited<ReturnType<Play>>): void {
    let next = 0;
    for (const { profile } of planned) {
      const own = found.slice(next, (next += this.setups));
      const foretold = own.flatMap((s) => (s === undefined ? [] : [this.keys.vector(s)]));
      if (foretold.length === this.setups) profile.draw(foretold);
    }
  }
}
