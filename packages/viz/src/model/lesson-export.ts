/** Results of a lesson as files: one line a question. */
import type { PreparedStep } from '../worker/lesson-message.js';
import { isQuestion, UNANSWERED } from './lesson-state.js';
import type { LessonState } from './lesson-state.js';

export interface Result {
  readonly lesson: string;
  readonly file: string;
  readonly name: string;
  readonly step: number;
  readonly kind: string;
  readonly question: string;
  readonly answer: string;
  readonly rightAnswer: string;
  readonly right: boolean;
  readonly tries: number;
  readonly checks: string;
  readonly time: string;
}

export function resultsOf(state: LessonState): Result[] {
  const { plan, answers, file, who } = state;
  return (plan?.steps ?? []).flatMap((step, i): Result[] => {
    if (!isQuestion(step)) return [];
    const { given, right, tries, checks, when } = answers[i] ?? UNANSWERED;
    return [
      {
        lesson: plan?.lesson?.title ?? '',
        file,
        name: who,
        step: i + 1,
        kind: step.kind,
        question: step.question,
        answer: wordsOf(step, given),
        rightAnswer: wordsOf(step, step.right),
        right,
        tries,
        checks: checks.map((id) => step.checks.find((c) => c.id === id)?.text ?? id).join('; '),
        time: when,
      },
    ];
  });
}

/** Choices by their words: one, or several in order. */
export function wordsOf(step: PreparedStep, ids: readonly string[]): string {
  return ids.map((id) => step.choices.find((c) => c.id === id)?.text ?? id).join('; ');
}

const COLUMNS: readonly (readonly [string, (r: Result) => string])[] = [
  ['lesson', (r) => r.lesson],
  ['file', (r) => r.file],
  ['name', (r) => r.name],
  ['step', (r) => String(r.step)],
  ['kind', (r) => r.kind],
  ['question', (r) => r.question],
  ['answer', (r) => r.answer],
  ['right answer', (r) => r.rightAnswer],
  ['right', (r) => (r.right ? 'yes' : 'no')],
  ['tries', (r) => String(r.tries)],
  ['checks', (r) => r.checks],
  ['time', (r) => r.time],
];

/** RFC 4180. */
export function resultsCsv(results: readonly Result[]): string {
  const rows = [
    COLUMNS.map(([title]) => title),
    ...results.map((r) => COLUMNS.map(([, of]) => of(r))),
  ];
  return `${rows.map((row) => row.map(cell).join(',')).join('\r\n')}\r\n`;
}

function cell(text: string): string {
  // A table program must not take words out of a lesson for a formula.
  const safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

export function resultsJson(state: LessonState): string {
  const results = resultsOf(state);
  const { title = '' } = state.plan?.lesson ?? {};
  return `${JSON.stringify({ lesson: title, file: state.file, name: state.who, results }, null, 2)}\n`;
}
