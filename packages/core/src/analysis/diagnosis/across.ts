/** Swings that are made under every setup of a sheet. */
import type { Keys } from './keys.js';
import type { Foretold } from './profile.js';
import type { Play } from './search.js';
import type { SignatureJob } from './shapes.js';

/** What each comes to under all of so many setups; undefined where it was stopped before. */
export async function playAcross(
  swings: readonly Omit<SignatureJob, 'setup'>[],
  setups: number,
  keys: Keys,
  play: Play,
): Promise<readonly (Foretold | undefined)[]> {
  const jobs = swings.flatMap((swing) =>
    Array.from({ length: setups }, (_, setup) => ({ ...swing, setup })),
  );
  const found = await play(jobs);
  return swings.map((_, i) => {
    const own = found.slice(i * setups, (i + 1) * setups);
    const foretold = own.flatMap((s) => (s === undefined ? [] : [keys.vector(s)]));
    return foretold.length === setups ? foretold : undefined;
  });
}
