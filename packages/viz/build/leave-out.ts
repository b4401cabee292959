/**
 * Leaves prose out of the page that no view shows: where a figure comes from, why a fault is held
 * to be common. It stays in the command line (`wheelwell list`) and in the reference.
 */
import type { Plugin } from 'vite';
import { edited } from './syntax.js';

const CATALOGUES = /\/packages\/core\/src\/(component|fault|mechanism|medium|monitor)\/[^?]*$/;
const NAMES = new Set(['source', 'priorWhy']);
const TEXT = new Set(['Literal', 'TemplateLiteral', 'BinaryExpression']);

export function leaveOut(): Plugin {
  return {
    name: 'wheelwell:leave-out',
    apply: 'build',
    transform: {
      filter: { id: CATALOGUES, code: /\b(source|priorWhy):/ },
      handler: (code) =>
        edited(code, (edits) => ({
          Property({ key, value, computed }) {
            const named = !computed && key.type === 'Identifier' && NAMES.has(key.name);
            if (named && TEXT.has(value.type))
              edits.push({ start: value.start, end: value.end, text: "''" });
          },
        })),
    },
  };
}
