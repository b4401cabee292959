/** What a lesson is: steps on runs of one scenario. No step holds an answer; answers are made from the runs. */
import type { Quantity } from '../define/parameter.js';
import type { EventPattern, FaultEntry } from '../define/scenario.js';

/** A run of the lesson's scenario. */
export interface Scene {
  readonly card: string;
  /** In place of the card's own faults; those when absent. */
  readonly faults?: readonly FaultEntry[];
}

/** An event by what enters what, and for which time. */
export interface LessonEvent extends EventPattern {
  /** 1 for the first time it happens. */
  readonly nth: number;
}

/** A moment of a run: a time, or a delay after an event, s. */
export interface Moment {
  readonly at: number;
  readonly after?: LessonEvent;
}

interface StepFrame extends Scene {
  /** The author's words: what is told, or the question in place of the usual one. */
  readonly text: string;
  /** Where the run is stopped. */
  readonly moment?: Moment;
}

interface Question extends StepFrame {
  /** The author's words after the answer. */
  readonly why: string;
}

export interface TellStep extends StepFrame {
  readonly kind: 'tell';
}

/** What happens next, after the moment? */
export interface PredictStep extends Question {
  readonly kind: 'predict';
  readonly moment: Moment;
  /** Only what these do is asked; everything that moves when empty. */
  readonly of: readonly string[];
}

/** In which order do these happen? Counted from the moment, or from the start. */
export interface ArrangeStep extends Question {
  readonly kind: 'arrange';
  readonly events: readonly EventPattern[];
}

/** Which fault is hidden in this run? */
export interface FindStep extends Question {
  readonly kind: 'find';
  readonly faults: readonly FaultEntry[];
  /** Checks that may be made. */
  readonly budget: number;
  /** Units and parts that may be checked; everything when empty. */
  readonly of: readonly string[];
  /** Other causes to choose from; made from the catalogue when empty. */
  readonly suspects: readonly Omit<FaultEntry, 'severity'>[];
}

/** Two runs side by side: which has more of a figure? */
export interface CompareStep extends Question {
  readonly kind: 'compare';
  readonly with: Scene;
  readonly measure: Measure;
}

/** A figure of a whole run: a time of a unit (or of the last one), or the least margin of a rule. */
export type Measure =
  { readonly time: 'up' | 'down'; readonly unit: string } | { readonly rule: string };

export type LessonStep = TellStep | PredictStep | ArrangeStep | FindStep | CompareStep;

export interface Lesson {
  readonly title: string;
  readonly note: string;
  /** File name of the scenario, as seen from the lesson's file. */
  readonly scenario: string;
  readonly steps: readonly LessonStep[];
}

/** A line of an explanation or of a reading. */
export interface LessonLine {
  readonly text: string;
  /** When it happens, s. */
  readonly t?: number;
  /** A figure, SI; signed where it is a margin. */
  readonly value?: number;
  readonly quantity?: Quantity;
  readonly sort: 'event' | 'cause' | 'margin' | 'figure' | 'word';
}

export interface LessonChoice {
  readonly id: string;
  readonly text: string;
  /** What the run says of it. */
  readonly told: string;
}

/** Something a student may look at, for one of the checks allowed. */
export interface LessonCheck {
  readonly id: string;
  readonly text: string;
  readonly reading: readonly LessonLine[];
}

/** A step with all that was made from its runs. */
export interface PreparedStep extends Scene {
  readonly kind: LessonStep['kind'];
  readonly text: string;
  /** The question; empty for a step that only tells. */
  readonly question: string;
  /** Where the run stops, s; absent: it may be seen to its end. */
  readonly stop?: number;
  /** To choose from, or to be put in order, shuffled. */
  readonly choices: readonly LessonChoice[];
  /** The right one, or all in their order. */
  readonly right: readonly string[];
  /** Why, from the run. */
  readonly told: readonly LessonLine[];
  /** The author's words after the answer. */
  readonly why: string;
  readonly budget: number;
  readonly checks: readonly LessonCheck[];
  /** The other run of a comparison. */
  readonly other?: Scene;
}
