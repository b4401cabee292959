/** Times of the first doings of a process, ms, as JSON. See cases/cold.mjs. */
import { readFileSync } from 'node:fs';

const start = performance.now();
const core = await import('@wheelwell/core');
const loaded = performance.now();
const { gearUnits } = await import('../../artefacts/bench/gear-units.mjs');
const swing = gearUnits({ units: 2 });
const file = 'scenarios/hedgelark/hedgelark.yaml';
const text = readFileSync(new URL(`../../../${file}`, import.meta.url), 'utf8');

const clock = (work) => {
  const from = performance.now();
  work();
  return performance.now() - from;
};
const times = { load: loaded - start, run: clock(() => core.simulate(swing)) };
let demo;
times.read = clock(() => ({ scenario: demo } = core.readScenario(text, { file })));
times.demo = clock(() => core.simulate(demo));
console.log(JSON.stringify(times));
