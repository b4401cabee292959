/** How many lanes of the order chart are shown. */
import type { Picture } from '../worker/message.js';
import { devicesOf } from './bearers.js';
import { causesOf, effectsOf } from './history.js';
import { lanes } from './lanes.js';
import type { Lane } from './lanes.js';
import type { Selection } from './state.js';

/** gear: phases, lever, legs, doors and their locks; working: whatever does something; all: the rest too. */
export const DEPTHS = ['gear', 'working', 'all'] as const;
export type Depth = (typeof DEPTHS)[number];

/** What is flagged, picked out or named in `also` is shown at any depth, with the causes that lead to it. */
export function lanesAt(
  picture: Picture,
  depth: Depth,
  selection: Selection,
  also: readonly string[] = [],
): readonly Lane[] {
  const all = lanes(picture);
  if (depth === 'all') return all;
  const wanted = [...also, ...involved(picture, selection)];
  const main = new Set(picture.units.flatMap((u) => [u.leg, ...u.doors, u.uplock, u.downlock]));
  const coarse = (l: Lane): boolean =>
    l.heading ||
    main.has(l.name) ||
    picture.devices.some((d) => d.name === l.name && d.lever) ||
    l.flags.some((i) => picture.flags[i]?.severity !== 'note');
  return all.filter(
    (l) => wanted.includes(l.name) || (!l.quiet && (depth === 'working' || coarse(l))),
  );
}

/** Names the selection is about. */
function involved(picture: Picture, selection: Selection): readonly string[] {
  if (selection.kind === 'flag') {
    const flag = picture.flags[selection.index];
    return flag === undefined ? [] : devicesOf(picture, flag);
  }
  if (selection.kind === 'part') return [selection.name];
  if (selection.kind === 'none') return [];
  const { index } = selection;
  const { log } = picture;
  return [index, ...causesOf(log, index), ...effectsOf(log, index)].map(
    (i) => log[i]?.device ?? '',
  );
}
