/** On a thread of its own: the cases of one aircraft that stand under the same conditions. */
import * as core from '@wheelwell/core';
import { caseOf } from './case.mjs';
import { keep, kept } from './kept.mjs';
import { judged } from './loop.mjs';
import { misread } from './misread.mjs';
import { generator, seedOf } from './random.mjs';

/** So often what was played is kept, s, should the bench be stopped. */
const OFTEN = 60;

export default async function play({
  name,
  file,
  text,
  situation,
  cases,
  key,
  loop,
  wrong,
  both,
  port,
}) {
  const { scenario } = core.readScenario(text, { file });
  const store = `${name}-${situation}`;
  const memory = kept(key, store);
  let saved = { size: memory.size, at: performance.now() };
  const save = () => {
    if (memory.size > saved.size) keep(key, store, memory);
    saved = { size: memory.size, at: performance.now() };
  };
  const results = [];
  for (const i of cases) {
    const start = performance.now();
    const one = caseOf(core, scenario, name, i, { both });
    if (one === undefined) continue;
    const sheet = wrong ? misread(one.sheet, generator(seedOf(name, i, 'misread'))) : one.sheet;
    const found = await judged(core, scenario, { ...one, sheet }, { memory, loop });
    results.push({
      name,
      i,
      kind: one.kind.name,
      truth: one.truth,
      second: one.second,
      ...found,
      seconds: (performance.now() - start) / 1e3,
    });
    if (performance.now() - saved.at > OFTEN * 1e3) save();
    port.postMessage({ situation, of: cases.length, done: results.length, result: results.at(-1) });
  }
  port.close();
  save();
  return results;
}
