/**
 * `npm run bench`: runs every file of cases/ on the compiled core and prints a table for each.
 *
 * A case file's default export is a function (or async) that gets the tools below and returns rows:
 *   export default ({ core, measure, scenario }) => {
 *     const swing = scenario('NAME');
 *     return [{ name: '40 s', target: 5, ...measure(() => core.simulate(swing)) }];
 *   };
 * `measure(work, { runs, warm })` gives { median, low, high, runs }: ms, low and high being the
 * 10 % and 90 % quantiles. A row may carry `target` (ms) and further columns of its own.
 * `npm run bench -- WORD` runs the files with WORD in their name; `--save` keeps the medians in
 * baseline.json, and later runs print their ratio to it. Nothing fails for being slow: a missed
 * target is marked, and the reader judges.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import * as core from '@wheelwell/core';

const here = (path) => new URL(path, import.meta.url);
const BASELINE = here('baseline.json');
const save = process.argv.includes('--save');
const word = process.argv.slice(2).find((text) => !text.startsWith('--')) ?? '';

/** Least number of timed runs for a median that is worth printing. */
const RUNS = 21;

function measure(work, { runs = RUNS, warm = 5 } = {}) {
  for (let i = 0; i < warm; i++) work();
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  const at = (part) => times[Math.round(part * (times.length - 1))];
  return { median: at(0.5), low: at(0.1), high: at(0.9), runs };
}

/** Text of `scenarios/NAME/NAME.yaml`, with the file name that messages show. */
function scenarioText(name) {
  const file = `scenarios/${name}/${name}.yaml`;
  return { file, text: readFileSync(here(`../../${file}`), 'utf8') };
}

/** The scenario read; what is wrong with it ends the bench. */
function scenario(name) {
  const { file, text } = scenarioText(name);
  const { scenario: read, issues } = core.readScenario(text, { file });
  if (!read) throw new Error(issues.map(core.formatIssue).join('\n'));
  return read;
}

/** Numbers to four figures, whole ones as they are. */
function shown(value) {
  return typeof value === 'number' && !Number.isInteger(value)
    ? Number(value.toPrecision(4))
    : value;
}

function columns({ name, target, ...own }, before) {
  const all = Object.entries(own).map(([key, value]) => [key, shown(value)]);
  if (target !== undefined) all.push(['target', target], ['met', own.median <= target]);
  if (before !== undefined) all.push(['to baseline', shown(own.median / before)]);
  return Object.fromEntries(all);
}

const machine = `${cpus().length} x ${cpus()[0]?.model ?? 'unknown'}, Node ${process.versions.node}`;
const baseline = existsSync(BASELINE) ? JSON.parse(readFileSync(BASELINE, 'utf8')) : undefined;
console.log(machine);
if (baseline && baseline.machine !== machine) {
  console.log(`The baseline is of another machine (${baseline.machine}): ratios tell little.`);
}

const medians = { ...(baseline?.machine === machine ? baseline.medians : {}) };
const files = readdirSync(here('cases/')).filter((file) => file.includes(word));
for (const file of files.sort()) {
  const { default: bench } = await import(here(`cases/${file}`));
  const title = file.replace(/\.mjs$/, '');
  const table = {};
  for (const row of await bench({ core, measure, scenario, scenarioText })) {
    const key = `${title}: ${row.name}`;
    table[row.name] = columns(row, baseline?.medians[key]);
    if (row.median !== undefined) medians[key] = row.median;
  }
  console.log(`\n${title} (times in ms)`);
  console.table(table);
}
if (save) writeFileSync(BASELINE, `${JSON.stringify({ machine, medians }, null, 2)}\n`);
