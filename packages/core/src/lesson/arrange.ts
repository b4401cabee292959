/** In which order: events of the author's choice, put in order by the run. */
import type { LogEntry } from '../define/run.js';
import { eventLine, kin, margins } from './explain.js';
import type { ArrangeStep, LessonLine } from './lesson.js';
import { capital, type Made } from './predict.js';
import { eventOf, phrase, shuffled, timeOf, type Stage } from './stage.js';

/** Runs are exact to a millisecond: what lies closer together has no order, s. */
const TOGETHER = 1e-3;

export function arrange(
  stage: Stage,
  step: ArrangeStep,
  path: readonly (string | number)[],
): Made | undefined {
  const run = stage.play(step);
  const from = step.moment === undefined ? 0 : timeOf(run, step.moment);
  if (from === undefined) {
    stage.issues.add(path, { message: 'the moment it begins with does not come in the run' });
    return undefined;
  }
  const found: LogEntry[] = [];
  step.events.forEach((pattern, i) => {
    const e = eventOf(run, { ...pattern, nth: 1 }, from);
    if (e !== undefined) found.push(e);
    else
      stage.issues.add([...path, 'events', i], {
        message: 'this does not happen in the run',
        found: phrase(stage, pattern.device, pattern.to),
      });
  });
  if (found.length < 2) return undefined;
  const order = found.sort((a, b) => a.index - b.index);
  const gaps = order.slice(1).map((e, i) => ({ gap: e.t - order[i].t, first: order[i], then: e }));
  for (const { gap, first, then } of gaps)
    if (gap < TOGETHER)
      stage.issues.add([...path, 'events'], {
        message: 'two of these happen at one instant',
        found: `${phrase(stage, first.device, first.to)}; ${phrase(stage, then.device, then.to)}`,
      });
  const closest = gaps.reduce((a, b) => (b.gap < a.gap ? b : a));
  const idOf = (e: LogEntry): string => `${e.device} ${e.to}`;
  const items = order.map((e) => ({
    id: idOf(e),
    text: capital(phrase(stage, e.device, e.to)),
    told: `at ${e.t.toFixed(3)} s`,
  }));
  const gapLine: LessonLine = {
    text: `Closest: ${phrase(stage, closest.then.device, closest.then.to)} only this long after ${phrase(stage, closest.first.device, closest.first.to)}`,
    value: closest.gap,
    quantity: 'time',
    sort: 'figure',
  };
  return {
    question: step.text === '' ? 'In which order do these happen?' : step.text,
    // The run is not shown beyond where it begins until the order is given.
    stop: from,
    choices: jumbled(items, `${step.card} ${path.join(' ')}`),
    right: order.map(idOf),
    told: [
      ...order.map((e) => eventLine(stage, e)),
      gapLine,
      ...margins(
        stage,
        run,
        kin(
          stage,
          order.map((e) => e.device),
        ),
        order[0].t,
        order[order.length - 1].t,
      ),
    ],
  };
}

/** Never in the right order to begin with. */
function jumbled<T extends { readonly id: string }>(items: readonly T[], seed: string): T[] {
  const mixed = shuffled(items, seed);
  return mixed.every((item, i) => item === items[i]) ? [...mixed.slice(1), mixed[0]] : mixed;
}
