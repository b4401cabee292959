/** Heap and buffers after collections in the course of 1,000 runs, as JSON. See cases/memory.mjs. */
import * as core from '@wheelwell/core';
import { gearUnits } from '../../artefacts/bench/gear-units.mjs';

const swing = gearUnits({ units: 2 });
const used = () => {
  globalThis.gc();
  globalThis.gc();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
};
const after = [];
for (let runs = 1; runs <= 1000; runs++) {
  core.simulate(swing).sampled('u0-leg.angle');
  if (runs === 100 || runs === 400 || runs === 700 || runs === 1000) after.push([runs, used()]);
}
const before = used();
const held = core.simulate(swing);
held.sampled('u0-leg.angle');
const runBytes = used() - before;
console.log(JSON.stringify({ after, runBytes, kept: held.log.length }));
