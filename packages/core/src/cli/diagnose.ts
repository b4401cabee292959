import { formatIssue, type Scenario } from '../define/index.js';
import type { ObservationSheet } from '../observation/index.js';
import type { DisplaySystem } from '../quantity/index.js';
import { toDiagnosisText } from '../report/index.js';
import type { Engine } from './engine.js';
import { BadInput, EXIT, type Io } from './io.js';
import { progress } from './progress.js';
import { readScenarioFile } from './scenario-file.js';

/** Options of `diagnose` as the command line has read them. */
export interface DiagnoseOptions {
  readonly units: DisplaySystem;
  readonly json?: boolean;
  readonly afresh?: boolean;
}

/** The recordings a sheet names, which lie beside it; of one that is not there the diagnosis says so. */
function recordingsOf(
  io: Io,
  sheetFile: string,
  { swings }: ObservationSheet,
): Record<string, string> {
  const folder = sheetFile.replace(/[^/\\]*$/, '');
  const names = new Set(swings.flatMap((s) => s.recordings.map((r) => r.file)));
  const found: Record<string, string> = {};
  for (const name of names)
    try {
      found[name] = io.read(`${folder}${name}`);
    } catch {
      continue;
    }
  return found;
}

/** Ranks what explains a sheet. A healthy aircraft is clean, anything else flagged. */
export async function diagnoseSheet(
  engine: Engine,
  io: Io,
  file: string,
  sheetFile: string,
  options: DiagnoseOptions,
): Promise<number> {
  const found = readScenarioFile(engine, io, file);
  if (found === undefined) return EXIT.badInput;
  const { scenario } = found;
  const sheetText = io.read(sheetFile);
  const reading = engine.readObservations(sheetText, { file: sheetFile, scenario });
  for (const issue of reading.issues) io.error(`${formatIssue(issue)}\n`);
  for (const pair of reading.contradictions) io.error(`${formatIssue(pair)}\n`);
  const { sheet } = reading;
  if (sheet === undefined || reading.issues.length > 0) return EXIT.badInput;
  if (sheet.swings.length === 0)
    throw new BadInput(`${sheetFile} has no swing on it: there is nothing to explain`);
  const shown = progress(io, 'Playing what could explain it');
  const kept = options.afresh === true ? undefined : io.kept?.(found.text);
  const players = io.pool?.();
  try {
    const diagnosis = await engine.diagnose(scenario, sheet, {
      recordings: recordingsOf(io, sheetFile, sheet),
      ...(players !== undefined && { pool: players.pool }),
      ...(kept !== undefined && { memory: kept.memory }),
      ...(shown !== undefined && { onProgress: shown.report }),
    });
    shown?.done();
    io.out(
      options.json === true
        ? `${JSON.stringify({ sheet, diagnosis }, null, 2)}\n`
        : toDiagnosisText(report(scenario), sheet, diagnosis, options.units),
    );
    const first = diagnosis.groups[0]?.members[0];
    return first?.causes.length === 0 ? EXIT.clean : EXIT.flagged;
  } finally {
    kept?.keep();
    await players?.close();
  }

  function report({ title }: Scenario) {
    const { faults } = engine.catalogues;
    return { title, faults, checks: engine.checks };
  }
}
