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
export const merge = undefined;
export const isMergeKey = undefined;
export const addMergeToJSMap = undefined;
`;

const PARTS: readonly Part[] = [
  { importer: /\/d3-scale\//, imported: /^d3-interpolate$/, instead: NUMBERS },
  {
    importer: /\/yaml\/browser\/dist\//,
    imported: /\/yaml-1\.1\//,
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
/** Units are turned into SI only. */
const OTHER_SYSTEM = /^UNIT_SYSTEMS\.(cgs|mks|us)\b/;
/** What no figure of an aircraft is a measure of: bases of units, and tables of their prefixes. */
const UNMEASURED = new Set(
  (
    'BIT LUMINOUS_INTENSITY AMOUNT_OF_SUBSTANCE ELECTRIC_CHARGE ELECTRIC_CAPACITANCE ' +
    'ELECTRIC_INDUCTANCE ELECTRIC_CONDUCTANCE MAGNETIC_FLUX MAGNETIC_FLUX_DENSITY ' +
    'BINARY_SHORT_SI BINARY_SHORT_IEC BINARY_LONG_SI BINARY_LONG_IEC ' +
    // Other names of theirs.
    'coulombs farads webers teslas moles bit byte'
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
            const of = code.slice(left.start, left.end);
            const idle = /^Unit(\.prototype)?\.\w+$/.test(of) && IDLE.has(left.property.name);
            if (idle || OTHER_SYSTEM.test(of)) edits.push({ start, end, text: '' });
          },
          Property({ start, end, key, value }) {
            if (key.type !== 'Identifier') return;
            const measured = /\bBASE_UNITS\.(\w+)/.exec(code.slice(value.start, value.end))?.[1];
            const idle =
              key.name === 'scientific' ||
              UNMEASURED.has(key.name) ||
              (value.type === 'ObjectExpression' && UNMEASURED.has(measured ?? ''));
            if (idle) edits.push({ start, end: code[end] === ',' ? end + 1 : end, text: '' });
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
