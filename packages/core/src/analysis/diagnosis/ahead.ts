/**
 * Ahead of a sheet: the swings that any sheet under its conditions is likely to want are played into the memory,
 * the most wanted first, so that little is left to play when it has been filled in.
 */
import type { Catalogues, Scenario } from '../../define/index.js';
import type { ObservationSheet } from '../../observation/index.js';
import { hypothesesOf, jobOf } from './hypothesis.js';
import { chilledSwings } from './off-nominal.js';
import { ownPool, Player } from './player.js';
import { PREFERRED, WORST } from './profile.js';
import { setupsOf } from './setup.js';
import type { DiagnosisOptions } from './shapes.js';
import { Sharing } from './share.js';
import { soundJobs } from './unknown.js';

export type AheadOptions = Pick<DiagnosisOptions, 'memory' | 'pool' | 'signal'> & {
  readonly onProgress?: (share: number) => void;
};

/** @param sheet what is noted so far: its conditions, the ways it goes. @returns how many swings were played */
export async function playAhead(
  catalogues: Catalogues,
  scenario: Scenario,
  sheet: ObservationSheet,
  { memory, pool, signal, onProgress }: AheadOptions = {},
): Promise<number> {
  const { setups, own } = setupsOf(catalogues, scenario, sheet);
  if (own === 0) return 0;
  const player = new Player(setups, pool ?? ownPool(catalogues), memory);
  const [, ...faulty] = hypothesesOf(catalogues, scenario, sheet);
  const byPrior = faulty.sort((a, b) => b.prior - a.prior);
  const sharing = new Sharing(catalogues, setups.at(0).scenario, byPrior);
  const sound = Array.from({ length: own }, (_, setup) =>
    soundJobs(catalogues, setups.at(setup).scenario, setup),
  );
  // Which side will be off is open: of both.
  const faults = PREFERRED.flatMap((severity) =>
    sharing
      .tellers(severity, { borrowing: false })
      .filter((h) => severity === WORST || !sharing.abrupt(h))
      .map((h) => jobOf(h, severity, 0)),
  );
  const chilled = sound.flatMap((_, setup) => {
    // The sound gear is among the above.
    const [, ...own] = chilledSwings(catalogues, setups.at(setup).scenario, faulty);
    return own.map((swing) => ({ ...swing, setup }));
  });
  const jobs = [...sound.flat(), ...chilled, ...faults];
  let done = 0;
  await player.play(jobs, () => onProgress?.(++done / jobs.length), signal);
  return player.runs;
}
