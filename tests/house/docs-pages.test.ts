/** The hand-written pages under docs: what they link to, name and quote is there. `UPDATE_DOCS=1` records quotations anew. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checks, formatIssue, readObservations, readScenario } from '@wheelwell/core';
import { filesIn, ROOT, textOf } from './files.js';
import { blocksOf, rewrite } from './snippets.js';

const PAGES = filesIn('docs').filter((path) => path.endsWith('.md'));
const ADDING = 'docs/adding-a-device.md';
const { scripts } = JSON.parse(textOf('package.json')) as { scripts: Record<string, string> };

it('has the pages of DEVELOPERS and of the first steps', () => {
  expect(PAGES).toEqual(expect.arrayContaining([ADDING, 'docs/tutorial.md']));
});

describe.each(PAGES)('%s', (page) => {
  const text = textOf(page);

  it('links only to what is there', () => {
    const targets = [...text.matchAll(/\]\((?!https?:)([^)]+)\)/g)].map((match) => match[1]);
    expect(targets.length).toBeGreaterThan(0);
    const headings = [...text.matchAll(/^#+ (.*)$/gm)].map(([, heading]) => anchorOf(heading));
    const broken = targets.filter((target) => {
      const [path, anchor] = target.split('#');
      // Pages that `npm run docs` makes are checked where they are made.
      if (path.startsWith('catalogue/')) return false;
      if (path !== '') return !existsSync(join(ROOT, dirname(page), path));
      return !headings.includes(anchor);
    });
    expect(broken).toEqual([]);
  });

  it('names only scripts, folders and files that are there', () => {
    const named = [...text.matchAll(/\bnpm (?:run ([a-z:]+)|(start|test))/g)]
      .filter(({ index }) => !/^npm run \w+ -w /.test(text.slice(index)))
      .map((match) => match[1] ?? match[2]);
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
    const paths = [...text.matchAll(/`((?:packages|tests|scripts|scenarios)\/[^`\s*]+)`/g)]
      .map((match) => match[1])
      .filter((path) => !path.includes('<'));
    expect(paths.filter((path) => !existsSync(join(ROOT, path)))).toEqual([]);
  });
});

describe('docs/observation-sheet.md', () => {
  const page = 'docs/observation-sheet.md';
  it('shows a sheet that reads, and that nothing on it contradicts', () => {
    const [block] = blocksOf(page).filter((b) => b.language === 'yaml');
    const path = 'scenarios/hedgelark/hedgelark.yaml';
    const { scenario } = readScenario(textOf(path), { file: path });
    const { sheet, issues, contradictions } = readObservations(block.text, { scenario });
    expect([...issues, ...contradictions].map(formatIssue)).toEqual([]);
    expect(sheet?.swings).toHaveLength(3);
    for (const { check } of sheet?.looks ?? []) expect(checks).toHaveProperty([check]);
  });
  it('names every look of the catalogue', () => {
    const looks = Object.values(checks).filter((c) => c.shows !== undefined);
    const told = textOf(page);
    expect(looks.filter((c) => !told.includes(`\`${c.kind}\` `)).map((c) => c.kind)).toEqual([]);
  });
});

function anchorOf(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[^\w\- ]/g, '')
    .replace(/ /g, '-');
}

/** Lines without the indent that all of them have. */
function dedented(lines: readonly string[]): string[] {
  const indents = lines.filter((l) => l.trim() !== '').map((l) => /^ */.exec(l)![0].length);
  const least = Math.min(...indents);
  return lines.map((line) => line.slice(least));
}

/** The run of lines of a file from the quotation's first line to its last, as the file has it now. */
function runIn(file: readonly string[], quoted: readonly string[]): string[] | undefined {
  const same = (a: string, b: string): boolean => a.trim() === b.trim();
  const first = file.findIndex((line) => same(line, quoted[0]));
  if (first < 0) return undefined;
  // The last line may be as common as a bracket: take the one as far down as in the quotation, else the next.
  const near = first + quoted.length - 1;
  const last = same(file[near] ?? '', quoted.at(-1)!)
    ? near
    : file.findIndex((line, i) => i >= first && same(line, quoted.at(-1)!));
  return last < 0 ? undefined : dedented(file.slice(first, last + 1));
}

describe('the code on the page about adding a device', () => {
  const count = blocksOf(ADDING).filter(({ language }) => language.startsWith('ts')).length;

  it('is quoted from files, all of it', () => {
    expect(count).toBeGreaterThanOrEqual(5);
  });

  it.each(Array.from({ length: count }, (_, i) => i))('is what the file says, block %i', (i) => {
    // Read anew: the block before may have been recorded with more lines.
    const block = blocksOf(ADDING).filter(({ language }) => language.startsWith('ts'))[i];
    const [, from] = /^ts from=(\S+)$/.exec(block.language)!;
    const now = runIn(textOf(from).split('\n'), block.text.split('\n'));
    expect(now, `${from} has no such run of lines`).toBeDefined();
    if (process.env.UPDATE_DOCS) rewrite(ADDING, block, now!.join('\n'));
    else expect(block.text.split('\n')).toEqual(now);
  });

  it('leaves out no parameter and no flow path of the device', () => {
    const [file] = [...textOf(ADDING).matchAll(/from=(packages\S+component\/[a-z-]+\.ts)/g)].map(
      (match) => match[1],
    );
    const body = textOf(file).slice(textOf(file).indexOf('  parameters: {'));
    const quoted = blocksOf(ADDING)
      .map(({ text }) => text.replace(/^ +/gm, ''))
      .join('\n');
    const missing = body
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line !== '};' && !quoted.includes(line));
    expect(missing).toEqual([]);
  });

  it('shows a piece of a scenario that reads', () => {
    const [piece] = blocksOf(ADDING).filter(({ language }) => language === 'yaml');
    const text = [
      'wheelwell: 1',
      'title: A coupling',
      'fluid: { kind: mineral-red }',
      'components:',
      piece.text.replace(/^/gm, '  '),
      'nodes: { stand-hose: { volume: 1 cm^3 }, supply: { volume: 1 cm^3 } }',
      'cards: { look: { title: Look, duration: 1 s, steps: [] } }',
    ].join('\n');
    const { scenario, issues } = readScenario(text);
    expect(issues.map(formatIssue)).toEqual([]);
    expect(Object.values(scenario!.components).map(({ is }) => is)).toEqual(['quick-disconnect']);
  });
});
