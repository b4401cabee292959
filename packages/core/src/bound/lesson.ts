/** Lessons, with the catalogues that come with core. */
import type { Scenario } from '../define/index.js';
import {
  lessonJsonSchemaOf,
  prepareLessonWith,
  readLessonWith,
  type LessonPlan,
  type LessonReading,
  type PrepareOptions,
} from '../lesson/index.js';
import { catalogues } from './catalogues.js';

/**
 * Reads a lesson from YAML text; with its scenario also whether all it names is there. Never throws:
 * what is wrong comes back in `issues`.
 */
export function readLesson(
  text: string,
  options: { readonly file?: string; readonly scenario?: Scenario } = {},
): LessonReading {
  return readLessonWith(catalogues, text, options);
}

/**
 * Reads a lesson and makes it ready: questions, choices, answers and reasons from runs of its
 * scenario. What the runs do not bear out is told in `issues` like a slip in the file. Never throws.
 */
export function prepareLesson(
  text: string,
  scenario: Scenario,
  options: PrepareOptions = {},
): LessonPlan {
  return prepareLessonWith(catalogues, text, scenario, options);
}

/** The JSON Schema of lesson files, for editors. */
export function lessonJsonSchema(): Record<string, unknown> {
  return lessonJsonSchemaOf(catalogues);
}
