/** What happens next: the next event of the run, and plausible ones that do not come next. */
import type { LogEntry, Run } from '../define/run.js';
import { settle } from '../report/settled.js';
import { chain, kin, margins } from './explain.js';
import { wordsOf } from './check-step.js';
import type { LessonChoice, PredictStep, PreparedStep } from './lesson.js';
import { because, isEvent, phrase, plain, shuffled, timeOf, type Stage } from './stage.js';

/** Events that follow the next one more closely are not offered: nobody could tell which comes first, s. */
const TOO_CLOSE = 0.1;
const MOST_LATER = 2;
const LEAST_WRONG = 2;
const NOTHING = 'nothing';

export interface Made extends Pick<PreparedStep, 'question' | 'choices' | 'right' | 'told'> {
  readonly stop?: number;
}

type Path = readonly (string | number)[];

/** Undefined, with an issue, when the run has nothing to ask. */
export function predict(stage: Stage, step: PredictStep, path: Path): Made | undefined {
  const run = stage.play(step);
  const now = timeOf(run, step.moment);
  if (now === undefined) {
    stage.issues.add([...path, step.moment.after === undefined ? 'at' : 'after'], {
      message: 'this moment does not come in the run',
      found:
        step.moment.after === undefined ? `${step.moment.at} s` : 'an event that never happens',
    });
    return undefined;
  }
  const all = told(run, step.of);
  const later = all.filter((e) => e.t > now + 1e-6);
  const next = later.at(0);
  const nothing: LessonChoice = {
    id: NOTHING,
    text: `Nothing more happens${step.of.length > 0 ? ' to these' : ''} in this run`,
    told:
      next === undefined
        ? 'The run ends as it stands.'
        : `Something does, ${(next.t - now).toFixed(2)} s on.`,
  };
  const nextChoice =
    next === undefined ? nothing : choiceOf(stage, next, tellNext(stage, next, now));
  const likely = [
    ...(next === undefined ? [] : laterOnes(stage, later, next, now)),
    ...neverOnes(stage, run, all, next, now),
  ];
  const wrong = [
    ...likely,
    ...others(stage, run, step, likely, now).slice(0, LEAST_WRONG - likely.length),
  ];
  if (wrong.length === 0)
    stage.issues.add(path, {
      message: 'nothing else could be meant here: there is nothing to choose from',
      hint: 'name more parts under of, or choose another moment',
    });
  const choices = [nextChoice, ...wrong, ...(next === undefined ? [] : [nothing])];
  return {
    question: asked(step),
    stop: now,
    choices: shuffled(choices, `${step.card} ${now.toFixed(2)}`),
    right: [nextChoice.id],
    told:
      next === undefined
        ? [
            {
              text: 'Nothing more happens to these until the run ends',
              t: run.outcome.time,
              sort: 'event',
            },
          ]
        : [
            ...chain(stage, run, next),
            ...margins(stage, run, kin(stage, [next.device]), next.t, next.t),
          ],
  };
}

function asked({ text, of }: PredictStep): string {
  if (text !== '') return text;
  if (of.length === 0) return 'What happens next?';
  return `What happens next: ${of.map(plain).join(', ')}?`;
}

/** What one would tell of the run, of these devices: no acts of the operator, no phases unless asked. */
function told(run: Run, of: readonly string[]): LogEntry[] {
  return settle(run, false)
    .changes.map((c) => c.entry)
    .filter(
      (e) =>
        isEvent(e) &&
        (of.length === 0 ? e.kind === 'mode' || e.kind === 'motion' : of.includes(e.device)) &&
        e.kind !== 'operator' &&
        e.kind !== 'note' &&
        e.to !== 'to and fro',
    );
}

const idOf = (e: { device: string; to: string }): string => `${e.device} ${e.to}`;

function choiceOf(stage: Stage, e: { device: string; to: string }, say: string): LessonChoice {
  return { id: idOf(e), text: capital(phrase(stage, e.device, e.to)), told: say };
}

function tellNext(stage: Stage, e: LogEntry, now: number): string {
  return `${(e.t - now).toFixed(2)} s later, because ${because(stage, e.cause)}.`;
}

/** What comes later, of other parts first: the nearest are the likeliest mistakes. */
function laterOnes(
  stage: Stage,
  later: readonly LogEntry[],
  next: LogEntry,
  now: number,
): LessonChoice[] {
  const close = new Set(later.filter((e) => e.t <= next.t + TOO_CLOSE).map(idOf));
  const seen = new Set<string>();
  const out: LessonChoice[] = [];
  for (const e of later) {
    if (close.has(idOf(e)) || seen.has(e.device) || out.length === MOST_LATER) continue;
    seen.add(e.device);
    out.push(choiceOf(stage, e, `This comes later, ${(e.t - now).toFixed(2)} s on.`));
  }
  return out;
}

/** What the next part, or another that could have moved, does at other times, but not from here on. */
function neverOnes(
  stage: Stage,
  run: Run,
  all: readonly LogEntry[],
  next: LogEntry | undefined,
  now: number,
): LessonChoice[] {
  const coming = new Set(all.filter((e) => e.t > now).map(idOf));
  const before = all.filter((e) => e.t <= now && !coming.has(idOf(e)));
  // The last thing each part did, the part in question first: taken back, as it were.
  const opposite = opposites(run, next?.device ?? before.at(-1)?.device, coming, now);
  const past = [...before]
    .reverse()
    .filter((e) => e.device !== opposite?.device)
    .filter((e) => stateOf(run, e.device, now) !== e.to);
  return [
    ...(opposite === undefined
      ? []
      : [choiceOf(stage, opposite, 'That does not come any more in this run.')]),
    ...past
      .slice(0, next === undefined ? 2 : 1)
      .map((e) => choiceOf(stage, e, `That was before, at ${e.t.toFixed(2)} s.`)),
  ];
}

/** Other states of the parts in question that never come from here on, to have enough to choose from. */
function others(
  stage: Stage,
  run: Run,
  { of }: PredictStep,
  known: readonly LessonChoice[],
  now: number,
): LessonChoice[] {
  if (known.length >= LEAST_WRONG) return [];
  return of.flatMap((device) => {
    const coming = run.log.filter((e) => e.device === device && e.t > now).map((e) => e.to);
    const there = [...coming, stateOf(run, device, now), 'held'];
    return wordsOf(stage, device)
      .filter((to) => !there.includes(to) && !known.some((c) => c.id === idOf({ device, to })))
      .slice(0, 1)
      .map((to) => choiceOf(stage, { device, to }, 'That does not come in this run.'));
  });
}

const OPPOSITE: Readonly<Record<string, string>> = {
  rising: 'falling',
  falling: 'rising',
  open: 'closed',
  closed: 'open',
  engaged: 'open',
};

function opposites(
  run: Run,
  device: string | undefined,
  coming: ReadonlySet<string>,
  now: number,
): { device: string; to: string } | undefined {
  if (device === undefined) return undefined;
  const next =
    run.log.find((e) => e.device === device && e.t > now)?.to ?? stateOf(run, device, now);
  const to = OPPOSITE[next];
  const known = run.log.some((e) => e.device === device && e.to === to);
  if (to === undefined || !known || coming.has(`${device} ${to}`)) return undefined;
  return stateOf(run, device, now) === to ? undefined : { device, to };
}

function stateOf(run: Run, device: string, time: number): string {
  return run.log.findLast((e) => e.device === device && e.t <= time)?.to ?? '';
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
