/** Recordings as evidence, made of runs of a small gear: what is read off them, and what a gap leaves out. Invented data. */
import { describe, expect, it } from 'vitest';
import {
  diagnose,
  readObservations,
  simulate,
  type Run,
} from '../../../packages/core/src/index.js';
import { swing } from '../../support/small-swing.js';

const { scenario } = swing('recorded', {
  parts: {
    restrictor: {
      is: 'one-way-restrictor',
      ports: { inlet: 'up', outlet: 'lift' },
      bore: '1.4 mm',
      'free-bore': '3 mm',
    },
  },
});
const PSI = 6894.757293168361;
const memory = new Map<string, Readonly<Record<string, number>>>();
const STEP = 0.05;
/** The lever goes up at 0.2 s of the card. */
const START = 0.2;

/** A logger's file of the way up, its clock ahead of the run's by `ahead`; `skip` says which rows it lost. */
function logged(run: Run, ahead: number, skip: (t: number) => boolean = () => false): string {
  const at = (channel: string, t: number): number => {
    const { t: ts, v } = run.series(channel)!;
    const i = ts.findIndex((x) => x >= t);
    return v[i < 0 ? v.length - 1 : i];
  };
  const rows = ['time (ms),main leg (deg),P1 (psi)'];
  for (let t = 0; t < 6.8; t += STEP) {
    if (skip(t)) continue;
    const angle = (at('leg.angle', t) * 180) / Math.PI;
    const pressure = (at('pressure.pressure', t) - scenario.ambient) / PSI;
    rows.push(`${Math.round((t + ahead) * 1000)},${angle.toFixed(2)},${pressure.toFixed(0)}`);
  }
  return `${rows.join('\n')}\n`;
}

async function judged(file: string | undefined, offset?: number) {
  const { sheet, issues } = readObservations(
    `wheelwell-observations: 1
swings:
  - direction: up
    recordings:
      - file: up.csv
        columns: { leg.angle: main leg, pressure.pressure: P1 }
${offset === undefined ? '' : `        offset: ${offset} s`}
`,
    { scenario },
  );
  expect(issues).toEqual([]);
  return diagnose(scenario, sheet!, {
    memory,
    ...(file !== undefined && { recordings: { 'up.csv': file } }),
  });
}
const stuck = simulate(scenario, {
  faults: [{ fault: 'restrictor-check-stuck-shut', on: 'restrictor', severity: 1 }],
});
const sound = simulate(scenario);

describe('a recording', () => {
  it('of a sound swing, its selector’s time noted, is foretold by the sound aircraft to its sampling', async () => {
    const d = await judged(logged(sound, 100), 100 + START);
    expect(d.unused).toEqual([]);
    const healthy = d.groups[0].members.find((m) => m.causes.length === 0)!;
    const labels = healthy.comparisons.map((c) => c.label);
    for (const label of ['unit leaves', 'unit arrives', 'pressure, static', 'pressure, peak'])
      expect(labels).toContain(`${label}, recorded`);
    for (const c of healthy.comparisons)
      expect(Math.abs(c.observed - c.foretold), c.label).toBeLessThan(c.error);
  });

  it('of a slow swing finds its cause, and lies where it belongs without being told', async () => {
    const d = await judged(logged(stuck, 7));
    expect(d.unused).toEqual([]);
    const first = d.groups[0].members;
    expect(first.some((m) => m.causes[0]?.fault === 'restrictor-check-stuck-shut')).toBe(true);
    const travel = first[0].comparisons.find((c) => c.label === 'unit travel, recorded')!;
    const { moving, locked } = stuck.timings[0];
    expect(Math.abs(travel.observed - (locked - moving))).toBeLessThan(0.35);
    // Nobody knows when the lever moved: no times from there.
    expect(first[0].comparisons.some((c) => c.label.includes('arrives'))).toBe(false);
  });

  it('with a gap leaves out what falls into it, and says so', async () => {
    const home = stuck.timings[0].locked;
    const d = await judged(
      logged(stuck, 0, (t) => Math.abs(t - home) < 0.4),
      START,
    );
    expect(d.unused.join('; ')).toMatch(
      /swing 1: recording up\.csv: leg\.angle: when it arrives falls into a gap from 3\.\d+ s/,
    );
    const labels = d.groups[0].members[0].comparisons.map((c) => c.label);
    expect(labels).toContain('unit leaves, recorded');
    expect(labels).not.toContain('unit arrives, recorded');
    // Nor is it taken for a leg that never arrived.
    expect(labels.join()).not.toMatch(/did not arrive/);
  });

  it('whose leg never arrives says that', async () => {
    const short = simulate(scenario, {
      faults: [{ fault: 'seal-fragment-jam', on: 'jack', severity: 1 }],
    });
    const d = await judged(logged(short, 0), START);
    const [first] = d.groups[0].members;
    expect(first.comparisons.map((c) => c.label)).toContain('unit did not arrive, recorded');
    expect(d.groups[0].members.some((m) => m.causes[0]?.fault === 'seal-fragment-jam')).toBe(true);
  });

  it('whose file is not there, is no table, or has other columns is told of, and nothing is made of it', async () => {
    const said = async (file: string | undefined) => (await judged(file, 0)).unused.join('; ');
    expect(await said(undefined)).toMatch(/up\.csv: its file is not there/);
    expect(await said('nothing here')).toMatch(/no figures in this file/);
    expect(await said('time (s),other (deg)\n0,1\n1,2\n')).toMatch(
      /there is no column "main leg", only time, other/,
    );
    expect(await said('time (s),main leg (deg),P1 (psi)\n0,soon,1\n1,2,3\n2,3,4\n')).toMatch(
      /main leg: this is not a number: soon/,
    );
  });
});
