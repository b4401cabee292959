/** A lesson made ready: every step with its question, choices, answer and reasons, made from runs. */
import type { Catalogues } from '../define/catalogue.js';
import type { Issue } from '../define/issue.js';
import type { Run } from '../define/run.js';
import type { Scenario } from '../define/scenario.js';
import { simulateWith } from '../machine/index.js';
import { arrange } from './arrange.js';
import { compare } from './compare.js';
import { find } from './find.js';
import type { Lesson, LessonStep, PreparedStep, Scene } from './lesson.js';
import { predict, type Made } from './predict.js';
import { draftLesson } from './read.js';
import { timeOf, type Stage } from './stage.js';

export interface LessonPlan {
  readonly lesson?: Lesson;
  /** As many as the lesson has when nothing is wrong; none where the text is no lesson. */
  readonly steps: readonly PreparedStep[];
  /** What is wrong with the text, and what the runs do not bear out. */
  readonly issues: readonly Issue[];
}

export interface PrepareOptions {
  readonly file?: string;
  /** Where runs come from; simulated when absent. */
  readonly play?: (scenario: Scenario, card: string) => Run;
  /** Told how many steps are ready. */
  readonly onStep?: (ready: number, of: number) => void;
}

/** Reads a lesson and makes it ready on a scenario. Never throws. */
export function prepareLessonWith(
  catalogues: Catalogues,
  text: string,
  scenario: Scenario,
  { file, play, onStep }: PrepareOptions = {},
): LessonPlan {
  const { lesson, issues } = draftLesson(catalogues, text, {
    ...(file !== undefined && { file }),
    scenario,
  });
  if (lesson === undefined || issues.length > 0)
    return { ...(lesson && { lesson }), steps: [], issues: issues.sorted() };
  const runs = new Map<string, Run>();
  const made = play ?? ((s: Scenario, card: string) => simulateWith(catalogues, s, { card }));
  const stage: Stage = {
    scenario,
    catalogues,
    issues,
    play(scene) {
      const key = JSON.stringify([scene.card, scene.faults]);
      const known = runs.get(key) ?? made(staged(scenario, scene), scene.card);
      runs.set(key, known);
      return known;
    },
  };
  const steps = lesson.steps.map((step, i) => {
    const ready = prepare(stage, step, ['steps', i]);
    onStep?.(i + 1, lesson.steps.length);
    return ready;
  });
  return { lesson, steps, issues: issues.sorted() };
}

/** The scenario with the faults of a scene in place of its card's. */
export function staged(scenario: Scenario, { card, faults }: Scene): Scenario {
  if (faults === undefined) return scenario;
  const cards = { ...scenario.cards, [card]: { ...scenario.cards[card], faults } };
  return { ...scenario, cards };
}

function prepare(stage: Stage, step: LessonStep, path: readonly (string | number)[]): PreparedStep {
  const { kind, text, card, faults } = step;
  const frame = { kind, card, ...(faults && { faults }), text, budget: 0, checks: [] };
  const nothing: Made = { question: '', choices: [], right: [], told: [] };
  if (step.kind === 'tell') {
    const stop = step.moment === undefined ? undefined : timeOf(stage.play(step), step.moment);
    if (step.moment !== undefined && stop === undefined)
      stage.issues.add(path, { message: 'the moment of this step does not come in the run' });
    return { ...frame, ...nothing, why: '', ...(stop !== undefined && { stop }) };
  }
  const { why } = step;
  switch (step.kind) {
    case 'predict':
      return { ...frame, why, ...(predict(stage, step, path) ?? nothing) };
    case 'arrange':
      return { ...frame, why, ...(arrange(stage, step, path) ?? nothing) };
    case 'find':
      return { ...frame, why, ...find(stage, step, path), budget: step.budget };
    case 'compare':
      return { ...frame, why, ...(compare(stage, step, path) ?? nothing), other: step.with };
  }
}
