/** What passes between the page and the worker that makes lessons ready. */
import type { Issue, Lesson, LessonPlan } from '@wheelwell/core';

export type {
  EventPattern,
  Lesson,
  LessonCheck,
  LessonChoice,
  LessonEvent,
  LessonLine,
  LessonPlan,
  LessonStep,
  Measure,
  Moment,
  PreparedStep,
  Scene,
} from '@wheelwell/core';

export interface LessonRequest {
  readonly kind: 'lesson';
  readonly id: number;
  readonly file: string;
  /** A file's text, or a lesson that is being written. */
  readonly lesson: string | Lesson;
  /** Text of the scenario it speaks of; without it the lesson is only read. */
  readonly scenario?: string;
}

export type LessonReply =
  | { readonly id: number; readonly kind: 'steps'; readonly ready: number; readonly of: number }
  | { readonly id: number; readonly kind: 'plan'; readonly text: string; readonly plan: LessonPlan }
  | { readonly id: number; readonly kind: 'refused'; readonly issues: readonly Issue[] }
  | { readonly id: number; readonly kind: 'broken'; readonly message: string };
