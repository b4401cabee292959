/** Sheets that are wrong, strange or very long: clear words, nothing lost, an answer all the same. Invented data. */
import { describe, expect, it } from 'vitest';
import {
  diagnose,
  readObservations,
  type Diagnosis,
  type SignaturePool,
} from '../../../packages/core/src/index.js';
import { swing } from '../../support/small-swing.js';

const { scenario } = swing('plain');
const memory = new Map<string, Readonly<Record<string, number>>>();
const HEAD = 'wheelwell-observations: 1\n';
const SOUND = '  - direction: up\n    times: { unit: { locked: 2.3 s } }\n';

/** The diagnosis of whatever could be read, and what was said on the way. */
async function judged(
  text: string,
  pool?: SignaturePool,
): Promise<{ d: Diagnosis; said: string[] }> {
  const { sheet, issues, contradictions } = readObservations(text, { file: 'a.yaml', scenario });
  const d = await diagnose(scenario, sheet!, pool === undefined ? { memory } : { pool });
  const said = [...issues, ...contradictions].map((i) =>
    `${i.line}: ${i.message} ${i.found}`.trim(),
  );
  return { d, said };
}
/** A ranking that somebody can read: shares of one, none of them no number. */
function sensible(d: Diagnosis): void {
  expect(d.whole).toBe(true);
  const all = d.groups.flatMap((g) => g.members);
  const sum = all.reduce((total, m) => total + m.probability, 0) + d.unknown;
  expect(sum).toBeGreaterThan(0.97);
  expect(sum).toBeLessThan(1 + 1e-6);
  for (const m of all)
    for (const { at } of m.severities) expect(Number.isFinite(at), m.causes[0]?.fault).toBe(true);
}
const labels = (d: Diagnosis): string[] => d.groups[0].members[0].comparisons.map((c) => c.label);

describe('a sheet for another aircraft', { timeout: 300_000 }, () => {
  it('is told of once when it is read; of its names every one is told that cannot be used, the rest is', async () => {
    const { d, said } = await judged(
      `${HEAD}aircraft: Another one\nswings:\n  - direction: up
    times: { unit: { locked: 2.3 s }, nose: { locked: 3 s } }
    order: [unit moving, nose moving]
    gauges: { nowhere: { static: 10 psi } }
    supply: { mule: { strokes: 3 } }
    remarks: { tail: did not move }
looks: [{ check: wet-look, on: nose-jack, found: yes }, { check: crystal-ball, on: jack, found: yes }]
`,
    );
    expect(said).toEqual(['2: this sheet is for another aircraft Another one']);
    const unused = d.unused.join('\n');
    for (const name of ['nose', 'nowhere', 'mule', 'tail'])
      expect(unused).toContain(`swing 1: ${name}: this aircraft has nothing of this name`);
    expect(unused).toContain('look wet-look at nose-jack: this aircraft has nothing of this name');
    expect(unused).toContain('look crystal-ball at jack: there is no such look among the checks');
    expect(labels(d)).toEqual(['unit locked']);
    sensible(d);
  });
});

describe('times that cannot be', { timeout: 300_000 }, () => {
  it('are told of with their line, and left out; the others count', async () => {
    const { d, said } = await judged(
      `${HEAD}swings:
  - direction: up
    times:
      unit: { moving: -1 s, locked: 2.3 s, total: fast }
  - direction: sideways
    times: { unit: { locked: 9 s } }
`,
    );
    expect(said.map((s) => s.split(':')[0])).toEqual(['5', '5', '6']);
    expect(labels(d)).toEqual(['unit locked']);
    sensible(d);
  });

  it('against each other are kept, both, told of, and no ranking breaks on them', async () => {
    const { d, said } = await judged(
      `${HEAD}swings:
  - direction: up
    times: { unit: { moving: 3000 s, locked: 0 s, total: 0.001 s } }
    remarks: { unit: [did not move, moved by jerks] }
`,
    );
    expect(said.length).toBeGreaterThan(2);
    expect(d.unused).toEqual([]);
    sensible(d);
  });

  it('sharper than anybody reads do not make a ranking of nothing but noise', async () => {
    const { d } = await judged(
      `${HEAD}reading-error: 1 ms\nswings:\n  - direction: up\n    times: { unit: { locked: 2.31 s, total: 2.32 s } }\n`,
    );
    sensible(d);
  });
});

describe('text in fields of figures', () => {
  it('is told of wherever it stands', async () => {
    const { d, said } = await judged(
      `${HEAD}conditions: { supply-flow: a lot, temperature: warm }
swings:
  - direction: up
    conditions: { left-for: long }
    times: { unit: { locked: 2.3 s } }
    gauges: { pressure: { static: high, peak: 3 m } }
    supply: { supply: { strokes: many, moving-flow: 3 psi } }
    never: [whatever]
    order: 7
    remarks: { unit: sang }
`,
    );
    expect(said).toHaveLength(10);
    expect(labels(d)).toEqual(['unit locked']);
    sensible(d);
  });
});

describe('nothing', () => {
  it('on a sheet is nothing to explain', async () => {
    const { d } = await judged(HEAD);
    expect(d.groups).toEqual([]);
    expect(d.unused.join()).toMatch(/no swing on the sheet/);
  });
  it('in a swing leaves what is usual', async () => {
    const { d } = await judged(`${HEAD}swings:\n  - direction: up\n`);
    expect(d.groups[0].members[0].causes).toEqual([]);
    sensible(d);
  });
});

describe('ten thousand rows', { timeout: 300_000 }, () => {
  it('that say the same are one middle figure, known well, and facts counted three times', async () => {
    const row = `${SOUND}    remarks: { unit: did not move }\n`;
    const { d } = await judged(`${HEAD}swings:\n${row.repeat(10_000)}`);
    expect(labels(d)).toContain('unit locked, middle of 10000');
    expect(d.unused).toContain('unit did not move: noted 10000 times, counted 3 times');
    sensible(d);
  });

  it('each under its own conditions: those that can be played are, the others are named', async () => {
    const rows = Array.from(
      { length: 10_000 },
      (_, i) =>
        `  - direction: up\n    conditions: { temperature: ${280 + i / 1000} K }\n    times: { unit: { locked: 2.3 s } }\n`,
    );
    // Swings that cost nothing: what is asked is how the rows are dealt with.
    const pool: SignaturePool = {
      play: (jobs, onSignature) => {
        jobs.forEach(({ faults }, i) =>
          onSignature(i, { up: 1, 'up/unit/locked': 2.3 + (faults[0]?.severity ?? 0) }),
        );
        return Promise.resolve();
      },
    };
    const { d } = await judged(`${HEAD}swings:\n${rows.join('')}`, pool);
    expect(d.unused).toHaveLength(10_000 - 8);
    expect(d.unused[0]).toMatch(/^swing 9: .*more different conditions/);
    expect(labels(d)).toHaveLength(8);
    sensible(d);
  });

  it('of looks at one part count once', async () => {
    const look = '  - { check: wet-look, on: jack, found: yes }\n';
    const { d } = await judged(`${HEAD}swings:\n${SOUND}looks:\n${look.repeat(10_000)}`);
    expect(d.unused).toEqual(['wet-look at jack: found: noted 10000 times, counted once']);
    sensible(d);
  });
});
