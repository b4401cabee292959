/** The generated pages: one for each thing a scenario may name, complete, linked, and with examples that read. */
import { posix } from 'node:path';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import * as core from '@wheelwell/core';
import { cataloguePages, headComment } from '../../scripts/docs/pages.mjs';
import { filesIn, ROOT, textOf } from './files.js';
import { forbiddenIn } from './words.js';

const { components, mechanisms, faults, rules, fluids } = core.catalogues;
const kebab = (name: string) => name.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`);
/** Text as a page shows it: one line, what Markdown would take as its own escaped. */
const shown = (text: string) => text.replace(/\s+/g, ' ').trim().replace(/[|*<]/g, '\\$&');

const { pages, examples } = cataloguePages(core, {
  read: (path) => {
    const file = `packages/core/src/${path}`;
    return existsSync(join(ROOT, file)) ? textOf(file) : undefined;
  },
  scenarios: filesIn('scenarios')
    .filter((path) => path.endsWith('.yaml') && !path.includes('/lessons/'))
    .map(textOf),
});
const pageOf = (path: string): string => {
  const text = pages.get(path);
  if (text === undefined) throw new Error(`there is no page ${path}`);
  return text;
};
const yamlIn = (text: string) =>
  [...text.matchAll(/^```yaml\n([\s\S]*?)\n```$/gm)].map((match) => match[1]);
const problems = (text: string) => core.readScenario(text).issues.map(core.formatIssue);

describe('every page', () => {
  it('is there for each thing a scenario may name, and for each catalogue', () => {
    const wanted = [
      ...Object.keys(components).map((kind) => `devices/${kind}.md`),
      ...Object.keys(mechanisms).map((kind) => `mechanisms/${kind}.md`),
      ...Object.keys(faults).map((kind) => `faults/${kind}.md`),
      ...Object.keys(rules).map((name) => `rules/${name}.md`),
      ...Object.keys(fluids).map((kind) => `fluids/${kind}.md`),
      ...['', 'devices/', 'mechanisms/', 'faults/', 'rules/', 'fluids/'].map(
        (f) => `${f}README.md`,
      ),
      'laws.md',
    ];
    expect([...pages.keys()].sort()).toEqual(wanted.sort());
  });

  it('links only to pages that are there, and stands in its index', () => {
    const broken: string[] = [];
    for (const [path, text] of pages) {
      for (const [, target] of text.matchAll(/\]\((?!https?:|#)([^)]+)\)/g)) {
        if (!pages.has(posix.join(posix.dirname(path), target))) broken.push(`${path}: ${target}`);
      }
      const name = posix.basename(path);
      if (name === 'laws.md') expect(pageOf('README.md')).toContain(`](${name})`);
      else if (name !== 'README.md')
        expect(pageOf(posix.join(posix.dirname(path), 'README.md'))).toContain(`](${name})`);
    }
    expect(broken).toEqual([]);
  });

  it('says nothing that it must not, and leaves nothing unsaid by accident', () => {
    const bad = [...pages].flatMap(([path, text]) => [
      ...forbiddenIn(text).map((word) => `${path}: ${word}`),
      ...(/\bundefined\b|\bNaN\b|\[object|\bnull\b/.exec(text) ?? []).map((w) => `${path}: ${w}`),
    ]);
    expect(bad).toEqual([]);
  });

  it('has tables whose rows have as many cells as their heads', () => {
    const uneven: string[] = [];
    for (const [path, text] of pages) {
      let cells = 0;
      for (const line of text.replace(/^```[\s\S]*?^```$/gm, '').split('\n')) {
        const count = line.startsWith('|') ? line.replace(/\\\|/g, '').split('|').length : 0;
        if (count > 0 && cells > 0 && count !== cells) uneven.push(`${path}: ${line.slice(0, 60)}`);
        cells = count;
      }
    }
    expect(uneven).toEqual([]);
  });
});

describe.each([
  ...Object.values(components).map((d) => [d.kind, `devices/${d.kind}.md`, d] as const),
  ...Object.values(mechanisms).map((d) => [d.kind, `mechanisms/${d.kind}.md`, d] as const),
])('the page of %s', (kind, path, d) => {
  const text = pageOf(path);

  it('names every parameter as files write it, with title and reason', () => {
    for (const [name, p] of Object.entries(d.parameters)) {
      const row = text.split('\n').find((line) => line.startsWith(`| \`${kebab(name)}\` | `))!;
      expect(row, name).toContain(shown(p.title));
      expect(row, name).toContain(shown(p.why));
      if (p.default === undefined) expect(row, name).toContain('**required**');
    }
  });

  it('names ports, links, inputs, modes, flow paths, readings and signals', () => {
    if (!('ports' in d)) return expect(text).toContain(d.ends.join('** (low end) to **'));
    const { ports, links, inputs, modes, flows, readings, signals } = d;
    for (const part of [ports, links, inputs, flows, readings, signals])
      for (const name of Object.keys(part ?? {})) {
        const known = [`\`${kebab(name)}\``, `\`${kind}.${name}\``];
        expect(
          known.some((word) => text.includes(word)),
          name,
        ).toBe(true);
      }
    for (const [name, mode] of Object.entries(modes ?? {})) {
      expect(text).toContain(`| \`${name}\` | `);
      for (const way of [...(mode.guards ?? []), ...(mode.timers ?? [])])
        expect(text).toContain(shown(way.cause));
    }
  });

  it('has the head comment of its file and its source word for word', () => {
    const room = 'ports' in d ? 'component' : 'mechanism';
    const head = headComment(textOf(`packages/core/src/${room}/${kind}.ts`));
    expect(head?.length).toBeGreaterThan(20);
    expect(text).toContain(`\`\`\`text\n${head}\n\`\`\``);
    expect(text.toLowerCase()).toContain(shown(d.source).toLowerCase());
  });

  it('lists the faults that can befall it, with how bad they get', () => {
    for (const f of Object.values(faults)) {
      const link = `](../faults/${f.kind}.md)`;
      expect(text.includes(link), f.kind).toBe(f.befalls.includes(kind));
      if (f.befalls.includes(kind)) expect(text).toContain(shown(f.worst));
    }
  });

  it('shows an example that reads without a problem', () => {
    expect(yamlIn(text)).toContain(examples.piece(d));
    const whole = examples.whole(d);
    expect(problems(whole)).toEqual([]);
    const read = core.readScenario(whole).scenario!;
    const entry = 'ports' in d ? read.components[kind] : read.mechanisms[kind];
    expect(entry.is).toBe(kind);
    for (const [name, p] of Object.entries(d.parameters))
      if (p.default === undefined) expect(examples.piece(d)).toContain(`${kebab(name)}:`);
    // The piece that is shown stands in the whole that was read.
    for (const line of examples.piece(d).split('\n')) expect(whole).toContain(line.trim());
  });
});

it('prints the shared laws in the words of the sources, each with its equation', () => {
  const text = pageOf('laws.md');
  expect(text).toContain('q = open orifice(dp)');
  expect(text).toContain('p_gas = precharge (volume / (volume - n))^index');
  for (const file of ['orifice', 'line-loss', 'oil', 'content', 'air']) {
    const head = headComment(textOf(`packages/core/src/medium/${file}.ts`));
    expect(head?.length, file).toBeGreaterThan(40);
    expect(text).toContain(head);
  }
});

describe.each(Object.values(faults))('the page of the fault $kind', (f) => {
  const text = pageOf(`faults/${f.kind}.md`);

  it('tells all that the catalogue knows of it, the caution first', () => {
    for (const said of [f.meaning, f.shows, f.confirm, f.remedy, f.caution, f.priorWhy, f.worst])
      expect(text.toLowerCase()).toContain(shown(said).toLowerCase().replace(/\.$/, ''));
    expect(text.toLowerCase()).toContain(shown(f.source).toLowerCase().replace(/\.$/, ''));
    expect(text.indexOf('Caution')).toBeLessThan(text.indexOf('What it is'));
    for (const kind of f.befalls)
      expect(text).toMatch(kind === 'fluid' ? /\[the oil\]/ : new RegExp(`\\[${kind}\\]`));
  });

  it('shows a card that reads without a problem', () => {
    const [card] = yamlIn(text);
    expect(card).toBe(examples.card(f));
    expect(problems(examples.wholeWithFault(f))).toEqual([]);
  });
});

describe.each(Object.values(rules))('the page of the rule $name', (rule) => {
  const text = pageOf(`rules/${rule.name}.md`);

  it('tells what it asks, its limits and its source', () => {
    for (const said of [rule.title, rule.summary, rule.source])
      expect(text.toLowerCase()).toContain(shown(said).toLowerCase().replace(/\.$/, ''));
    for (const limit of rule.limits) expect(text).toContain(`| \`${kebab(limit)}\` | `);
  });

  it('shows limits that read without a problem', () => {
    const pieces = yamlIn(text);
    expect(pieces.length).toBe(rule.limits.length > 0 ? 1 : 0);
    for (const piece of pieces) expect(problems(examples.wholeWithLimits(piece))).toEqual([]);
  });
});

it.each(Object.values(fluids))('the page of the oil $kind shows a line that reads', (f) => {
  const text = pageOf(`fluids/${f.kind}.md`);
  const [line] = yamlIn(text);
  const whole = examples.whole(components.reservoir).replace(/^fluid:\n( .*\n)+/m, `${line}\n`);
  expect(whole).toContain(line);
  expect(problems(whole)).toEqual([]);
  expect(core.readScenario(whole).scenario!.fluid.kind).toBe(f.kind);
  expect(text.toLowerCase()).toContain(shown(f.source).toLowerCase());
});
