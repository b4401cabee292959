/** `wheelwell list faults` on the real catalogue: one can find a fault by part, by word and by name. */
import { describe, expect, it } from 'vitest';
import { BadInput } from '../../packages/core/src/cli/io.js';
import { list } from '../../packages/core/src/cli/list.js';
import { LISTS } from '../../packages/core/src/cli/list-entry.js';
import { FAULT_GROUPS } from '../../packages/core/src/define/index.js';
import { catalogues } from '../../packages/core/src/index.js';

const { faults } = catalogues;
const linesOf = (text: string): string[] => text.trimEnd().split('\n');
/** Names in a printed list, in its order; headings begin with a capital. */
const namesIn = (text: string): string[] =>
  linesOf(text)
    .slice(1)
    .filter((line) => /^[a-z]/.test(line))
    .map((line) => line.split(' ')[0]);

describe('the list of faults', () => {
  const printed = list(catalogues, 'faults', undefined, 'us');
  const lines = linesOf(printed);

  it('has every fault once, one a line, with how often it is met and what it befalls', () => {
    expect(namesIn(printed).sort()).toEqual(Object.keys(faults).sort());
    for (const fault of Object.values(faults)) {
      const line = lines.find((l) => l.startsWith(`${fault.kind} `))!;
      expect(line).toContain(` ${fault.title} `);
      expect(line).toContain(` ${fault.prior} `);
      const { befalls } = fault;
      const few =
        befalls.length > 2 ? `${befalls[0]} and ${befalls.length - 1} more` : befalls.join(', ');
      expect(line.endsWith(`  ${few}`)).toBe(true);
    }
  });

  it('puts each under the heading of its group, in the order of the groups, and counts them', () => {
    const headings = lines.filter((line) => /\(\d+\)$/.test(line));
    const used = FAULT_GROUPS.filter((g) => Object.values(faults).some((f) => f.group === g));
    expect(headings.map((h) => h.toLowerCase().replace(/ \(\d+\)$/, ''))).toEqual(used);
    let heading = '';
    const under: Record<string, number> = {};
    for (const line of lines) {
      if (headings.includes(line)) heading = line;
      if (!/^[a-z]/.test(line) || line === lines[0]) continue;
      under[heading] = (under[heading] ?? 0) + 1;
      expect(heading.toLowerCase()).toContain(faults[line.split(' ')[0]].group);
    }
    for (const [h, count] of Object.entries(under)) expect(h.endsWith(` (${count})`)).toBe(true);
  });

  it('keeps its groups for a word, and leaves out what does not speak of it', () => {
    const found = namesIn(list(catalogues, 'faults', 'sags', 'us'));
    expect(found).toContain('piston-seal-bypass');
    expect(found).toContain('check-valve-leak');
    expect(found).not.toContain('filter-loaded');
    for (const name of found) expect(faults[name].shows + faults[name].meaning).toMatch(/\bsags/i);
  });

  it('finds by the part, by how often and by group as well, whatever the case', () => {
    const byPart = namesIn(list(catalogues, 'faults', 'Relief-Valve', 'us'));
    expect(byPart).toEqual(expect.arrayContaining(['relief-set-low', 'relief-dirt-held']));
    for (const name of namesIn(list(catalogues, 'faults', 'rare', 'us')))
      expect(JSON.stringify(faults[name])).toMatch(/\brare/i);
    const supply = namesIn(list(catalogues, 'faults', 'supply', 'us'));
    const inGroup = Object.values(faults).filter((f) => f.group === 'supply');
    expect(supply).toEqual(expect.arrayContaining(inGroup.map((f) => f.kind)));
  });

  it('shows the one that is named in full, though others speak of it', () => {
    const text = list(catalogues, 'faults', 'relief-set-low', 'us').replace(/\s+/g, ' ');
    const fault = faults['relief-set-low'];
    expect(text).toMatch(/^relief-set-low: /);
    for (const part of [fault.meaning, fault.shows, fault.confirm, fault.caution, fault.group])
      expect(text).toContain(part);
  });
});

describe('every list', () => {
  it.each(LISTS)('of %s refuses a word that nothing speaks of', (what) => {
    expect(() => list(catalogues, what, 'zzz', 'us')).toThrow(BadInput);
  });

  it.each(LISTS)('of %s fits a wide terminal', (what) => {
    const long = linesOf(list(catalogues, what, undefined, 'us')).filter((l) => l.length > 160);
    expect(long).toEqual([]);
  });
});

it('finds devices by a word of what they are for', () => {
  expect(namesIn(list(catalogues, 'devices', 'lock', 'us'))).toEqual(
    expect.arrayContaining(['uplock', 'downlock']),
  );
});
