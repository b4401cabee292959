/** Steps made from the run on show at the play head: which card, which moment, what comes next. */
import type { EventPattern, LessonStep, Moment, Scene } from '../worker/lesson-message.js';
import type { LogEntry, Picture } from '../worker/message.js';
import { isStart } from './history.js';
import { plain, seconds } from './sentence.js';
import type { State } from './state.js';

export type Kind = LessonStep['kind'];
export const KINDS: readonly Kind[] = ['tell', 'predict', 'arrange', 'find', 'compare'];
export const KIND_WORD: Readonly<Record<Kind, string>> = {
  tell: 'Words',
  predict: 'What comes next',
  arrange: 'Put in order',
  find: 'Hidden fault',
  compare: 'Compare two runs',
};

/** The play head and what is picked out. */
export type Here = Pick<State, 'time' | 'selection'> & { readonly picture: Picture };

/** Events to begin an order with. */
const FIRST_EVENTS = 4;
/** What lies closer than this is no order to ask for, s. */
const APART = 2e-3;
const FIRST_BUDGET = 3;

export function sceneHere({ picture }: Here): Scene {
  const own = picture.cards.find((c) => c.name === picture.card)?.faults ?? [];
  const { card, faults } = picture;
  return JSON.stringify(own) === JSON.stringify(faults) ? { card } : { card, faults };
}

/** The event picked out where the play head stands; else the time alone. */
export function momentHere(here: Here): Moment {
  const e = pickedHere(here);
  if (e === undefined) return { at: Math.round(here.time * 1000) / 1000 };
  const same = here.picture.log.filter(
    (o) => !isStart(o) && o.device === e.device && o.to === e.to && o.index <= e.index,
  );
  return { at: 0, after: { device: e.device, to: e.to, nth: same.length } };
}

/** The event picked out where the play head stands. */
export function pickedHere({ picture, time, selection }: Here): LogEntry | undefined {
  const e = selection.kind === 'event' ? picture.log[selection.index] : undefined;
  return e !== undefined && !isStart(e) && Math.abs(e.t - time) < 1e-9 ? e : undefined;
}

export function stepHere(kind: Kind, here: Here): LessonStep {
  const scene = sceneHere(here);
  const frame = { ...scene, text: '', why: '' };
  switch (kind) {
    case 'tell':
      return { kind, ...scene, text: '', moment: momentHere(here) };
    case 'predict':
      return { kind, ...frame, moment: momentHere(here), of: [] };
    case 'arrange':
      return { kind, ...frame, moment: momentHere(here), events: eventsAfter(here) };
    case 'find':
      return {
        kind,
        ...frame,
        faults: here.picture.faults,
        budget: FIRST_BUDGET,
        of: [],
        suspects: [],
      };
    case 'compare':
      return {
        kind,
        ...frame,
        with: { card: scene.card, faults: [] },
        measure: { time: 'up', unit: '' },
      };
  }
}

/** The next events of legs, doors, locks and their valves; in the order of their names, which tells nothing. */
export function eventsAfter({ picture, time }: Here): EventPattern[] {
  const names = new Set(partsOf(picture));
  const out: LogEntry[] = [];
  for (const e of picture.log) {
    if (out.length === FIRST_EVENTS) break;
    if (isStart(e) || e.t <= time || e.kind === 'phase' || !names.has(e.device)) continue;
    const last = out.at(-1);
    if (out.some((o) => o.device === e.device && o.to === e.to)) continue;
    if (last === undefined || e.t - last.t >= APART) out.push(e);
  }
  const name = (e: EventPattern): string => `${e.device} ${e.to}`;
  return out.map(({ device, to }) => ({ device, to })).sort((a, b) => (name(a) < name(b) ? -1 : 1));
}

/** Parts that a question may be about: what belongs to the units first. */
export function partsOf(picture: Picture): string[] {
  const own = picture.units.flatMap((u) => [u.leg, ...u.doors, u.uplock, u.downlock, ...u.others]);
  return [...new Set([...own, ...picture.devices.map((d) => d.name)])].filter((n) => n !== '');
}

/** A moment in words. */
export function momentWords(moment: Moment | undefined): string {
  if (moment === undefined) return 'nowhere';
  const { at, after } = moment;
  if (after === undefined) return `at ${seconds(at)}`;
  const nth = after.nth > 1 ? ` for the ${after.nth}. time` : '';
  const late = at > 0 ? `${seconds(at)} after ` : 'as ';
  return `${late}${plain(after.device)} becomes ${after.to}${nth}`;
}

/** A run in words. */
export function sceneWords(scene: Scene, picture: Picture | undefined): string {
  const title = picture?.cards.find((c) => c.name === scene.card)?.title ?? scene.card;
  if (scene.faults === undefined) return title;
  if (scene.faults.length === 0) return `${title}, no fault`;
  return `${title}, with ${scene.faults.map((f) => `${plain(f.fault)} on ${plain(f.on)}`).join(' and ')}`;
}
