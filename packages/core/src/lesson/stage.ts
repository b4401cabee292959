/** What questions are made from: the scenario, its runs, and where problems are told. */
import type { Catalogues } from '../define/catalogue.js';
import type { LogEntry, Run } from '../define/run.js';
import type { Scenario } from '../define/scenario.js';
import type { IssueList } from '../scenario/issue-list.js';
import type { LessonEvent, Moment, Scene } from './lesson.js';

export interface Stage {
  readonly scenario: Scenario;
  readonly catalogues: Catalogues;
  /** The run of a scene, made once. */
  readonly play: (scene: Scene) => Run;
  readonly issues: IssueList;
}

/** Entries that tell how things stood at the start are states, not events. */
export function isEvent(e: LogEntry): boolean {
  return !(e.from === '' && e.t === 0);
}

/** The nth time something enters a state, from an entry of the log on. */
export function eventOf(
  run: Run,
  { device, to, nth }: LessonEvent,
  from = 0,
): LogEntry | undefined {
  return run.log.filter((e) => e.t >= from && isEvent(e) && e.device === device && e.to === to)[
    nth - 1
  ];
}

/** When a moment comes, s; undefined when its event never happens or the run ends before. */
export function timeOf(run: Run, { at, after }: Moment): number | undefined {
  const start = after === undefined ? 0 : eventOf(run, after)?.t;
  const t = start === undefined ? NaN : start + at;
  return t <= run.outcome.time ? t : undefined;
}

/** 'left-leg' as one says it. */
export function plain(name: string): string {
  return name.replace(/-/g, ' ');
}

/** Modes that are places, not properties: one goes to them. */
const PLACES: readonly string[] = ['up', 'down', 'neutral', 'normal', 'emergency'];

/** Something entering a state, as a sentence without its end: 'left door is open', 'left leg starts up'. */
export function phrase({ scenario, catalogues }: Stage, device: string, to: string): string {
  const who = plain(device);
  const mechanism = Object.hasOwn(scenario.mechanisms, device)
    ? catalogues.mechanisms[scenario.mechanisms[device].is]
    : undefined;
  if (mechanism === undefined) return `${who} ${PLACES.includes(to) ? 'goes to' : 'is'} ${to}`;
  const [low, high] = mechanism.ends;
  if (to === 'rising' || to === 'falling') {
    const end = to === 'rising' ? high : low;
    if (mechanism.role === 'leg') return `${who} starts ${end}`;
    if (mechanism.role === 'door') return `${who} starts to ${end === 'open' ? 'open' : 'close'}`;
    return `${who} starts towards ${end}`;
  }
  return to === 'held' ? `${who} stops part way` : `${who} is ${to.replace(/^at /, '')}`;
}

/** An entry of the log in the same words; an act of the operator as one. */
export function say(stage: Stage, { kind, device, to }: LogEntry): string {
  return kind === 'operator' ? `${plain(device)} is set to ${to}` : phrase(stage, device, to);
}

/** A cause in plain words: names as one says them. */
export function because({ scenario }: Stage, cause: string): string {
  const named = (name: string): boolean =>
    [scenario.components, scenario.mechanisms, scenario.units].some((all) =>
      Object.hasOwn(all, name),
    );
  return cause.replace(/\b[a-z0-9]+(?:-[a-z0-9]+)+\b/g, (word) =>
    named(word) ? plain(word) : word,
  );
}

/** An order that tells nothing and is the same every time: by a number made of the words. */
export function shuffled<T extends { readonly id: string }>(all: readonly T[], seed: string): T[] {
  const number = (text: string): number => {
    let h = 2166136261;
    for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 16777619);
    // Neighbouring words must not stay neighbours.
    h = Math.imul(h ^ (h >>> 15), 2246822519);
    return (h ^ (h >>> 13)) >>> 0;
  };
  return [...all].sort((a, b) => number(seed + a.id) - number(seed + b.id));
}
