/** What the cases measure with. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import * as core from '@wheelwell/core';
import ts from 'typescript';

const here = (path) => new URL(path, import.meta.url);

/** Least number of timed runs for a median that is worth printing. */
export const RUNS = 21;

/** { median, low, high, runs }: ms, low and high being the 10 % and 90 % quantiles. */
export function measure(work, { runs = RUNS, warm = 5 } = {}) {
  for (let i = 0; i < warm; i++) work();
  return spread(
    Array.from({ length: runs }, () => {
      const start = performance.now();
      work();
      return performance.now() - start;
    }),
  );
}

/** The same of times taken elsewhere. */
export function spread(times) {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (part) => sorted[Math.round(part * (sorted.length - 1))];
  return { median: at(0.5), low: at(0.1), high: at(0.9), runs: sorted.length };
}

/** Text of `scenarios/NAME/NAME.yaml`, with the file name that messages show. */
export function scenarioText(name) {
  const file = `scenarios/${name}/${name}.yaml`;
  return { file, text: readFileSync(here(`../../${file}`), 'utf8') };
}

/** The scenario read; what is wrong with it ends the bench. */
export function scenario(name) {
  const { file, text } = scenarioText(name);
  const { scenario: read, issues } = core.readScenario(text, { file });
  if (!read) throw new Error(issues.map(core.formatIssue).join('\n'));
  return read;
}

/**
 * A file of tests/support, which is TypeScript, as a module on the compiled core. It is written
 * where `@wheelwell/core` resolves as for any user.
 */
async function support(name) {
  const folder = here('../artefacts/bench/');
  if (!existsSync(folder)) mkdirSync(folder, { recursive: true });
  const source = readFileSync(here(`../support/${name}.ts`), 'utf8');
  const { outputText } = ts.transpileModule(source, {
    compilerOptions: { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022 },
  });
  const file = new URL(`${name}.mjs`, folder);
  writeFileSync(file, outputText);
  return import(file);
}

export const { gearUnits } = await support('gear-units');
const { tell } = await support('golden');

/** Runs a file of tests/bench in fresh processes; the JSON that each prints. */
export function fresh(file, { processes, flags = [] }) {
  return Array.from({ length: processes }, () => {
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      [...flags, fileURLToPath(here(file))],
      { encoding: 'utf8' },
    );
    if (status !== 0) throw new Error(stderr);
    return JSON.parse(stdout);
  });
}

/**
 * Greatest distance of the events of a run from those of another, s, event by event per device,
 * flicker left out as in the golden files; Infinity where they are not the same events.
 */
export function eventError(run, reference) {
  const streams = (r) => {
    const found = new Map();
    for (const e of tell(r).events) {
      const name = `${e.kind} ${e.device}`;
      found.set(name, [...(found.get(name) ?? []), e]);
    }
    return found;
  };
  const [a, b] = [streams(run), streams(reference)];
  let worst = 0;
  let of = '';
  for (const [name, wanted] of b) {
    const found = a.get(name) ?? [];
    if (found.length !== wanted.length) return { worst: Infinity, of: name };
    wanted.forEach((e, i) => {
      const error = found[i].to === e.to ? Math.abs(found[i].t - e.t) : Infinity;
      if (error > worst) [worst, of] = [error, `${e.device} ${e.to}`];
    });
  }
  return { worst, of };
}
