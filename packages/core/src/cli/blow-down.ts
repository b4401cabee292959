import type { DisplaySystem } from '../quantity/index.js';
import { toBlowDownText } from '../report/index.js';
import type { Engine } from './engine.js';
import { BadInput, EXIT, type Io } from './io.js';
import { readScenarioFile } from './scenario-file.js';

/** Options of `blow-down` as the command line has read them. */
export interface BlowDownCommand {
  readonly card?: string;
  readonly units: DisplaySystem;
  readonly json?: boolean;
}

/** Says whether the bottle brings every leg down, with what margin, and what has to be done after. */
export function blowDown(engine: Engine, io: Io, file: string, options: BlowDownCommand): number {
  const found = readScenarioFile(engine, io, file);
  if (found === undefined) return EXIT.badInput;
  const { scenario } = found;
  let card: string;
  try {
    card = engine.blowDownCard(scenario, options.card);
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(error.message);
    throw error;
  }
  const table = engine.chargeTable(scenario);
  const run = engine.simulate(scenario, { card });
  const cell = engine.judgeBlowDown(run);
  const minimum = engine.minimumCharge(scenario, { card });
  const steps = engine.serviceSteps(run);
  const ramps = engine.rampCases(run);
  const after = engine.followUp(run);
  const report = {
    title: scenario.title,
    card,
    cell,
    ramps,
    minimum,
    table,
    steps,
    ...(after && { after }),
  };
  io.out(
    options.json === true
      ? `${JSON.stringify(report, null, 2)}\n`
      : toBlowDownText(report, options.units),
  );
  if (cell.verdict === 'failed') return EXIT.unfinished;
  return cell.verdict === 'locked' ? EXIT.clean : EXIT.flagged;
}
