/**
 * Leaves prose out of the page that no view shows: where a figure comes from, why a fault is held
 * to be common, what a kind is for, what editors are told of a field. It stays in the command line
 * (`wheelwell list`), in the reference and in the JSON Schema.
 */
import type { ESTree, Plugin } from 'vite';
import { edited } from './syntax.js';
import type { Edit } from './syntax.js';

const CATALOGUES =
  /\/packages\/core\/src\/(check|component|fault|mechanism|medium|monitor)\/[^?]*$/;
const NAMES = new Set(['source', 'priorWhy', 'summary']);

const FIELDS = /\/packages\/core\/src\/(lesson|observation|scenario)\/(schema|field)[^?]*$/;
/** Which argument describes a field to an editor; reading never looks at it. */
const DESCRIPTION: Readonly<Record<string, number>> = {
  ...{ quantityField: 2, differenceField: 1, choiceField: 1, pointField: 1, field: 1, told: 1 },
  ...{ switchField: 0, nameField: 0, textField: 0, bar: 0, time: 0, gauge: 0, flow: 0, clock: 0 },
};

const TEXT = new Set(['Literal', 'TemplateLiteral', 'BinaryExpression']);

function blank(edits: Edit[], value: ESTree.Node | undefined): void {
  if (value === undefined) return;
  if (TEXT.has(value.type)) edits.push({ start: value.start, end: value.end, text: "''" });
  else if (value.type === 'ObjectExpression')
    edits.push({ start: value.start, end: value.end, text: '{}' });
}

export function leaveOut(): Plugin[] {
  return [
    {
      name: 'wheelwell:leave-out-prose',
      apply: 'build',
      transform: {
        filter: { id: CATALOGUES, code: /\b(source|priorWhy|summary):/ },
        handler: (code) =>
          edited(code, (edits) => ({
            Property({ key, value, computed }) {
              const named = !computed && key.type === 'Identifier' && NAMES.has(key.name);
              if (named && TEXT.has(value.type)) blank(edits, value);
            },
          })),
      },
    },
    {
      name: 'wheelwell:leave-out-descriptions',
      apply: 'build',
      transform: {
        filter: { id: FIELDS },
        handler: (code) =>
          edited(code, (edits) => ({
            CallExpression({ callee, arguments: given }) {
              const at = callee.type === 'Identifier' ? DESCRIPTION[callee.name] : undefined;
              if (at !== undefined) blank(edits, given[at]);
            },
          })),
      },
    },
  ];
}
