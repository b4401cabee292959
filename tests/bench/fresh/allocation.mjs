/** Heap taken by a run with few and by one with many steps, as JSON. See cases/allocation.mjs. */
import * as core from '@wheelwell/core';
import { gearUnits } from '../../artefacts/bench/gear-units.mjs';

const swing = gearUnits({ units: 2 });
const few = {};
const many = { relativeTolerance: 2e-4 };
// Code that is not yet compiled to the end puts every number on the heap.
for (let i = 0; i < 60; i++) for (const o of [few, many]) core.simulate(swing, o);

function heap(options) {
  const found = [];
  let statistics;
  while (found.length < 11) {
    const before = process.memoryUsage().heapUsed;
    ({ statistics } = core.simulate(swing, options));
    const bytes = process.memoryUsage().heapUsed - before;
    // Less than nothing: there was a collection in between.
    if (bytes > 0) found.push(bytes);
  }
  const { steps, rejected, transitions } = statistics;
  const bytes = found.sort((a, b) => a - b)[5];
  return { bytes, steps, tries: steps + rejected, transitions };
}
console.log(JSON.stringify({ few: heap(few), many: heap(many) }));
