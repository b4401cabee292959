/**
 * The first run of a fresh process. `first run` has in it: compiling the network and the whole
 * 40 s run, all code cold. Not in it: starting Node, loading the modules, reading the file; they
 * have their own rows.
 */
export default ({ fresh, spread }) => {
  const found = fresh('fresh/first-run.mjs', { processes: 21 });
  const of = (what) => spread(found.map((times) => times[what]));
  return [
    { name: 'first run, two sides', ...of('run'), target: { median: 100 } },
    { name: 'loading the modules', ...of('load') },
    { name: 'reading the demo, first time', ...of('read') },
    { name: 'first run of the demo after it', ...of('demo') },
  ];
};
