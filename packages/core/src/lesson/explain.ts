/** Why something happened, read from the run: its chain of causes, and what was judged about it. */
import type { LogEntry, Run } from '../define/run.js';
import { partsOf } from '../scenario/index.js';
import type { LessonLine } from './lesson.js';
import { because, isEvent, say, type Stage } from './stage.js';

/** Causes told of one event. */
const MOST_CAUSES = 4;
/** A judgement is about an event when it lies this near, s; those of long spans are about the whole swing. */
const NEAR = 0.5;
const LONG = 3;
const MOST_MARGINS = 4;

export function eventLine(stage: Stage, e: LogEntry): LessonLine {
  const text = `${say(stage, e)}, because ${because(stage, e.cause)}`;
  return { text, t: e.t, sort: 'event' };
}

/** An event and what led to it, latest first. */
export function chain(stage: Stage, run: Run, e: LogEntry): LessonLine[] {
  const lines = [eventLine(stage, e)];
  let at = e;
  while (lines.length <= MOST_CAUSES && at.by >= 0) {
    at = run.log[at.by];
    if (isEvent(at)) lines.push({ text: say(stage, at), t: at.t, sort: 'cause' });
  }
  return lines;
}

/** What the rules say of some parts around a time, each rule once: the least margin. */
export function margins(
  stage: Stage,
  run: Run,
  devices: readonly string[],
  from: number,
  to: number,
): LessonLine[] {
  const about = run.flags.filter(
    (f) =>
      Number.isFinite(f.margin) &&
      f.from <= to + NEAR &&
      f.from >= from - NEAR &&
      f.to - f.from < LONG &&
      f.devices.length > 1 &&
      f.devices.every((d) => devices.includes(d)),
  );
  const least = new Map<string, (typeof about)[number]>();
  for (const f of about) {
    const known = least.get(f.rule);
    if (known === undefined || f.margin < known.margin) least.set(f.rule, f);
  }
  return [...least.values()].slice(0, MOST_MARGINS).map((f) => ({
    text: f.severity === 'note' ? `${f.title}: in hand` : because(stage, f.explanation),
    t: f.from,
    value: f.margin,
    quantity: f.marginQuantity,
    sort: 'margin',
  }));
}

/** Parts that belong together with one: its unit's, or those of the units of several. */
export function kin({ scenario }: Stage, devices: readonly string[]): string[] {
  const units = Object.entries(scenario.units)
    .map(([name, unit]) => [name, ...partsOf(unit)])
    .filter((parts) => devices.some((d) => parts.includes(d)));
  return [...new Set([...devices, ...units.flat()])];
}
