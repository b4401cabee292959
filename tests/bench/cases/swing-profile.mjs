/**
 * Where the time of the two-sided swing goes: shares by room and by the dearest files, from a
 * sampling profile of warm runs on the core as compiled, file by file.
 */
import { Session } from 'node:inspector/promises';

const core = await import('../../../packages/core/dist/index.js');
const RUNS = 150;
const ROOM = /\/dist\/(\w+)\/(?:.*\/)?([\w-]+)\.js$/;

export default async ({ gearUnits }) => {
  const swing = gearUnits({ units: 2 });
  for (let i = 0; i < 60; i++) core.simulate(swing);
  const session = new Session();
  session.connect();
  await session.post('Profiler.enable');
  await session.post('Profiler.setSamplingInterval', { interval: 200 });
  await session.post('Profiler.start');
  for (let i = 0; i < RUNS; i++) core.simulate(swing);
  const { profile } = await session.post('Profiler.stop');
  session.disconnect();

  const nodes = new Map(profile.nodes.map((node) => [node.id, node.callFrame]));
  const rooms = new Map();
  const files = new Map();
  let all = 0;
  const add = (map, key, time) => map.set(key, (map.get(key) ?? 0) + time);
  profile.samples.forEach((id, i) => {
    const { functionName, url } = nodes.get(id);
    const time = profile.timeDeltas[i];
    all += time;
    const found = ROOM.exec(url);
    add(
      rooms,
      found?.[1] ?? (functionName.startsWith('(garbage') ? 'collecting garbage' : 'other'),
      time,
    );
    if (found) add(files, `${found[1]}/${found[2]}`, time);
  });
  const rows = (map, most) =>
    [...map]
      .sort((a, b) => b[1] - a[1])
      .slice(0, most)
      .map(([name, time]) => ({
        name,
        'us per run': time / RUNS,
        'share, %': (100 * time) / all,
      }));
  return [...rows(rooms, Infinity), ...rows(files, 12)];
};
