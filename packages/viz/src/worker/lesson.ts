/** Makes a lesson ready: reads it and its scenario, simulates its runs, asks and answers from them. */
import { prepareLesson, readLesson, readScenario, simulate, writeLesson } from '@wheelwell/core';
import type { Run, Scenario } from '@wheelwell/core';
import type { LessonReply, LessonRequest } from './lesson-message.js';
import { whyOf } from './why.js';

/** Runs kept, so that a lesson being written need not play all of them again; some megabytes each. */
const MOST_RUNS = 10;
const runs = new Map<string, Run>();
let last: { readonly text: string; readonly scenario: Scenario } | undefined;

export function teach(request: LessonRequest, hear: (reply: LessonReply) => void): void {
  const { id, file } = request;
  try {
    const text = typeof request.lesson === 'string' ? request.lesson : writeLesson(request.lesson);
    if (request.scenario === undefined) {
      hear({ id, kind: 'refused', issues: readLesson(text, { file }).issues });
      return;
    }
    if (last?.text !== request.scenario) {
      const { scenario, issues } = readScenario(request.scenario);
      if (scenario === undefined) {
        hear({ id, kind: 'refused', issues });
        return;
      }
      runs.clear();
      last = { text: request.scenario, scenario };
    }
    const plan = prepareLesson(text, last.scenario, {
      file,
      play,
      onStep: (ready, of) => hear({ id, kind: 'steps', ready, of }),
    });
    hear({ id, kind: 'plan', text, plan });
  } catch (error) {
    hear({ id, kind: 'broken', message: whyOf(error) });
  }
}

function play(scenario: Scenario, card: string): Run {
  const key = JSON.stringify([card, scenario.cards[card]?.faults]);
  const run = runs.get(key) ?? simulate(scenario, { card });
  // The one used last is kept longest.
  runs.delete(key);
  runs.set(key, run);
  const [oldest] = runs.keys();
  if (runs.size > MOST_RUNS && oldest !== undefined) runs.delete(oldest);
  return run;
}
