/** The lanes of the order chart, from the picture: which there are, what each shows. */
import type { LogEntry, Picture } from '../worker/message.js';
import { devicesOf } from './bearers.js';
import { entriesOf, isStart, stretches } from './history.js';
import type { Stretch } from './history.js';

/** How a stretch is drawn: the sign of what the part does. */
export type Doing = 'rising' | 'falling' | 'working' | 'held' | 'rest';

export interface Bar extends Stretch {
  readonly doing: Doing;
}

export interface Lane {
  readonly name: string;
  /** A heading lane shows a unit's phases; the others one device or mechanism. */
  readonly heading: boolean;
  /** Each state is told by its word, those at rest too: phases, states of a controller. */
  readonly worded: boolean;
  readonly bars: readonly Bar[];
  readonly events: readonly LogEntry[];
  /** Indices of the flags pinned here. */
  readonly flags: readonly number[];
  /** Nothing happens on it in this run. */
  readonly quiet: boolean;
}

/** Name the log uses for the gear as a whole; heads the lanes that belong to no unit. */
export const GEAR = 'gear';

const known = new WeakMap<Picture, readonly Lane[]>();

/** In order: what is shared, then each unit with its parts. Kept for as long as the picture lives. */
export function lanes(picture: Picture): readonly Lane[] {
  const list = known.get(picture) ?? findLanes(picture);
  known.set(picture, list);
  return list;
}

function findLanes(picture: Picture): Lane[] {
  const claimed = new Set<string>();
  const groups: Lane[] = [];
  for (const unit of picture.units) {
    // A jack that locks itself is both an actuator and a lock.
    const members = [
      ...new Set([unit.leg, ...unit.doors, unit.uplock, unit.downlock, ...unit.others]),
    ].filter((n) => n !== '' && !claimed.has(n));
    members.forEach((m) => claimed.add(m));
    claimed.add(unit.name);
    groups.push(lane(picture, unit.name, true), ...members.map((m) => lane(picture, m, false)));
  }
  const rest = picture.devices
    .filter((d) => !claimed.has(d.name))
    .map((d) => lane(picture, d.name, false));
  return pinned([lane(picture, GEAR, true), ...rest, ...groups], picture);
}

/** A flag is pinned on the first of its devices that has a lane, else on the shared heading. */
function pinned(all: readonly Lane[], picture: Picture): Lane[] {
  const { flags } = picture;
  const home = flags.map((f) => {
    const at = devicesOf(picture, f).map((d) => all.findIndex((l) => l.name === d));
    return at.find((i) => i >= 0) ?? 0;
  });
  return all.map((l, i) => {
    const here = home.flatMap((h, f) => (h === i ? [f] : []));
    const marked = here.some((f) => flags[f]?.severity !== 'note');
    return { ...l, flags: here, quiet: l.quiet && !marked };
  });
}

function lane(picture: Picture, name: string, heading: boolean): Lane {
  const events = entriesOf(picture, name).filter((e) => !isStart(e));
  const motion = stretches(picture, name, 'motion');
  const list = heading
    ? stretches(picture, name, 'phase')
    : motion.length > 0
      ? motion
      : stretches(picture, name, 'mode');
  const device = picture.devices.find((d) => d.name === name);
  const active = device?.active ?? [];
  const isLock = picture.units.some((u) => u.uplock === name || u.downlock === name);
  const doing = (state: string): Doing => {
    if (heading) return phaseDoing(state);
    // Which way the selector stands matters as much as that it shifts.
    if (device?.role === 'selector') return state === 'neutral' ? 'rest' : 'working';
    // A lock works while it holds, whatever kind it is.
    if (isLock && state.startsWith('locked ')) return 'working';
    return partDoing(state, active);
  };
  const bars = list.map((s): Bar => ({ ...s, doing: doing(s.state) }));
  const worded = heading || device?.role === 'control';
  return { name, heading, worded, bars, events, flags: [], quiet: !heading && events.length === 0 };
}

function partDoing(state: string, active: readonly string[]): Doing {
  if (state === 'rising' || state === 'falling' || state === 'held') return state;
  return active.includes(state) ? 'working' : 'rest';
}

const PHASES: Readonly<Record<string, Doing>> = {
  moving: 'working',
  'travelling up': 'rising',
  'travelling down': 'falling',
  unlocking: 'working',
  'doors opening': 'working',
  'doors closing': 'working',
  'up not locked': 'working',
  'down not locked': 'working',
  stopped: 'held',
};

function phaseDoing(state: string): Doing {
  return PHASES[state] ?? 'rest';
}
