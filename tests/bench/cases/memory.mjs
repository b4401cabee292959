/** Heap in use after a collection, while runs are made and let go. Flat: no growth worth a run. */
export default ({ fresh }) => {
  const [{ after, runBytes }] = fresh('fresh/memory.mjs', {
    processes: 1,
    flags: ['--expose-gc'],
  });
  const [, first] = after[0];
  return after.map(([runs, bytes]) => ({
    name: `after ${runs} runs`,
    'heap and buffers, MB': bytes / 1e6,
    'growth, MB': (bytes - first) / 1e6,
    'one run held, MB': runBytes / 1e6,
    // A tenth of one run: nothing of a thousand is kept.
    ...(runs === after.at(-1)[0] ? { target: { 'growth, MB': runBytes / 1e7 } } : {}),
  }));
};
