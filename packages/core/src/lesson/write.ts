import { stringify } from 'yaml';
import { si } from '../scenario/write-figure.js';
import type { Lesson, LessonStep, Moment, Scene } from './lesson.js';
import { VERSION_KEY } from './read.js';

/** Writes a lesson as YAML text that reads to the same lesson; comments of a former file are lost. */
export function writeLesson({ title, note, scenario, steps }: Lesson): string {
  const file = {
    [VERSION_KEY]: 1,
    title,
    ...(note !== '' && { note }),
    scenario,
    steps: steps.map(stepText),
  };
  return stringify(file, { aliasDuplicateObjects: false, lineWidth: 100 });
}

function stepText(step: LessonStep): Record<string, unknown> {
  const { kind, text, moment } = step;
  const frame = {
    kind,
    ...sceneText(step),
    ...(moment && momentText(moment)),
    ...(text !== '' && { text }),
  };
  if (step.kind === 'tell') return frame;
  const asked = { ...frame, ...(step.why !== '' && { why: step.why }) };
  switch (step.kind) {
    case 'predict':
      return { ...asked, ...some('of', step.of) };
    case 'arrange':
      return { ...asked, events: step.events };
    case 'find':
      return {
        ...asked,
        budget: step.budget,
        ...some('of', step.of),
        ...some('suspects', step.suspects),
      };
    case 'compare': {
      const { measure } = step;
      const figure = 'time' in measure && measure.unit === '' ? { time: measure.time } : measure;
      return { ...asked, with: sceneText(step.with), ...figure };
    }
  }
}

function some(key: string, list: readonly unknown[]): Record<string, unknown> {
  return list.length > 0 ? { [key]: list } : {};
}

function sceneText({ card, faults }: Scene): Record<string, unknown> {
  return { card, ...(faults && { faults }) };
}

function momentText({ at, after }: Moment): Record<string, unknown> {
  if (after === undefined) return { at: si(at, 'time') };
  const { nth, ...event } = after;
  return {
    ...(at > 0 && { at: si(at, 'time') }),
    after: { ...event, ...(nth > 1 && { nth }) },
  };
}
