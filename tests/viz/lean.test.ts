/** What is left out of libraries for the page's sake: the rest reads texts and units as before. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';
import { beforeAll, expect, it } from 'vitest';
import { Unit } from '../../packages/core/src/quantity/mathematics.js';
import { parseAnyQuantity } from '../../packages/core/src/quantity/index.js';
import { parseText } from '../../packages/core/src/scenario/parse.js';
import { leanLibraries } from '../../packages/viz/build/lean-libraries.js';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const OUT = here('../artefacts/lean');

interface Reader {
  readonly parseText: typeof parseText;
  readonly parseAnyQuantity: typeof parseAnyQuantity;
}
let lean: Reader;

beforeAll(async () => {
  await build({
    configFile: false,
    root: here('../../packages/viz'),
    logLevel: 'warn',
    plugins: [leanLibraries()],
    build: {
      outDir: OUT,
      emptyOutDir: true,
      target: 'es2022',
      lib: { entry: here('./lean-entry.ts'), formats: ['es'], fileName: 'lean' },
    },
  });
  lean = (await import(pathToFileURL(join(OUT, 'lean.js')).href)) as Reader;
});

const DEMOS = ['hedgelark', 'fenwren', 'tarnswift'].map((name) =>
  readFileSync(here(`../../scenarios/${name}/${name}.yaml`), 'utf8'),
);
const ODD = [
  ...['a: &x {b: 1}\nc: *x\nd: {<<: *x}', 'a: &a [*a]', 'a: *nope', '&a a: &b b'],
  ...['!!set {a, b}', '!!omap [a: 1]', 'a: !!merge x', 'a: !!binary aGk=', 'a: !foo 1'],
  ...['a: !!timestamp 2001-01-01', 'a: !!int "3"', 'a: !!str 3', '!!map {a: 1}', 'a: !!float 1'],
  ...['%YAML 1.1\n---\na: yes', '%TAG ! tag:x,2000:\n---\na: !foo 1', '--- a\n--- b', '# only', ''],
  ...['? [a, b]\n: c', 'a: |+\n x\n\n', 'a: >-\n  b\n   c\n', 'a: "x\\u0041"', "a: 'it''s'"],
  ...['a: [1, 2, {b: c}]', '- a\n- b', 'a: 1\na: 2', '{a', 'a:\n\t- b', 'a: @b', '"a": b # c'],
  'a: 0x1F\nb: 0o7\nc: 1e3\nd: .inf\ne: .nan\nf: ~\ng: null\nh: TRUE\ni: 1.50',
];
const TOKENS = [
  ...['a', 'b: ', '- ', '\n', '  ', '{', '}', '[', ']', ', ', '&x ', '*x', '!!str ', '!t ', '"'],
  ...["'", '|', '>', '# ', '? ', ',', ': ', '12', '-', '~', '<<: ', '---\n', '%YAML 1.2\n', '\t'],
];

/** Texts of some tokens each, the same ones every time. */
function texts(count: number): string[] {
  let seed = 1;
  const next = (below: number): number =>
    (seed = (Math.imul(seed, 1103515245) + 12345) & 0x7fffffff) % below;
  return Array.from({ length: count }, () =>
    Array.from({ length: next(14) + 1 }, () => TOKENS[next(TOKENS.length)]).join(''),
  );
}

it('reads any text, sound or not, as the whole library does', () => {
  const seen = (read: Reader['parseText'], text: string): unknown => {
    const { data, issues } = read(text, 'file');
    return { data, issues: issues.list };
  };
  for (const text of [...DEMOS, ...ODD, ...texts(5000)])
    expect(seen(lean.parseText, text), text.slice(0, 200)).toEqual(seen(parseText, text));
});

it('knows every unit of every figure that the whole library knows', () => {
  const { UNITS } = Unit as unknown as {
    readonly UNITS: Readonly<Record<string, { readonly prefixes: object }>>;
  };
  const names = Object.entries(UNITS).flatMap(([unit, { prefixes }]) =>
    Object.keys(prefixes).map((prefix) => prefix + unit),
  );
  let known = 0;
  for (const name of names) {
    for (const text of [`3 ${name}`, `3 ${name}^2`, `3 N/${name}`, `3 ${name} m`]) {
      const whole = parseAnyQuantity(text);
      if ('problem' in whole) continue;
      known += 1;
      expect(lean.parseAnyQuantity(text), text).toEqual(whole);
    }
  }
  expect(known).toBeGreaterThan(1000);
});
