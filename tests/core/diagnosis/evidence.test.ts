/** The kinds of evidence a sheet has beside its times: what each does to a ranking, on small gears. Invented data. */
import { describe, expect, it } from 'vitest';
import {
  diagnose,
  readObservations,
  simulate,
  type Diagnosis,
  type Scenario,
} from '../../../packages/core/src/index.js';
import { evidencesOf } from '../../../packages/core/src/analysis/diagnosis/entry.js';
import { neverFacts, remarkSeen } from '../../../packages/core/src/analysis/diagnosis/fact.js';
import { lookFinds } from '../../../packages/core/src/analysis/diagnosis/look.js';
import { pausesOf } from '../../../packages/core/src/analysis/diagnosis/pause.js';
import { setupsOf } from '../../../packages/core/src/analysis/diagnosis/setup.js';
import type { Signature } from '../../../packages/core/src/analysis/diagnosis/shapes.js';
import { signatureOf } from '../../../packages/core/src/analysis/diagnosis/signature.js';
import { catalogues } from '../../../packages/core/src/index.js';
import { aircraft } from '../../support/aircraft.js';
import { pair } from '../../support/case-pair.js';
import { handPumped } from '../../support/case-small.js';
import { likelihoodOfFact } from '../../support/fact-of.js';
import { swing, lever } from '../../support/small-swing.js';

const memory = new Map<string, Readonly<Record<string, number>>>();
async function judged(scenario: Scenario, ...lines: readonly string[]): Promise<Diagnosis> {
  const { sheet, issues } = readObservations(
    `wheelwell-observations: 1\nswings:\n${lines.map((l) => `  ${l}\n`).join('')}`,
    { scenario },
  );
  expect(issues).toEqual([]);
  const found = await diagnose(scenario, sheet!, { memory });
  expect(found.unused).toEqual([]);
  return found;
}
/** Of all explanations with this one cause. */
const chance = (d: Diagnosis, fault: string): number =>
  d.groups
    .flatMap((g) => g.members)
    .filter((m) => m.causes.some((c) => c.fault === fault))
    .reduce((sum, m) => sum + m.probability, 0);

/** Nothing but oil holds the leg up. */
const onOil = swing('on oil', {
  parts: { uplock: undefined },
  steps: [lever(0.2, 'up')],
  duration: 6,
}).scenario;

describe('left to itself', () => {
  it('a leg that sags speaks for what lets its oil go', async () => {
    const sags = await judged(onOil, '- direction: up', '  remarks: { unit: drifts when neutral }');
    const d = chance(sags, 'selector-return-leak') + chance(sags, 'piston-seal-bypass');
    const plain = await judged(onOil, '- direction: up', '  conditions: { left-for: 60 s }');
    expect(d).toBeGreaterThan(
      3 * (chance(plain, 'selector-return-leak') + chance(plain, 'piston-seal-bypass')),
    );
  });

  it('the card is cut where the gear is home, lever to neutral, supply off, and goes on as long as noted', () => {
    const { sheet } = readObservations(
      'wheelwell-observations: 1\nswings:\n- direction: up\n  conditions: { left-for: 5 min }\n',
    );
    const scenario = swing('left').scenario;
    const { setups } = setupsOf(catalogues, scenario, sheet!);
    const card = setups.at(0).scenario.cards[setups.at(0).card];
    expect(setups.at(0).reading.leftAt).toBe(7);
    expect(card.duration).toBe(307);
    const late = card.steps.filter((s) => s.at >= 7).map((s) => `${s.device} ${s.text}`);
    expect(late.sort()).toEqual(['selector neutral', 'supply off']);
  });
});

describe('what gauges, meters and strokes say', () => {
  it('strokes of a hand pump are counted to the lock, and air costs more of them', () => {
    const of = (severity: number): number =>
      signatureOf(
        simulate(handPumped, {
          faults: severity === 0 ? [] : [{ fault: 'free-air', on: 'fluid', severity }],
        }),
      )['up/supply/supply/strokes'];
    expect(of(0)).toBeGreaterThan(6);
    expect(of(1)).toBeGreaterThan(of(0));
  });

  it('a gauge on any point is foretold once the sheet has one there', () => {
    const gear = pair();
    const { sheet } = readObservations(
      'wheelwell-observations: 1\nswings:\n- direction: up\n  gauges: { left-lift: { static: 0 psi } }\n',
      { scenario: gear },
    );
    const { setups } = setupsOf(catalogues, gear, sheet!);
    expect(setups.at(0).reading.nodes).toEqual(['left-lift']);
    const run = simulate(gear, { card: 'swing' });
    const s = signatureOf(run, setups.at(0).reading);
    expect(s['up/gauge/left-lift/dead-head']).toBeGreaterThan(900 * 6895);
    // The selector's own lines are read anyway.
    expect(signatureOf(run)).toHaveProperty('down/gauge/up/moving');
    expect(signatureOf(run)).not.toHaveProperty('up/gauge/left-lift/static');
  });

  it('whoever holds the lever waits for what was noted: the card is played longer', () => {
    const scenario = swing('slow').scenario;
    const { sheet } = readObservations(
      'wheelwell-observations: 1\nswings:\n- direction: up\n  times: { unit: { locked: 20 s } }\n- direction: down\n',
    );
    const { setups } = setupsOf(catalogues, scenario, sheet!);
    const { steps, duration } = setups.at(0).scenario.cards[setups.at(0).card];
    const [up, down] = steps.filter((s) => s.device === 'selector').map((s) => s.at);
    expect(down - up).toBeGreaterThanOrEqual(25 - 1e-9);
    expect(duration - down).toBeGreaterThanOrEqual(25 - 1e-9);
  });
});

describe('what never came', () => {
  it('is told from what came late', async () => {
    const scenario = swing('never').scenario;
    const d = await judged(
      scenario,
      '- direction: up',
      '  never: [unit locked]',
      '  remarks: { unit: stopped short }',
    );
    expect(d.groups[0].members[0].causes).not.toEqual([]);
    const healthy = d.groups.flatMap((g) => g.members).find((m) => m.causes.length === 0);
    expect(healthy?.probability ?? 0).toBeLessThan(0.05);
  });
});

describe('doors that came open again', () => {
  const { scenario } = aircraft('tarnswift');
  const remark = { 'up/window': 23, 'up/left/doors': 7, 'up/right/doors': 7 };
  const seen = (unit: string, figures: object): number =>
    likelihoodOfFact(
      { label: '', seen: remarkSeen(scenario, 'up', unit, 'doors came open again')! },
      { ...remark, ...figures },
    );
  it('are told from doors that stay, and from those that would have while nobody looked any more', () => {
    expect(seen('left', {})).toBeLessThan(1e-3);
    expect(seen('left', { 'up/left/strayed': 13 })).toBeGreaterThan(0.999);
    expect(seen('left', { 'up/right/strayed': 13 })).toBeLessThan(1e-3);
    expect(seen('gear', { 'up/right/strayed': 13 })).toBeGreaterThan(0.999);
    expect(seen('left', { 'up/left/strayed': 40 })).toBeLessThan(0.01);
    // Nobody can say so of a gear without doors.
    expect(remarkSeen(handPumped, 'up', 'left', 'doors came open again')).toBeUndefined();
  });
  it('some call home, and some never home', () => {
    const never = (figures: object): number =>
      likelihoodOfFact(
        neverFacts({ direction: 'up', never: [{ unit: 'left', event: 'doors' }] })[0],
        { ...remark, ...figures },
      );
    expect(never({})).toBeLessThan(1e-3);
    expect(never({ 'up/left/strayed': 13 })).toBeCloseTo(0.5, 3);
  });
  it('were looked at for longer than the card has time for', () => {
    const { sheet } = readObservations(
      'wheelwell-observations: 1\nswings:\n- direction: up\n  remarks: { left: doors came open again }\n',
    );
    const { setups } = setupsOf(catalogues, scenario, sheet!);
    const { duration, steps } = setups.at(0).scenario.cards[setups.at(0).card];
    expect(duration - steps[1].at).toBeGreaterThan(30);
  });
  it('speak for what stops the controller with the others shut', () => {
    const run = simulate(scenario, {
      ...{ card: 'healthy', tolerance: 'draft' },
      faults: [{ fault: 'trapped-pressure', on: 'nose-left-door-restrictor', severity: 1 }],
    });
    const s = signatureOf(run);
    expect(s['up/left/strayed']).toBeGreaterThan(s['up/left/doors'] + 3);
    expect(s['up/gear/strayed']).toBe(Math.min(s['up/left/strayed'], s['up/right/strayed']));
    expect(s).not.toHaveProperty('up/nose/strayed');
  });
});

describe('a light', () => {
  const { scenario } = aircraft('tarnswift');
  const never = (unit: string, of: Signature): number =>
    likelihoodOfFact(neverFacts({ direction: 'up', never: [{ unit, event: 'light' }] })[0], of);
  it('that stays dark with all of its side home speaks for its switch', () => {
    const played = (severity: number): Signature =>
      signatureOf(
        simulate(scenario, {
          ...{ card: 'healthy', tolerance: 'draft' },
          faults: [{ fault: 'switch-misrigged', on: 'left-door-closed-switch', severity }],
        }),
      );
    const dark = played(0.5);
    expect(dark['up/left/doors']).toBeGreaterThan(5);
    expect(never('left', dark)).toBeGreaterThan(0.999);
    expect(never('right', dark)).toBeLessThan(0.01);
    // That of the whole gear comes with the last of its units.
    expect(never('gear', dark)).toBeGreaterThan(0.999);
    const sound = played(0.01);
    expect(sound['up/gear/light']).toBe(
      Math.max(...['left', 'right', 'nose'].map((unit) => sound[`up/${unit}/light`])),
    );
    expect(never('gear', sound)).toBeLessThan(0.01);
  });
  it('of an end that no switch tells of is not used, and that is said', () => {
    const { scenario: fenwren } = aircraft('fenwren');
    const { sheet } = readObservations(
      `wheelwell-observations: 1
swings:
- { direction: up, times: { left: { locked: 5 s, light: 5 s } }, never: [nose light, gear light] }
- { direction: down, times: { left: { light: 6 s } }, never: [nose light] }
`,
    );
    const { figures, facts, unused } = evidencesOf(fenwren, sheet!, [0, 0]);
    expect(figures.map((f) => f.key)).toEqual(['up/left/locked', 'down/left/light']);
    expect(facts.map((f) => f.label)).toEqual(['nose light never']);
    const why = 'light: this aircraft has no switch that would tell of it';
    expect(unused).toEqual(['left', 'nose', 'gear'].map((unit) => `swing 1: ${unit} ${why}`));
  });
});

describe('what the operator waits for', () => {
  it('is watched until the card runs out; the rest until he goes on', () => {
    const { scenario } = aircraft('hedgelark');
    // Down is selected when the right side has been closed for three seconds.
    const { duration, steps } = scenario.cards.healthy;
    expect(steps.map((s) => s.after?.device)).toContain('right');
    const run = simulate(scenario, { card: 'healthy' });
    const s = signatureOf(run);
    expect(s['up/right/window']).toBeCloseTo(duration - 1, 9);
    expect(s['up/right/total'] + 3).toBeCloseTo(s['up/window'], 2);
    expect(s).not.toHaveProperty('up/left/window');
    // On half the flow both take longer: of the one that is waited for that is no reason not to have come.
    const slow = { ...s, 'up/left/doors': 9, 'up/right/doors': 9 };
    const never = (unit: string): number =>
      likelihoodOfFact(neverFacts({ direction: 'up', never: [{ unit, event: 'doors' }] })[0], slow);
    expect(never('right')).toBeLessThan(1e-3);
    expect(never('left')).toBeGreaterThan(0.01);
  });
});

describe('a look', () => {
  const gear = pair();
  const cause = [{ fault: 'bungee-weak', on: 'left-bungee' }];
  it('at a unit sees what belongs to it, at the gear whatever there is', () => {
    const at = (on: string): number => lookFinds('pushed-to-lock', on, cause, gear);
    expect(at('left-bungee')).toBe(0.9);
    expect(at('left')).toBe(0.9);
    expect(at('gear')).toBe(0.9);
    expect(at('right')).toBe(0.03);
    expect(at('left-jack')).toBe(0.03);
  });
  it('that finds something on sound aircraft, too, says less', () => {
    expect(lookFinds('work-done', 'gear', cause, gear)).toBe(0.15);
  });
});

describe('a pause', () => {
  const series = (...points: readonly (readonly [number, number])[]) => ({
    t: Float64Array.from(points, ([t]) => t),
    v: Float64Array.from(points, ([, v]) => v),
  });
  it('is a stand that everybody sees, with travel after it', () => {
    const stands = series([0, 0], [1, 0.5], [1.2, 0.5], [1.5, 0.5], [2, 1], [3, 1.5]);
    expect(pausesOf(stands, 0, 3)).toBe(1);
    // Standing at the end is arriving.
    expect(pausesOf(stands, 0, 1.5)).toBe(0);
    const blink = series([0, 0], [1, 0.5], [1.2, 0.5], [1.3, 0.6], [3, 1.5]);
    expect(pausesOf(blink, 0, 3)).toBe(0);
    expect(pausesOf(stands, NaN, 3)).toBe(0);
  });
});
