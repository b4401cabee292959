/** The sound gear under every setup of a sheet, and what each of its unknowns does to the figures of the sheet. */
import type { FigureEntry } from './entry.js';
import type { Keys, Vector } from './keys.js';
import type { Foretold } from './profile.js';
import type { Scatter } from './scatter.js';
import type { SearchSetting } from './search.js';
import { signatureOf } from './signature.js';
import { soundJobs } from './unknown.js';

type Setting = Pick<SearchSetting, 'catalogues' | 'setups' | 'play'>;

/** Until it is known: all figures go up or down by this share together; own choice. */
const GUESS = 0.04;

/** The nominal aircraft; undefined where it was stopped before. */
export async function playNominal(
  { setups, play }: Setting,
  keys: Keys,
): Promise<Foretold | undefined> {
  const own = Array.from({ length: setups.own }, (_, setup) => setups.setups.at(setup));
  const jobs = own.flatMap(({ run }, setup) => (run === undefined ? [{ setup, faults: [] }] : []));
  const played = await play(jobs);
  if (played.includes(undefined)) return undefined;
  let next = 0;
  return own.map(({ run, reading }) =>
    keys.vector(run === undefined ? played[next++]! : signatureOf(run, reading)),
  );
}

/** Figures x unknowns; undefined where it was stopped before. */
export async function playScatter(
  { catalogues, setups, play }: Setting,
  keys: Keys,
  figures: readonly FigureEntry[],
  healthy: Foretold,
): Promise<Scatter | undefined> {
  const jobs = healthy.map((_, setup) =>
    soundJobs(catalogues, setups.setups.at(setup).scenario, setup).slice(1),
  );
  const found = await play(jobs.flat());
  if (found.includes(undefined)) return undefined;
  let next = 0;
  const shifted = jobs.map((own) => own.map((): Vector => keys.vector(found[next++]!)));
  // The unknowns of one aircraft are the same in all its swings: their places go together.
  const most = Math.max(...shifted.map((own) => own.length));
  return figures.map(({ setup, key }) => {
    const place = keys.place(key);
    return Array.from({ length: most }, (_, u) =>
      known((shifted[setup][u]?.[place] ?? NaN) - (healthy[setup][place] ?? NaN)),
    );
  });
}

export const guessedScatter = (
  keys: Keys,
  figures: readonly FigureEntry[],
  healthy: Foretold,
): Scatter =>
  figures.map(({ setup, key }) => [known(GUESS * (healthy[setup][keys.place(key)] ?? NaN))]);

/** What does not come in one of two swings says nothing of the difference. */
export const known = (change: number): number => (Number.isNaN(change) ? 0 : change);
