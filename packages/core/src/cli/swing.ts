import type { Flag, Run, Scenario } from '../define/index.js';
import type { DisplaySystem } from '../quantity/index.js';
import { toCsv, toJson, toTable, type CsvContent } from '../report/index.js';
import { columns } from '../report/layout.js';
import type { Engine } from './engine.js';
import { BadInput, EXIT, type Io } from './io.js';
import { chooseCard, readFaults, readTick } from './options.js';
import { progress } from './progress.js';
import { readScenarioFile } from './scenario-file.js';

/** Options of `swing` as the command line has read them. */
export interface SwingOptions {
  readonly card?: string;
  readonly fault: readonly string[];
  readonly units: DisplaySystem;
  readonly tick?: string;
  readonly tolerance: Run['tolerance'];
  readonly json?: boolean;
  /** True: to the output; text: to that file, beside the report. */
  readonly csv?: boolean | string;
  readonly csvOf: CsvContent;
  readonly events: 'main' | 'all';
  readonly output?: string;
}

/** Plays a test card and reports it. */
export function swing(engine: Engine, io: Io, file: string, options: SwingOptions): number {
  if (options.json === true && options.csv === true) {
    throw new BadInput('--json and --csv both want the output; give --csv a file');
  }
  if (options.output === file || options.csv === file) {
    throw new BadInput(`${file} is the scenario; write the report somewhere else`);
  }
  if (options.output !== undefined && options.output === options.csv) {
    throw new BadInput(`--output and --csv both want ${options.output}; give them two files`);
  }
  const found = readScenarioFile(engine, io, file);
  if (found === undefined) return EXIT.badInput;
  const { scenario } = found;
  const card = chooseCard(scenario, options.card);
  const faults = readFaults(options.fault, scenario, engine.catalogues);
  const tick = readTick(options.tick);
  const { tolerance, units } = options;
  const bar = progress(io, `simulating ${card}`);
  const run = engine.simulate(scenario, { card, faults, tick, tolerance, onProgress: bar?.report });
  bar?.done();
  const csv = (): string => toCsv(run, { units, content: options.csvOf });
  if (typeof options.csv === 'string') io.write(options.csv, csv());
  const text =
    options.json === true
      ? toJson(run)
      : options.csv === true
        ? csv()
        : toTable(run, {
            units,
            everyEvent: options.events === 'all',
            paint: io.outIsTerminal && options.output === undefined ? paint : undefined,
          });
  if (options.output === undefined) io.out(text);
  else io.write(options.output, text);
  return verdict(io, run);
}

/** Reads a scenario and says everything that is wrong with it. */
export function check(engine: Engine, io: Io, files: readonly string[]): number {
  let code: number = EXIT.clean;
  for (const file of files) {
    const found = readScenarioFile(engine, io, file, io.out);
    if (found === undefined) code = EXIT.badInput;
    else io.out(`${file}: no problems found; its test cards:\n${cardsOf(found.scenario)}`);
  }
  return code;
}

function cardsOf({ cards }: Scenario): string {
  const rows = Object.entries(cards).map(([name, card]) => [name, card.title]);
  return columns([{ title: 'card' }, { title: 'title' }], rows)
    .slice(1)
    .map((line) => `  ${line}\n`)
    .join('');
}

function verdict(io: Io, run: Run): number {
  const { outcome } = run;
  if (outcome.kind !== 'done') {
    io.error(`wheelwell: could not finish: ${outcome.why} ${outcome.hint}`.trimEnd() + '\n');
    return EXIT.unfinished;
  }
  return run.flags.some((f) => f.severity !== 'note') ? EXIT.flagged : EXIT.clean;
}

/** Bold red and yellow, which every terminal knows. */
function paint(text: string, severity: Flag['severity']): string {
  const code = { fail: '1;31', caution: '33', note: '0' }[severity];
  return `\u001b[${code}m${text}\u001b[0m`;
}
