/**
 * `npm run bench`: runs every file of cases/ on the compiled core and prints one table.
 *
 * A case file's default export is a function (or async) that gets `measure` and returns rows:
 *   export default ({ measure, core, scenario }) => [
 *     { name: 'swing 40 s, normal', ...measure(() => core.simulate(scenario('NAME'))), target: 5 },
 *   ];
 * `measure(work, { runs, warm })` gives { median, low, high } in ms. A row may carry `target` (ms)
 * and further columns of its own. `npm run bench -- WORD` runs the files with WORD in their name.
 * Nothing here fails for being slow: a missed target is marked, and the reader judges.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { cpus } from 'node:os';

const here = (path) => new URL(path, import.meta.url);
const word = process.argv[2] ?? '';

/** Least number of timed runs for a median that is worth printing. */
const RUNS = 21;

function measure(work, { runs = RUNS, warm = 5 } = {}) {
  for (let i = 0; i < warm; i++) work();
  const times = Array.from({ length: Math.max(runs, 1) }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  const at = (part) => times[Math.round(part * (times.length - 1))];
  return { median: at(0.5), low: at(0.1), high: at(0.9), runs: times.length };
}

const core = await import('@wheelwell/core');

/** Reads `scenarios/NAME/NAME.yaml`; what is wrong with it ends the bench. */
function scenario(name) {
  const file = `scenarios/${name}/${name}.yaml`;
  const text = readFileSync(here(`../../${file}`), 'utf8');
  const { scenario: read, issues } = core.readScenario(text, { file });
  if (!read) throw new Error(issues.map(core.formatIssue).join('\n'));
  return read;
}

function cell(value) {
  if (typeof value !== 'number') return value ?? '';
  if (Number.isInteger(value)) return value;
  return Number(value.toPrecision(4));
}

const cases = here('cases/');
const files = (existsSync(cases) ? readdirSync(cases) : [])
  .filter((name) => name.endsWith('.mjs') && name.includes(word))
  .sort();
console.log(`Node ${process.versions.node}, ${cpus().length} x ${cpus()[0]?.model ?? 'unknown'}`);
if (files.length === 0) console.log(`No case file in tests/bench/cases has '${word}' in its name.`);

for (const file of files) {
  const { default: bench } = await import(here(`cases/${file}`));
  const rows = await bench({ measure, core, scenario });
  console.log(`\n${file.replace(/\.mjs$/, '')} (times in ms)`);
  console.table(
    Object.fromEntries(
      rows.map(({ name, target, ...columns }) => {
        const shown = Object.entries(columns).map(([key, value]) => [key, cell(value)]);
        if (target !== undefined) {
          shown.push(['target', target], ['met', columns.median <= target ? 'yes' : 'NO']);
        }
        return [name, Object.fromEntries(shown)];
      }),
    ),
  );
}
