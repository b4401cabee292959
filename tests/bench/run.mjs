/**
 * `npm run bench`: runs every file of cases/ on the compiled core and prints a table for each.
 *
 * A case file's default export is a function (or async) that gets the tools of tools.mjs, and
 * `core`, and returns rows:
 *   export default ({ core, measure, scenario }) => {
 *     const swing = scenario('NAME');
 *     return [{ name: '40 s', target: { median: 5 }, ...measure(() => core.simulate(swing)) }];
 *   };
 * A row may carry columns of its own; `target` names the most that a column should be.
 * `npm run bench -- WORD` runs the files with WORD in their name; `--save` keeps the medians in
 * baseline.json, and later runs print their ratio to it. Nothing fails for being slow: a missed
 * target is marked, and the reader judges.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import * as core from '@wheelwell/core';
import * as tools from './tools.mjs';

const here = (path) => new URL(path, import.meta.url);
const BASELINE = here('baseline.json');
const save = process.argv.includes('--save');
const word = process.argv.slice(2).find((text) => !text.startsWith('--')) ?? '';

/** Numbers to four figures, whole ones as they are. */
function shown(value) {
  return typeof value === 'number' && !Number.isInteger(value)
    ? Number(value.toPrecision(4))
    : value;
}

function columns({ name, target, ...own }, before) {
  const all = Object.entries(own).map(([key, value]) => [key, shown(value)]);
  if (target !== undefined) {
    const parts = Object.entries(target);
    all.push(['target', parts.map(([key, most]) => `${key} <= ${most}`).join(', ')]);
    all.push(['met', parts.every(([key, most]) => own[key] <= most)]);
  }
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
  for (const row of await bench({ core, ...tools })) {
    const key = `${title}: ${row.name}`;
    table[row.name] = columns(row, baseline?.medians[key]);
    if (row.median !== undefined) medians[key] = row.median;
  }
  console.log(`\n${title} (times in ms)`);
  console.table(table);
}
if (save) writeFileSync(BASELINE, `${JSON.stringify({ machine, medians }, null, 2)}\n`);
