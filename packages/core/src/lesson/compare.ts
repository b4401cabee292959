/** Two runs beside each other: which has more of a figure, by how much, and what is flagged in either. */
import type { Quantity } from '../define/parameter.js';
import type { Run } from '../define/run.js';
import type { CompareStep, LessonLine, Measure, Scene } from './lesson.js';
import type { Made } from './predict.js';
import { because, plain, type Stage } from './stage.js';

/** Nearer than this share of the larger one nobody would call them different; well above it, everybody. */
const SAME = 0.02;
const DIFFERENT = 0.05;
/** And in figures: times are read to a tenth, s; other margins only by their share. */
const FINEST = 0.1;
const MOST_FLAGS = 4;

interface Figure {
  /** NaN: not reached. */
  readonly value: number;
  readonly quantity: Quantity;
}

export function compare(
  stage: Stage,
  step: CompareStep,
  path: readonly (string | number)[],
): Made | undefined {
  const runs = [stage.play(step), stage.play(step.with)] as const;
  const [a, b] = runs.map((run) => figureOf(run, step.measure));
  const what = 'rule' in step.measure ? titleOf(runs, step.measure.rule) : timeWords(step.measure);
  if (a === undefined || b === undefined || (Number.isNaN(a.value) && Number.isNaN(b.value))) {
    stage.issues.add(path, {
      message: 'there is nothing to compare in these runs',
      found: what,
    });
    return undefined;
  }
  const size = Math.max(Math.abs(a.value), Math.abs(b.value));
  const apart = Math.abs(a.value - b.value);
  const floor = a.quantity === 'time' && !('rule' in step.measure) ? FINEST : 0;
  const same = apart <= Math.max(SAME * size, floor);
  if (!same && apart < Math.max(DIFFERENT * size, 2 * floor))
    stage.issues.add(path, {
      message: 'these two are too close to call',
      hint: 'compare something else, or make the fault worse',
    });
  const more = Number.isNaN(a.value)
    ? 'a'
    : Number.isNaN(b.value)
      ? 'b'
      : a.value > b.value
        ? 'a'
        : 'b';
  const names = [sceneName(stage, step), sceneName(stage, step.with)] as const;
  const told = (f: Figure): string => (Number.isNaN(f.value) ? 'It never gets there.' : '');
  return {
    question: step.text === '' ? `Which has more: ${what}?` : step.text,
    // Nothing of either run is given away.
    stop: 0,
    choices: [
      { id: 'a', text: `A: ${names[0]}`, told: told(a) },
      { id: 'b', text: `B: ${names[1]}`, told: told(b) },
      { id: 'same', text: 'As good as the same', told: '' },
    ],
    right: [same ? 'same' : more],
    told: [
      figureLine(`A, ${what}`, a),
      figureLine(`B, ${what}`, b),
      ...onlyIn(stage, runs[0], runs[1], 'A'),
      ...onlyIn(stage, runs[1], runs[0], 'B'),
    ],
  };
}

function figureLine(text: string, { value, quantity }: Figure): LessonLine {
  return Number.isNaN(value)
    ? { text: `${text}: never reached`, sort: 'word' }
    : { text, value, quantity, sort: 'figure' };
}

function figureOf(run: Run, measure: Measure): Figure | undefined {
  if ('rule' in measure) {
    const flags = run.flags.filter((f) => f.rule === measure.rule && Number.isFinite(f.margin));
    if (flags.length === 0) return undefined;
    const quantity = flags[0].marginQuantity;
    const alike = flags.filter((f) => f.marginQuantity === quantity);
    return { value: Math.min(...alike.map((f) => f.margin)), quantity };
  }
  const times = run.timings.filter(
    (t) => t.direction === measure.time && (measure.unit === '' || t.unit === measure.unit),
  );
  if (times.length === 0) return undefined;
  const totals = times.map((t) => t.total);
  return { value: totals.some(Number.isNaN) ? NaN : Math.max(...totals), quantity: 'time' };
}

function timeWords({ time, unit }: Extract<Measure, { time: unknown }>): string {
  return `time ${time}${unit === '' ? ' of the last unit' : ` of the ${plain(unit)} unit`}`;
}

function titleOf(runs: readonly Run[], rule: string): string {
  const flag = runs.flatMap((r) => r.flags).find((f) => f.rule === rule);
  return `in hand for "${flag?.title ?? plain(rule)}"`;
}

/** A card and what was changed about its faults. */
export function sceneName({ scenario, catalogues }: Stage, { card, faults }: Scene): string {
  const title = Object.hasOwn(scenario.cards, card) ? scenario.cards[card].title : card;
  if (faults === undefined) return title;
  const words = faults.map((f) => `${catalogues.faults[f.fault].title}, ${plain(f.on)}`);
  return [title, ...words.map((w) => `with: ${w}`)].join('; ');
}

/** What is flagged in one run and not in the other, worst first. */
export function onlyIn(stage: Stage, run: Run, other: Run, name: string): LessonLine[] {
  const flagged = (r: Run): Run['flags'] => r.flags.filter((f) => f.severity !== 'note');
  const known = new Set(flagged(other).map((f) => `${f.rule} ${f.devices.join()}`));
  return flagged(run)
    .filter((f) => !known.has(`${f.rule} ${f.devices.join()}`))
    .sort((x, y) => Number(y.severity === 'fail') - Number(x.severity === 'fail'))
    .slice(0, MOST_FLAGS)
    .map((f) => ({
      text: `${name === '' ? '' : `Only in ${name}: `}${f.title}. ${because(stage, f.explanation)}`,
      t: f.from,
      value: f.margin,
      quantity: f.marginQuantity,
      sort: 'margin',
    }));
}
