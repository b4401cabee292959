/** Answers what the page wants to know of a text. */
import { editScenarioText } from '@wheelwell/core';
import { parametersOf } from './parameters.js';
import type { Question, Told } from './parameters-message.js';
import { heldOf, readWritten } from './reading.js';

export type NumberedQuestion = Question & { readonly number: number };

/** Of sheets another part knows, which comes later. */
export function told(q: Exclude<NumberedQuestion, { readonly kind: 'sheet' }>): Told {
  const { number } = q;
  switch (q.kind) {
    case 'parameters':
      return { number, kind: 'parameters', groups: parametersOf(heldOf(q)) };
    case 'scenario':
      return { number, kind: 'scenario', scenario: readWritten(q.scenario).scenario };
    case 'text':
      return { number, kind: 'text', ...editScenarioText(q.text, q.edits, { file: q.file }) };
  }
}
