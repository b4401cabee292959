import { Command, CommanderError, InvalidArgumentError, Option, Argument } from 'commander';
import { didYouMean, type DisplaySystem } from '../quantity/index.js';
import { prepareForSheets } from './ahead.js';
import type { Engine } from './engine.js';
import { blowDown, type BlowDownCommand } from './blow-down.js';
import { diagnoseSheet, type DiagnoseOptions } from './diagnose.js';
import { BadInput, EXIT, type Io } from './io.js';
import { list } from './list.js';
import { LISTS, type List } from './list-entry.js';
import { check, swing, type SwingOptions } from './swing.js';

const CODES = `
Exit codes: 0 clean, 1 flagged (a caution or a fail), 2 bad input, 3 could not finish.
Simulation only: never in place of the aircraft's approved data.`;

const FIRST = `
First steps, with the invented aircraft that comes with wheelwell:
  wheelwell check scenarios/hedgelark/hedgelark.yaml
      is the file in order, and which test cards does it have?
  wheelwell swing scenarios/hedgelark/hedgelark.yaml
      play its first card: times, flags, margins, events
  wheelwell swing scenarios/hedgelark/hedgelark.yaml --card doors-early --units metric
      another card, in other units
  wheelwell blow-down scenarios/hedgelark/hedgelark.yaml
      does the emergency bottle get every leg down, with what margin, and what comes after?
  wheelwell diagnose scenarios/hedgelark/hedgelark.yaml scenarios/hedgelark/observations/slow-left.yaml
      what explains the times on an observation sheet, and which check comes next?
  wheelwell list faults
      what can go wrong; with a name, how it shows and how it is confirmed; with any other
      word, the faults that speak of it
wheelwell <command> --help tells what a command takes.
`;

const FAULT_EXAMPLES = `
A fault is written name=severity, or name@device=severity where several devices could have it:
  --fault pump-worn=0.5
  --fault piston-seal-bypass@left-leg-jack=60% --fault dry-bearing@right-leg=1
`;

const LIST_EXAMPLES = `
  wheelwell list faults                      the whole catalogue, by what is touched
  wheelwell list faults sags                 faults that speak of sagging
  wheelwell list faults piston-seal-bypass   one of them in full
`;

/**
 * Runs the command line and returns its exit code; never throws for what a user can do.
 * `argv` holds the arguments only, without interpreter and script.
 */
export async function runProgramAsync(
  argv: readonly string[],
  io: Io,
  engine: Engine,
  version: string,
): Promise<number> {
  try {
    return await start(argv, io, engine, version);
  } catch (error) {
    return failed(error, io);
  }
}

/** The same for commands that need not wait for anything. */
export function runProgram(
  argv: readonly string[],
  io: Io,
  engine: Engine,
  version: string,
): number {
  const code = start(argv, io, engine, version);
  if (typeof code !== 'number') throw new Error('this command takes its time: runProgramAsync');
  return code;
}

function start(
  argv: readonly string[],
  io: Io,
  engine: Engine,
  version: string,
): number | Promise<number> {
  let code: number | Promise<number> = EXIT.clean;
  const program = build(io, engine, version, (result) => {
    code = result;
  });
  try {
    if (argv.length === 0) {
      io.error(`${program.helpInformation()}${FIRST}${CODES}\n`);
      return EXIT.badInput;
    }
    program.parse([...argv], { from: 'user' });
    return code;
  } catch (error) {
    return failed(error, io);
  }
}

function failed(error: unknown, io: Io): number {
  // Help and version end here too, with code 0.
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.clean : EXIT.badInput;
  if (error instanceof BadInput) {
    io.error(`wheelwell: ${error.message}\n`);
    return EXIT.badInput;
  }
  const what = error instanceof Error ? (error.stack ?? error.message) : String(error);
  io.error(`wheelwell: a fault of the program itself, please report it: ${what}\n`);
  return EXIT.unfinished;
}

function build(
  io: Io,
  engine: Engine,
  version: string,
  done: (code: number | Promise<number>) => void,
): Command {
  const program = new Command('wheelwell');
  // Before the commands are added: they copy these settings.
  program
    .exitOverride()
    .configureOutput({
      writeOut: io.out,
      writeErr: io.error,
      outputError: (text, write) => write(text.replace(/^error: /, 'wheelwell: ')),
    })
    .description('Simulates the hydraulic landing gear of a scenario file: a gear swing on paper.')
    .version(version, '-V, --version', 'print the version')
    .helpCommand(false)
    .helpOption('-h, --help', 'print this help')
    .showHelpAfterError('(--help tells what is allowed)')
    .addHelpText('after', FIRST + CODES);

  const units = (): Option =>
    new Option('--units <system>', 'units of what is shown')
      .choices(['us', 'metric', 'si'])
      .default('us');

  program
    .command('swing')
    .description('play a test card and report events, times and flags')
    .argument('<file>', 'scenario file, - for standard input')
    .option('--card <name>', 'test card (default: the first one in the file)')
    .addOption(
      new Option(
        '--fault <name[@device]=severity>',
        'add a fault, severity 0 to 1; may be repeated',
      )
        .argParser((text: string, before: readonly string[]) => [...before, text])
        .default([], 'none'),
    )
    .addOption(units())
    .option('--tick <time>', "length of a tick, e.g. '5 ms'")
    .addOption(
      new Option('--tolerance <name>', 'accuracy of the simulation')
        .choices(['draft', 'normal', 'fine'])
        .default('normal'),
    )
    .option('--json', 'report as JSON, in SI')
    .option(
      '--csv [file]',
      'report as CSV; with a file (after the scenario), write it there beside the report',
    )
    .addOption(
      new Option('--csv-of <content>', 'what the CSV holds')
        .choices(['traces', 'events'])
        .default('traces'),
    )
    .addOption(
      new Option('--events <which>', 'main: without what is undone within a blink; all: every one')
        .choices(['main', 'all'])
        .default('main'),
    )
    .option('--output <file>', 'write the report to a file')
    .addHelpText('after', FAULT_EXAMPLES + CODES)
    .action((file: string, options: SwingOptions) => {
      done(swing(engine, io, file, options));
    });

  program
    .command('blow-down')
    .description('does the bottle bring every leg down and locked, and with what margin?')
    .argument('<file>', 'scenario file, - for standard input')
    .option('--card <name>', 'test card that pulls the handle (default: the first such one)')
    .addOption(units())
    .option('--json', 'report as JSON, in SI')
    .addHelpText('after', CODES)
    .action((file: string, options: BlowDownCommand) => {
      done(blowDown(engine, io, file, options));
    });

  program
    .command('diagnose')
    .description('what explains an observation sheet, and which check comes next?')
    .argument('<file>', 'scenario file')
    .argument(
      '[sheet]',
      'observation sheet, - for standard input; without one, what sheets may want is played and kept',
    )
    .addOption(units())
    .option('--json', 'report as JSON, in SI')
    .option('--afresh', 'play every swing again: none is taken from before, none is kept')
    .addHelpText('after', CODES)
    .action((file: string, sheet: string | undefined, options: DiagnoseOptions) => {
      done(
        sheet === undefined
          ? prepareForSheets(engine, io, file)
          : diagnoseSheet(engine, io, file, sheet, options),
      );
    });

  program
    .command('check')
    .description('read scenario files and name every problem in them')
    .argument('<files...>', 'scenario files')
    .action((files: string[]) => {
      done(check(engine, io, files));
    });

  program
    .command('list')
    .description('show what scenarios can use, with parameters, units, ranges and defaults')
    .addArgument(new Argument('<what>', LISTS.join(', ')).argParser(readList))
    .argument(
      '[word]',
      'the name of one, to see it in full; any other word: those that speak of it',
    )
    .addOption(units())
    .addHelpText('after', LIST_EXAMPLES)
    .action((what: List, word: string | undefined, options: { units: DisplaySystem }) => {
      io.out(list(engine.catalogues, what, word, options.units));
    });

  program
    .command('schema')
    .description('print the JSON Schema of scenario files, for editors')
    .option('--observations', 'of observation sheets instead')
    .option('--lessons', 'of lessons instead')
    .action(({ observations, lessons }: { observations?: boolean; lessons?: boolean }) => {
      const schema =
        observations === true
          ? engine.observationJsonSchema()
          : lessons === true
            ? engine.lessonJsonSchema()
            : engine.scenarioJsonSchema();
      io.out(`${JSON.stringify(schema, null, 2)}\n`);
    });

  return program;
}

function readList(text: string): List {
  const known: readonly string[] = LISTS;
  if (known.includes(text)) return text as List;
  const near = didYouMean(text, known);
  throw new InvalidArgumentError(`Allowed: ${LISTS.join(', ')}.${near === '' ? '' : ` (${near})`}`);
}
