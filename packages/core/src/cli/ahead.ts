import type { Engine } from './engine.js';
import { BadInput, EXIT, type Io } from './io.js';
import { progress } from './progress.js';
import { readScenarioFile } from './scenario-file.js';

/** What was played is written down so often, as a share: who stops it goes on from there. */
const OFTEN = 0.05;

/** Plays what a sheet of this aircraft's usual card may want, and keeps it: `diagnose` without a sheet. */
export async function prepareForSheets(engine: Engine, io: Io, file: string): Promise<number> {
  const found = readScenarioFile(engine, io, file);
  if (found === undefined) return EXIT.badInput;
  const { scenario, text } = found;
  const kept = io.kept?.(text);
  if (kept === undefined) throw new BadInput('there is nowhere to keep swings');
  const card = Object.keys(scenario.cards).find((c) => scenario.cards[c].faults.length === 0);
  const run = engine.simulate(scenario, {
    ...(card !== undefined && { card }),
    tolerance: 'draft',
  });
  const ways = new Set(engine.expectedSwings(run).map((s) => s.direction));
  const sheetText = [
    'wheelwell-observations: 1',
    'swings:',
    ...[...ways].map((w) => `  - direction: ${w}`),
  ].join('\n');
  const { sheet } = engine.readObservations(sheetText, { scenario });
  if (sheet === undefined || ways.size === 0)
    throw new BadInput(`${file} has no card with a swing`);
  const shown = progress(io, 'Playing what sheets may want');
  const players = io.pool?.();
  let next = OFTEN;
  try {
    const played = await engine.playAhead(scenario, sheet, {
      memory: kept.memory,
      ...(players !== undefined && { pool: players.pool }),
      onProgress: (share) => {
        shown?.report(share);
        if (share < next) return;
        next = share + OFTEN;
        kept.keep();
      },
    });
    shown?.done();
    io.out(
      `${played} swings were played, ${kept.memory.size} are kept: a sheet with ${[...ways].join(' and ')} on it, under the card’s own conditions, wants few more.\n`,
    );
    return EXIT.clean;
  } finally {
    kept.keep();
    await players?.close();
  }
}
