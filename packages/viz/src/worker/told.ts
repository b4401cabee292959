/** Answers what the page wants to know of a text. */
import { editScenarioText } from '@wheelwell/core';
import { parametersOf } from './parameters.js';
import type { Question, Told } from './parameters-message.js';
import { heldOf } from './reading.js';

export type NumberedQuestion = Question & { readonly number: number };

export function told(q: NumberedQuestion): Told {
  const { number, file, text } = q;
  if (q.kind === 'parameters')
    return { number, kind: 'parameters', groups: parametersOf(heldOf(q)) };
  return { number, kind: 'text', ...editScenarioText(text, q.edits, { file }) };
}
