/**
 * What README and DEVELOPERS show is true: examples run and print what is printed there,
 * commands exist, folders and links lead somewhere. `UPDATE_DOCS=1` records the output anew.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { formatIssue, readScenario, scenarioJsonSchema, simulate } from '@wheelwell/core';
import { ROOT, textOf } from './files.js';
import { blocksOf, complaintsOf, excerptOf, fileOf, outputOf, rewrite } from './snippets.js';

const PAGES = ['README.md', 'DEVELOPERS.md'];
const COMMAND = 'packages/core/bin/wheelwell.js';

const { scripts } = JSON.parse(textOf('package.json')) as { scripts: Record<string, string> };
const shellLines = (page: string) =>
  blocksOf(page)
    .filter(({ language }) => language === 'sh')
    .flatMap(({ text }) => text.split('\n'));

describe('the library example of the README', () => {
  const blocks = blocksOf('README.md');
  const at = blocks.findIndex(({ language }) => language === 'ts');
  const door = existsSync(join(ROOT, 'packages/core/src/index.ts'));

  it('is about twenty lines long', () => {
    const lines = blocks[at].text.split('\n').filter((line) => line.trim() !== '');
    expect(lines.length).toBeGreaterThan(5);
    expect(lines.length).toBeLessThanOrEqual(20);
  });

  it.runIf(door)('runs and prints what the README says', async () => {
    const shown = blocks[at + 1];
    expect(shown.language).toBe('text');
    const file = fileOf('readme', blocks[at]);
    expect(complaintsOf(file)).toEqual([]);
    const printed = await outputOf(file);
    expect(printed).not.toBe('');
    if (process.env.UPDATE_DOCS) rewrite('README.md', shown, printed);
    else expect(printed).toBe(shown.text);
  });
});

describe('the commands of the README', () => {
  const calls = shellLines('README.md').filter((line) => line.startsWith('npx wheelwell '));

  it('show the command line', () => {
    expect(calls.length).toBeGreaterThanOrEqual(3);
  });

  it.runIf(existsSync(join(ROOT, COMMAND))).each(calls)(
    '%s',
    (call) => {
      expect(
        existsSync(join(ROOT, 'packages/core/dist/bundle/wheelwell.js')),
        'core is not built: npm run build',
      ).toBe(true);
      const { status, stdout, stderr } = spawnSync(
        process.execPath,
        [COMMAND, ...call.split(' ').slice(2)],
        { cwd: ROOT, encoding: 'utf8' },
      );
      expect(stderr).toBe('');
      // 1: the gear was flagged, which is an answer; 2 and 3 are not.
      expect([0, 1]).toContain(status);
      expect(stdout.length).toBeGreaterThan(100);
    },
    // A diagnosis plays some hundred swings.
    240_000,
  );
});

describe('what the README shows of the command line', () => {
  const count = blocksOf('README.md').filter(({ language }) => language === 'console').length;

  it('is shown', () => {
    expect(count).toBeGreaterThanOrEqual(3);
  });

  it.each(Array.from({ length: count }, (_, i) => i))('is what it prints, block %i', (i) => {
    // Read anew: the block before may have been recorded with more lines.
    const block = blocksOf('README.md').filter(({ language }) => language === 'console')[i];
    const [call, ...shown] = block.text.split('\n');
    expect(call).toMatch(/^\$ npx wheelwell /);
    const { stdout } = spawnSync(process.execPath, [COMMAND, ...call.split(' ').slice(3)], {
      cwd: ROOT,
      encoding: 'utf8',
    });
    const now = excerptOf(stdout.trimEnd().split('\n'), shown);
    if (process.env.UPDATE_DOCS) rewrite('README.md', block, [call, ...now].join('\n'));
    else expect(shown).toEqual(now);
  });
});

describe('the scenario of the README', () => {
  const { text } = blocksOf('README.md').find(({ language }) => language === 'yaml')!;
  const { scenario, issues } = readScenario(text, { file: 'README.md' });

  it('reads without a problem', () => {
    expect(issues.map(formatIssue)).toEqual([]);
  });

  it('has every section there is', () => {
    const { properties } = scenarioJsonSchema() as { properties: Record<string, unknown> };
    expect(Object.keys(parse(text) as object).sort()).toEqual(Object.keys(properties).sort());
    const { properties: parts } = (
      properties.cards as { additionalProperties: { properties: Record<string, unknown> } }
    ).additionalProperties;
    const used = Object.values((parse(text) as { cards: Record<string, object> }).cards);
    expect([...new Set(used.flatMap((card) => Object.keys(card)))].sort()).toEqual(
      Object.keys(parts)
        .filter((key) => key !== 'note')
        .sort(),
    );
  });

  it('plays every card to its end and breaks just the rules it says', () => {
    for (const [name, card] of Object.entries(scenario!.cards)) {
      const run = simulate(scenario!, { card: name });
      expect(run.outcome.kind).toBe('done');
      const raised = run.flags.filter(({ severity }) => severity !== 'note');
      expect([...new Set(raised.map(({ rule }) => rule))].sort()).toEqual([...card.expect].sort());
    }
  });
});

describe.each(PAGES)('%s', (page) => {
  const text = textOf(page);

  it('names only npm scripts that exist', () => {
    const named = [...text.matchAll(/\bnpm (?:run ([a-z:]+)|(start|test))/g)]
      .filter(({ index }) => !text.slice(index).match(/^npm run \w+ -w /))
      .map((match) => match[1] ?? match[2]);
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });

  it('links only to what is there', () => {
    const targets = [...text.matchAll(/\]\((?!https?:|#)([^)]+)\)/g)].map((match) => match[1]);
    expect(targets.filter((target) => !existsSync(join(ROOT, target)))).toEqual([]);
  });

  it('names only folders and files that are there, but for <placeholders>', () => {
    const named = [...text.matchAll(/`((?:packages|tests|scripts|scenarios)\/[^`\s*]+)`/g)]
      .map((match) => match[1])
      .filter((path) => !path.includes('<') && !path.startsWith('tests/artefacts'));
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((path) => !existsSync(join(ROOT, path)))).toEqual([]);
  });
});
