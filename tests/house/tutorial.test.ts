/**
 * The tutorial holds: after each of its ten steps the file reads and plays every card, breaks
 * just the rules the card says, and shows what the page says. `UPDATE_DOCS=1` records figures
 * and printed lines anew.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import * as core from '@wheelwell/core';
import { runProgram } from '../../packages/core/src/cli/program.js';
import { ROOT, textOf } from './files.js';
import { figureOf, figuresIn } from './figures.js';
import { blocksOf, excerptOf, rewrite } from './snippets.js';

const PAGE = 'docs/tutorial.md';
const FILE = 'bramblecap.yaml';

type Plain = { readonly [key: string]: unknown };

const isMap = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A block put into the file as the page tells: maps are joined, all else is replaced. */
function put(into: unknown, block: unknown): unknown {
  if (!isMap(into) || !isMap(block)) return block;
  const joined = Object.entries(block).map(([key, value]) => [key, put(into[key], value)] as const);
  return { ...into, ...Object.fromEntries(joined) };
}

/** The page in pieces, a piece for each step, without what comes before and after them. */
function stepsOf(page: string): { title: string; text: string; from: number }[] {
  const heads = [...page.matchAll(/^## (.*)$/gm)];
  return heads
    .map((head, i) => ({
      title: head[1],
      text: page.slice(head.index, heads[i + 1]?.index),
      from: head.index,
    }))
    .filter(({ title }) => /^\d+\. /.test(title));
}

const yamlBlocks = blocksOf(PAGE).filter(({ language }) => language === 'yaml');
const files: string[] = [];
yamlBlocks.reduce<unknown>((file, block) => {
  const next = put(file, parse(block.text));
  files.push(stringify(next));
  return next;
}, {});

/** What the command line prints for a file. */
function printed(text: string, call: string): string[] {
  let out = '';
  let error = '';
  const io = {
    out: (t: string) => (out += t),
    error: (t: string) => (error += t),
    outIsTerminal: false,
    errorIsTerminal: false,
    read: () => text,
    write: () => undefined,
    now: () => 0,
  };
  const code = runProgram(call.split(' ').slice(3), io, core, '0');
  expect(error).toBe('');
  expect([0, 1]).toContain(code);
  return out.trimEnd().split('\n');
}

const runs = new Map<string, core.Run>();
function runOf(step: number, card: string): core.Run {
  const key = `${step} ${card}`;
  const known = runs.get(key);
  if (known !== undefined) return known;
  const run = core.simulate(core.readScenario(files[step]).scenario!, { card });
  runs.set(key, run);
  return run;
}

it('has ten steps, each with one block to put into the file, the cautions first', () => {
  const steps = stepsOf(textOf(PAGE));
  expect(steps.map(({ title }) => Number.parseInt(title))).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  for (const { text, title } of steps) expect(text.match(/^```yaml$/gm), title).toHaveLength(1);
  expect(steps[0].text.slice(0, 400)).toMatch(/lethal|model/);
  expect(steps[0].text.indexOf('lethal force')).toBeLessThan(steps[0].text.indexOf('```yaml'));
});

describe.each(files.map((text, i) => [i + 1, text] as const))('step %i', (number, text) => {
  const step = number - 1;
  const { scenario, issues } = core.readScenario(text, { file: FILE });

  it('reads without a problem', () => {
    expect(issues.map(core.formatIssue)).toEqual([]);
  });

  it('plays the cards it adds or changes, which break just the rules they say', () => {
    const block = parse(yamlBlocks[step].text) as { cards?: Plain };
    const names = new Set(Object.keys(block.cards ?? {}));
    for (const { card } of figuresIn(stepsOf(textOf(PAGE))[step].text)) names.add(card);
    expect(names.size).toBeGreaterThan(0);
    for (const name of names) {
      const run = runOf(step, name);
      expect(run.outcome.kind, name).toBe('done');
      const raised = run.flags.filter(({ severity }) => severity !== 'note');
      expect([...new Set(raised.map(({ rule }) => rule))].sort(), name).toEqual(
        [...scenario!.cards[name].expect].sort(),
      );
    }
  });

  it('shows the figures that the page gives', () => {
    const page = textOf(PAGE);
    const { text: own, from } = stepsOf(page)[step];
    const figures = figuresIn(own).map((f) => ({
      ...f,
      now: figureOf(runOf(step, f.card), f.metric),
    }));
    expect(figures.length).toBeGreaterThan(0);
    if (process.env.UPDATE_DOCS) {
      let fresh = page;
      for (const { at, text: old, now } of figures.reverse())
        fresh = fresh.slice(0, from + at) + now + fresh.slice(from + at + old.length);
      writeFileSync(join(ROOT, PAGE), fresh);
    } else
      expect(figures.map((f) => `${f.metric}: ${f.text}`)).toEqual(
        figures.map((f) => `${f.metric}: ${f.now}`),
      );
  });
});

describe('what the page shows of the command line', () => {
  const blocks = () => blocksOf(PAGE).filter(({ language }) => language === 'console');
  const count = blocks().length;

  it('is shown', () => {
    expect(count).toBeGreaterThanOrEqual(4);
  });

  it.each(Array.from({ length: count }, (_, i) => i))('is what it prints, block %i', (i) => {
    const block = blocks()[i];
    const step = blocksOf(PAGE).filter(
      (b) => b.language === 'yaml' && b.start < block.start,
    ).length;
    const [call, ...shown] = block.text.split('\n');
    expect(call).toMatch(/^\$ npx wheelwell swing bramblecap\.yaml/);
    const now = excerptOf(printed(files[step - 1], call), shown);
    if (process.env.UPDATE_DOCS) rewrite(PAGE, block, [call, ...now].join('\n'));
    else expect(shown).toEqual(now);
  });
});
