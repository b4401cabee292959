/** A lesson under way: its steps, where the student is, what was answered. */
import type { Lesson, LessonPlan, PreparedStep } from '../worker/lesson-message.js';
import type { Issue } from '../worker/message.js';

/** What was answered to a step. */
export interface Answer {
  /** Ids of the choices given last: one, or all in the order given. */
  readonly given: readonly string[];
  readonly right: boolean;
  readonly tries: number;
  /** Right, or shown: the run may be seen. */
  readonly settled: boolean;
  /** Checks made. */
  readonly checks: readonly string[];
  /** When it was last answered, ISO; empty before. */
  readonly when: string;
}

/** A lesson being written, as a file and as its runs bear it out. */
export interface Checked {
  readonly text: string;
  readonly steps: readonly PreparedStep[];
  readonly issues: readonly Issue[];
}

export interface LessonState {
  readonly file: string;
  readonly text: string;
  /** none: nothing opened; waiting: its runs are being made; ready; refused: see issues. */
  readonly phase: 'none' | 'waiting' | 'ready' | 'refused';
  /** Steps made ready, and of how many. */
  readonly progress: readonly [number, number];
  readonly plan: LessonPlan | undefined;
  readonly issues: readonly Issue[];
  /** Why it could not be made ready; empty when all is well. */
  readonly failure: string;
  readonly at: number;
  readonly answers: readonly Answer[];
  /** Name to go with the results; stays on this machine. */
  readonly who: string;
  /** The other run of a comparison is on show. */
  readonly other: boolean;
  /** The lesson being written; undefined while one is taken. */
  readonly draft: Lesson | undefined;
  /** What `undo` goes back to, latest last. */
  readonly past: readonly Lesson[];
  /** What the runs say of the lesson being written; undefined while they are asked. */
  readonly checked: Checked | undefined;
}

export const NO_LESSON: LessonState = {
  file: '',
  text: '',
  phase: 'none',
  progress: [0, 0],
  plan: undefined,
  issues: [],
  failure: '',
  at: 0,
  answers: [],
  who: '',
  other: false,
  draft: undefined,
  past: [],
  checked: undefined,
};

export const UNANSWERED: Answer = {
  given: [],
  right: false,
  tries: 0,
  settled: false,
  checks: [],
  when: '',
};

export function stepAt({ plan, at }: LessonState): PreparedStep | undefined {
  return plan?.steps[at];
}

export function answerAt({ answers, at }: LessonState): Answer {
  return answers[at] ?? UNANSWERED;
}

export function isQuestion(step: PreparedStep): boolean {
  return step.kind !== 'tell';
}

/** A question that waits for its answer. */
export function isOpen(step: PreparedStep, answer: Answer): boolean {
  return isQuestion(step) && !answer.settled;
}

export interface Score {
  readonly right: number;
  /** Right at the first try. */
  readonly first: number;
  readonly settled: number;
  readonly of: number;
}

export function scoreOf({ plan, answers }: LessonState): Score {
  const asked = (plan?.steps ?? []).flatMap((step, i) =>
    isQuestion(step) ? [answers[i] ?? UNANSWERED] : [],
  );
  return {
    right: asked.filter((a) => a.right).length,
    first: asked.filter((a) => a.right && a.tries === 1).length,
    settled: asked.filter((a) => a.settled).length,
    of: asked.length,
  };
}

/** How many of an order given stand in their place. */
export function inPlace(step: PreparedStep, given: readonly string[]): number {
  return given.filter((id, i) => id === step.right[i]).length;
}
