/** Seeded damage to scenario texts: what careless hands and ill will can do to a file. */

/** A small seeded generator of numbers in [0, 1) (mulberry32, public domain). */
export function seeded(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = a;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

type Random = () => number;

const pick = <T>(random: Random, all: readonly T[]): T => all[Math.floor(random() * all.length)];

const UNITS = [
  'mm',
  'psi',
  'deg',
  'gal/min',
  's',
  '%',
  'degC',
  'kg',
  'rad/s',
  'cSt',
  'furlong',
  'm^1e9',
  '__proto__',
  'lbf ft',
  'knot',
  'K',
  '',
];
const NUMBERS = [
  '0',
  '-1',
  '1e999',
  '-1e308',
  'NaN',
  '.nan',
  '.inf',
  '1e-320',
  '99999999999999999999',
  '0x10',
  '1,5',
  '1 3/0',
  '3/4',
  '1_000',
  '٣',
];
const KEYS = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  'is',
  'ports',
  'signals',
  'driven',
  'linkage',
  'ratio',
  'table',
  'next',
  'if',
  'to',
  '1',
  '<<',
  '',
  '? ',
  '"a\\u0000b"',
  'é',
];
const EXPRESSIONS = [
  '9^9^9^9^9^9',
  `${'('.repeat(150)}1${')'.repeat(150)}`,
  `${'sin('.repeat(60)}angle${')'.repeat(60)}`,
  Array.from({ length: 140 }, () => 'a').join('+'),
  'import("fs")',
  'f(x) = f(x)',
  'angle.constructor.constructor("return 1")()',
  'cross([1,2,3],[4,5,6])',
  'angle = 1; while(true)',
  '1/angle',
  'ones(1e9)',
  'x'.repeat(100_000),
];

function bomb(depth: number): string {
  const lines = ['a0: &a0 [x, x, x, x, x, x, x, x, x]'];
  for (let i = 1; i < depth; i++)
    lines.push(`a${i}: &a${i} [${Array.from({ length: 9 }, () => `*a${i - 1}`).join(', ')}]`);
  return lines.join('\n');
}

const HOSTILE: readonly ((random: Random) => string)[] = [
  () => bomb(9),
  () => 'loop: &loop [*loop, *loop]',
  () => 'loop: &loop { a: *loop }',
  (r) => `deep: ${'['.repeat(pick(r, [10, 30, 200, 5000]))}`,
  (r) => `deep: ${'{a: '.repeat(pick(r, [10, 30, 200]))}1`,
  (r) => `${'- '.repeat(pick(r, [10, 30, 1500]))}x`,
  (r) => `${'? '.repeat(pick(r, [10, 30, 1500]))}x`,
  (r) => Array.from({ length: pick(r, [30, 200]) }, (_, i) => `${' '.repeat(i)}k:`).join('\n'),
  () => '__proto__: { polluted: yes }',
  () => 'constructor: { prototype: { polluted: yes } }',
  () => '{ __proto__: { polluted: yes }, constructor: 1 }',
  () => 'x: !!js/function "function () { return 1 }"',
  () => 'x: !<tag:yaml.org,2002:binary> R0lGODlhDAAMAIQAAP',
  () => '<<: { title: merged }',
  (r) => `note: ${'x'.repeat(pick(r, [100, 3000, 5000, 100_000]))}`,
  (r) => Array.from({ length: pick(r, [50, 3000]) }, (_, i) => `k${i}: ${i}`).join('\n'),
  () => `note: "${'\\u0000\\uD800'.repeat(20)}"`,
  () => '\u0000\u0007\uFEFF\uD800',
  () => '--- \n...\n---\ntitle: second',
  () => '%YAML 1.1\n---',
  () => 'note: |\n  text\n badly\n   indented',
  () => '\tnote: tab',
  () => '*nobody',
  () => '&a &b &c x',
  () => `note: ${'&'.repeat(300)}`,
  () => '"unterminated',
];

type Mutation = (lines: string[], random: Random) => void;

const at = (lines: readonly string[], random: Random): number =>
  Math.floor(random() * lines.length);

/** Replaces one random match of a pattern in a random line that has one. */
function replaceOne(lines: string[], random: Random, pattern: RegExp, by: () => string): void {
  const start = at(lines, random);
  for (let step = 0; step < lines.length; step++) {
    const i = (start + step) % lines.length;
    const matches = [...lines[i].matchAll(pattern)];
    if (matches.length === 0) continue;
    const match = pick(random, matches);
    lines[i] =
      lines[i].slice(0, match.index) + by() + lines[i].slice(match.index + match[0].length);
    return;
  }
}

const MUTATIONS: Readonly<Record<string, Mutation>> = {
  'delete a line': (lines, r) => void lines.splice(at(lines, r), 1),
  'delete a block': (lines, r) => void lines.splice(at(lines, r), 1 + Math.floor(r() * 8)),
  'double a line': (lines, r) => {
    const i = at(lines, r);
    lines.splice(i, 0, lines[i]);
  },
  'swap two lines': (lines, r) => {
    const [i, j] = [at(lines, r), at(lines, r)];
    [lines[i], lines[j]] = [lines[j], lines[i]];
  },
  'indent a line': (lines, r) => {
    const i = at(lines, r);
    lines[i] = ' '.repeat(1 + Math.floor(r() * 4)) + lines[i];
  },
  'outdent a line': (lines, r) => {
    const i = at(lines, r);
    lines[i] = lines[i].replace(/^ {1,2}/, '');
  },
  'change a number': (lines, r) => replaceOne(lines, r, /\d+(\.\d+)?/g, () => pick(r, NUMBERS)),
  'scale a number': (lines, r) =>
    replaceOne(lines, r, /\d+(\.\d+)?/g, () => String(10 ** (12 * r() - 6))),
  'change a unit': (lines, r) =>
    replaceOne(lines, r, /(?<=\d )[A-Za-z%][\w^/%]*/g, () => pick(r, UNITS)),
  'change a key': (lines, r) => replaceOne(lines, r, /[\w-]+(?=:)/g, () => pick(r, KEYS)),
  'misspell a word': (lines, r) =>
    replaceOne(lines, r, /[a-z]{3,}/g, () =>
      pick(r, [
        ...['lefft', 'up', 'line', 'x', 'selector', 'nul', 'true', '~', 'out'],
        ...['not', 'not not', 'a.b', 'left-leg', 'resting', 'fluid', 'toString'],
      ]),
    ),
  'drop a letter': (lines, r) => {
    const i = at(lines, r);
    const j = Math.floor(r() * lines[i].length);
    lines[i] = lines[i].slice(0, j) + lines[i].slice(j + 1);
  },
  'put in a sign': (lines, r) => {
    const i = at(lines, r);
    const j = Math.floor(r() * (lines[i].length + 1));
    lines[i] =
      lines[i].slice(0, j) +
      pick(r, [
        '[',
        ']',
        '{',
        '}',
        ':',
        ',',
        '"',
        "'",
        '#',
        '&a ',
        '*a',
        '!',
        '|',
        '>',
        '%',
        '@',
        '`',
        '\t',
        '\u0000',
        '- ',
      ]) +
      lines[i].slice(j);
  },
  'change an expression': (lines, r) =>
    replaceOne(lines, r, /"[^"]*"/g, () => `"${pick(r, EXPRESSIONS).replaceAll('"', '\\"')}"`),
  'put in something hostile': (lines, r) =>
    void lines.splice(at(lines, r), 0, ...pick(r, HOSTILE)(r).split('\n')),
  'put something hostile at its level': (lines, r) => {
    const i = at(lines, r);
    const indent = /^ */.exec(lines[i])![0];
    lines.splice(
      i,
      0,
      ...pick(
        r,
        HOSTILE,
      )(r)
        .split('\n')
        .map((line) => indent + line),
    );
  },
  'cut off the rest': (lines, r) => void lines.splice(at(lines, r)),
};

/** One to four mutations of a text; the same seed gives the same damage. */
export function mutate(text: string, seed: number): { text: string; what: readonly string[] } {
  const random = seeded(seed);
  const lines = text.split('\n');
  const names = Object.keys(MUTATIONS);
  const what: string[] = [];
  const count = 1 + Math.floor(random() ** 2 * 4);
  for (let i = 0; i < count && lines.length > 0; i++) {
    const name = pick(random, names);
    what.push(name);
    MUTATIONS[name](lines, random);
  }
  return { text: lines.join('\n'), what };
}
