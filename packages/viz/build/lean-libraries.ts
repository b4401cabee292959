/**
 * Parts of libraries that the page never calls and no bundler can see to be idle.
 *
 * - d3-scale mixes colours and dates; our scales are between numbers.
 * - mathjs's units can be added, formatted and much else; ours are read and turned into SI, no more.
 * - yaml reads the dates, sets and binary data of YAML 1.1; scenarios are YAML 1.2.
 */
import type { Plugin } from 'vite';
import { edited } from './syntax.js';

interface Part {
  readonly importer: RegExp;
  readonly imported: RegExp;
  readonly instead: string;
}

const NUMBERS = `
const between = (round) => (a, b) => {
  if (!Number.isFinite(+a) || !Number.isFinite(+b)) throw new TypeError('a scale between numbers only');
  return (share) => round(+a * (1 - share) + +b * share);
};
export const interpolateNumber = between((value) => value);
export const interpolateRound = between(Math.round);
export const interpolate = interpolateNumber;
export const piecewise = () => { throw new TypeError('a scale between numbers only'); };
`;

const YAML_1_1 = `
export const binary = undefined;
export const omap = undefined;
export const pairs = undefined;
export const set = undefined;
export const timestamp = undefined;
export const intTime = undefined;
export const floatTime = undefined;
export const schema = [];
`;

const PARTS: readonly Part[] = [
  { importer: /\/d3-scale\//, imported: /^d3-interpolate$/, instead: NUMBERS },
  {
    importer: /\/yaml\/browser\/dist\/schema\/tags\.js$/,
    imported: /\/yaml-1\.1\/(?!merge)/,
    instead: YAML_1_1,
  },
];
/** What is never asked of a unit. */
const IDLE = new Set(
  (
    'equals multiply divideInto divide pow abs toNumber toNumeric toString toJSON fromJSON valueOf ' +
    'simplify formatUnits toBest format _bestPrefix splitUnit setUnitSystem getUnitSystem deleteUnit'
  ).split(' '),
);

const ID = '\0wheelwell:lean/';

export function leanLibraries(): Plugin[] {
  return [units(), parts()];
}

function units(): Plugin {
  return {
    name: 'wheelwell:lean-units',
    apply: 'build',
    transform: {
      filter: { id: /\/mathjs\/lib\/esm\/type\/unit\/Unit\.js$/ },
      handler: (code) =>
        edited(code, (edits) => ({
          ExpressionStatement({ start, end, expression }) {
            if (expression.type !== 'AssignmentExpression') return;
            const { left } = expression;
            if (left.type !== 'MemberExpression' || left.property.type !== 'Identifier') return;
            const idle = /^Unit(\.prototype)?\.\w+$/.test(code.slice(left.start, left.end));
            if (idle && IDLE.has(left.property.name)) edits.push({ start, end, text: '' });
          },
        })),
    },
  };
}

function parts(): Plugin {
  return {
    name: 'wheelwell:lean-libraries',
    apply: 'build',
    enforce: 'pre',
    resolveId: {
      filter: { id: PARTS.map((p) => p.imported) },
      handler(source, importer = '') {
        const at = PARTS.findIndex((p) => p.importer.test(importer) && p.imported.test(source));
        return at < 0 ? undefined : `${ID}${at}`;
      },
    },
    load: {
      filter: { id: /^\0wheelwell:lean\// },
      handler: (id) => PARTS[Number(id.slice(ID.length))]?.instead,
    },
  };
}
