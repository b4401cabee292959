import type { ZodMiniType } from 'zod/mini';
import type { Catalogues } from '../define/catalogue.js';
import type { Issue } from '../define/issue.js';
import type { Scenario } from '../define/scenario.js';
import { didYouMean } from '../quantity/index.js';
import { check } from '../scenario/check.js';
import { isMap, list } from '../scenario/draft.js';
import { SCENARIO_FILE } from '../scenario/file-kind.js';
import { shown, wordList, type IssueList } from '../scenario/issue-list.js';
import { parseText, type Plain } from '../scenario/parse.js';
import { checkStep } from './check-step.js';
import type { Lesson, LessonStep, Measure, Moment, Scene } from './lesson.js';
import { lessonSchemaOf, STEP_KINDS, type StepKind, type Written } from './schema.js';

/** A lesson, or everything that keeps the text from being one. */
export interface LessonReading {
  readonly lesson?: Lesson;
  /** In the order of the file; empty when there is a lesson. */
  readonly issues: readonly Issue[];
}

export const VERSION_KEY = 'wheelwell-lesson';
const TOP_KEYS = [VERSION_KEY, 'title', 'note', 'scenario', 'steps'];
const MOST_STEPS = 60;
const LESSON_FILE = { ...SCENARIO_FILE, what: 'a lesson', firstLine: `${VERSION_KEY}: 1` };

/** What was read, and the list that further issues go into. */
export interface LessonDraft {
  readonly lesson: Lesson;
  readonly issues: IssueList;
}

/** Reads a lesson; with a scenario, also whether all it names is there. Never throws. */
export function readLessonWith(
  catalogues: Catalogues,
  text: string,
  options: { readonly file?: string; readonly scenario?: Scenario } = {},
): LessonReading {
  const { lesson, issues } = draftLesson(catalogues, text, options);
  return issues.length > 0 || lesson === undefined
    ? { issues: issues.sorted() }
    : { lesson, issues: [] };
}

/** The same, what is sound of it kept beside the issues. */
export function draftLesson(
  catalogues: Catalogues,
  text: string,
  { file = '<text>', scenario }: { readonly file?: string; readonly scenario?: Scenario },
): { readonly lesson?: Lesson; readonly issues: IssueList } {
  const { data, issues } = parseText(text, file, LESSON_FILE);
  if (data === undefined) return { issues };
  if (!isMap(data)) {
    const message = 'this is not a lesson: lines of `key: value` belong here';
    issues.add([], { message, found: shown(data), allowed: wordList(TOP_KEYS) });
    return { issues };
  }
  for (const key of Object.keys(data))
    if (!TOP_KEYS.includes(key))
      issues.addKey([key], {
        message: `"${key.slice(0, 60)}" is not known here`,
        allowed: wordList(TOP_KEYS),
        hint: didYouMean(key, TOP_KEYS),
      });
  if (data[VERSION_KEY] !== 1)
    issues.add([VERSION_KEY], {
      message:
        data[VERSION_KEY] === undefined
          ? 'the format version is missing'
          : 'this format version is not known',
      found: data[VERSION_KEY] === undefined ? '' : shown(data[VERSION_KEY]),
      allowed: `${VERSION_KEY}: 1`,
    });
  const { frame } = lessonSchemaOf(catalogues);
  const title = check(frame.title, data.title, ['title'], issues);
  const note = check(frame.note, data.note ?? undefined, ['note'], issues) ?? '';
  const named = check(frame.scenario, data.scenario, ['scenario'], issues);
  const written = list(data.steps, ['steps'], issues);
  if (written.length === 0 || written.length > MOST_STEPS)
    issues.add(['steps'], {
      message: written.length === 0 ? 'a lesson needs steps' : 'this lesson has too many steps',
      allowed: `steps: with 1 to ${MOST_STEPS} of them`,
    });
  const steps: LessonStep[] = [];
  let former: Scene | undefined;
  written.slice(0, MOST_STEPS).forEach((raw, i) => {
    const step = readStep(catalogues, raw, ['steps', i], former, issues);
    if (step === undefined) return;
    former = step;
    steps.push(step);
    if (scenario !== undefined) checkStep({ scenario, catalogues, issues }, step, ['steps', i]);
  });
  if (title === undefined || named === undefined || steps.length < written.length)
    return { issues };
  return { lesson: { title, note, scenario: named, steps }, issues };
}

type Path = readonly (string | number)[];

function readStep(
  catalogues: Catalogues,
  raw: Plain,
  path: Path,
  former: Scene | undefined,
  issues: IssueList,
): LessonStep | undefined {
  const kind = isMap(raw) ? raw.kind : undefined;
  const known = STEP_KINDS.find((k) => k === kind);
  if (known === undefined) {
    issues.add([...path, 'kind'], {
      message: 'this kind of step is not known',
      found: kind === undefined ? '' : shown(kind),
      allowed: wordList(STEP_KINDS),
      hint: didYouMean(shown(kind), STEP_KINDS),
    });
    return undefined;
  }
  const step = check(schemaOf(catalogues, known), raw, path, issues);
  if (step === undefined) return undefined;
  const card = step.card ?? former?.card;
  if (card === undefined) {
    issues.add([...path, 'card'], {
      message: 'the first step does not say which test card is played',
      allowed: 'card: the name of one',
    });
    return undefined;
  }
  // Without a card of its own a step goes on with the run before it.
  const faults = step.faults ?? (step.card === undefined ? former?.faults : undefined);
  const moment = momentOf(step);
  const { text = '' } = step;
  const frame = { card, ...(faults && { faults }), text, ...(moment && { moment }) };
  if (step.kind === 'tell') return { kind: 'tell', ...frame };
  const asked = { ...frame, why: step.why ?? '' };
  switch (step.kind) {
    case 'predict':
      if (moment === undefined) return missing(issues, path, 'at: a time, or after: an event');
      return { kind: 'predict', ...asked, moment, of: step.of ?? [] };
    case 'arrange':
      return { kind: 'arrange', ...asked, events: step.events };
    case 'find': {
      if (step.faults?.length !== 1) return missing(issues, path, 'faults: the one that is hidden');
      const { budget, of = [], suspects = [] } = step;
      return { kind: 'find', ...asked, faults: step.faults, budget, of, suspects };
    }
    case 'compare': {
      const measure = measureOf(step);
      if (measure === undefined) return missing(issues, path, 'time: up or down, or rule: a name');
      return { kind: 'compare', ...asked, with: step.with, measure };
    }
  }
}

/** One of several: what comes of it is told apart by its kind. */
function schemaOf(catalogues: Catalogues, kind: StepKind): ZodMiniType<Written<StepKind>> {
  return lessonSchemaOf(catalogues).steps[kind];
}

function missing(issues: IssueList, path: Path, allowed: string): undefined {
  issues.add(path, { message: 'this step is not whole', allowed });
  return undefined;
}

function momentOf({ at, after }: Written<StepKind>): Moment | undefined {
  if (at === undefined && after === undefined) return undefined;
  return { at: at ?? 0, ...(after && { after: { ...after, nth: after.nth ?? 1 } }) };
}

function measureOf({ time, unit, rule }: Written<'compare'>): Measure | undefined {
  if (rule !== undefined) return time === undefined ? { rule } : undefined;
  return time === undefined ? undefined : { time: time === 'up' ? 'up' : 'down', unit: unit ?? '' };
}
