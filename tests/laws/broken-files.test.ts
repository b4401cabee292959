import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { readScenario, simulate, type Reading, type Scenario } from '@wheelwell/core';
import { readWith } from '../../packages/core/src/scenario/index.js';
import { MADE_UP_TEXT, madeUp } from '../support/made-up.js';
import { mutate } from '../support/mutate.js';

const DEMO = readFileSync(
  new URL('../../scenarios/hedgelark/hedgelark.yaml', import.meta.url),
  'utf8',
);

/** What the one-sided demo does without: the other units and their rules, other supplies, most cards. */
const LEFT_OUT =
  /^ {2}(- name: tail|(right|tail|chain|engine-pump|pump-check|hand|cold|doors-late|slow|restrictor|piston|relief-low|uplock|in-flight|free-air|warmed|blow-down-|bottle-valve|after-blow).*:$)/;

/** What the demo has no use for, put where its section begins: wires, a state table, followers, wind. */
const ADDED: Readonly<Record<string, string>> = {
  fluid: `airspeed: 30 knot\n`,
  components: `components:
  up-switch:
    is: position-switch
    links: { mechanism: { to: left-leg } }
    at: 88 deg
  sequencer:
    is: controller
    signals: { leg-up: up-switch, flap-up: flap-switch.open }
    table:
      resting:
        next: [{ if: [lever up, not leg-up], after: 0.5 s, to: at work }]
      at work:
        drive: [bleed]
        next:
          - { if: [leg-up, not flap-up], to: resting }
          - { after: 2 s, to: failed }
      failed:
        drive: [lamp]
  flap-switch:
    is: position-switch
    links: { mechanism: { to: left-cover } }
    at: 20 deg
  bleed-valve:
    is: solenoid-valve
    ports: { inlet: left-leg-up, outlet: blanked }
    signals: { coil: sequencer.bleed }
`,
  mechanisms: `mechanisms:
  left-flap:
    is: linked-member
    travel: 60 deg
    swings: aft
    mass: 2 kg
    cog: 100 mm
    inertia: 0.05 kg m^2
    length: 300 mm
    driven:
      by: left-leg
      linkage: { ground: 300 mm, crank: 80 mm, coupler: 280 mm, rocker: 120 mm, crank-at-low: 30 deg, sense: opening }
  left-cover:
    is: linked-member
    travel: 60 deg
    swings: aft
    mass: 1 kg
    cog: 100 mm
    inertia: 0.03 kg m^2
    length: 300 mm
    driven: { by: left-flap, ratio: -0.5, at-low: 50 deg }
`,
};

/**
 * The demo's left main gear on ground supply, healthy and with its plunger rigged early, without
 * notes, and with what is {@link ADDED}: a complete scenario that reads several times as fast, for
 * numbers of tries.
 */
function oneSided(text: string): string {
  let keep = true;
  let note = -1;
  const lines = text.split('\n').filter((line) => {
    const indent = line.search(/\S/);
    if (indent < 0 || line[indent] === '#') return false;
    if (indent <= 2) keep = !LEFT_OUT.test(line);
    if (note >= 0 && indent > note) return false;
    note = /^ *note:/.test(line) ? indent : -1;
    return keep && note < 0;
  });
  return (
    lines
      .map((line) => line.replace('device: right', 'device: left'))
      // Where mechanisms of the other units start.
      .map((line) => line.replace(/(right|tail)-[a-z-]+: \d+ deg,? ?/g, ''))
      .flatMap((line) => {
        const added = ADDED[line.split(':', 1)[0]];
        if (added === undefined) return [line];
        return line.startsWith('fluid') ? [added, line] : [added];
      })
      .join('\n')
      .replace('free-air: 0.5 %', 'free-air: 0.5 %, thickness: 1.2, warmed-by: 3 K')
      .replace(
        /^( +)- \{[^}]*device: selector, input: lever, value: up \}$/gm,
        (step, indent: string) =>
          `${step}\n${indent}- { at: 1 s, device: sequencer, input: lever, value: up }`,
      )
  );
}

/** What is wrong with a reading, or nothing. */
function complaint({ scenario, issues }: Reading, lines: number): string {
  if (scenario === undefined && issues.length === 0) return 'neither scenario nor issue';
  if (scenario !== undefined && issues.length > 0) return 'both scenario and issues';
  for (const issue of issues) {
    if (!(issue.line >= 1 && issue.line <= lines && issue.column >= 1))
      return `issue without a place: ${JSON.stringify(issue)}`;
    if (issue.message === '' || issue.found.length > 70)
      return `issue without measure: ${JSON.stringify(issue).slice(0, 300)}`;
  }
  // JSON writes NaN and infinities as null; a scenario holds neither.
  if (scenario !== undefined && JSON.stringify(scenario).includes('null'))
    return 'a figure that is not finite';
  return '';
}

/** Plays the first seconds of a card; what is wrong with the run, or nothing. */
function misrun(scenario: Scenario, seed: number): string {
  const names = Object.keys(scenario.cards);
  if (names.length === 0) return '';
  const card = names[seed % names.length];
  // The lever moves at 1 s; what was done wrongly shows in the second after it.
  const duration = Math.min(2, scenario.cards[card].duration);
  const cards = { ...scenario.cards, [card]: { ...scenario.cards[card], duration } };
  const run = simulate({ ...scenario, cards }, { card, tolerance: 'draft', maxSteps: 5000 });
  if (run.outcome.why === '' || !Number.isFinite(run.outcome.time)) return 'no outcome';
  const odd = run.log.find((e) => !Number.isFinite(e.t) || !Number.isFinite(e.speed));
  if (odd !== undefined) return `log entry ${JSON.stringify(odd)} after '${run.outcome.why}'`;
  for (const { name } of run.channels) {
    const { t, v } = run.series(name) ?? {};
    if (t === undefined || v === undefined || t.length !== v.length) return `no ${name}`;
    const at = v.findIndex((x) => !Number.isFinite(x));
    if (at >= 0) return `${name} is ${v[at]} at ${t[at]} s, '${run.outcome.why}'`;
  }
  const flag = run.flags.find((f) => Number.isNaN(f.margin));
  return flag === undefined ? '' : `${flag.rule} has no margin`;
}

interface Damage {
  readonly wrong: readonly string[];
  readonly sound: number;
  readonly run: number;
}

/** Reads `count` damaged texts and plays one in `every` that still read; none where it is 0. */
function damage(
  text: string,
  count: number,
  read: (text: string) => Reading,
  every: number,
): Damage {
  const wrong: string[] = [];
  let sound = 0;
  let run = 0;
  for (let seed = 0; seed < count; seed++) {
    const mutated = mutate(text, seed);
    const tell = (what: string): void => {
      if (what !== '') wrong.push(`seed ${seed} (${mutated.what.join(', ')}): ${what}`);
    };
    try {
      const reading = read(mutated.text);
      tell(complaint(reading, mutated.text.split('\n').length));
      if (reading.scenario === undefined) continue;
      if (sound++ % every !== 0) continue; // x % 0 is no number
      run++;
      tell(misrun(reading.scenario, seed));
    } catch (error) {
      tell(`thrown ${error instanceof Error ? (error.stack ?? '') : String(error)}`);
    }
  }
  return { wrong, sound, run };
}

/**
 * 10,000 in all. Reading is what takes the time (about 5 ms one-sided, 17 ms whole; the slowest,
 * hostile ones 0.1 s), so most are of the one-sided demo. Every damaged file is either refused
 * with placed issues or runs to an outcome; nothing is thrown, nothing becomes NaN, and nothing
 * leaks into JavaScript's own objects.
 */
describe('damaged files', () => {
  it.each([
    ['8,500 of the demo with one side only', oneSided(DEMO), 8500, readScenario, 15],
    ['500 of the whole demo', DEMO, 500, readScenario, 15],
    [
      '1,000 of made-up devices with every kind of parameter',
      MADE_UP_TEXT,
      1000,
      (text: string) => readWith(madeUp, text),
      0,
    ],
  ] as const)('%s', { timeout: 600_000 }, (_, text, count, read, every) => {
    const { wrong, sound, run } = damage(text, count, (t) => read(t), every);
    expect(wrong).toEqual([]);
    // The damage must be real, yet not always fatal, or the test says nothing.
    expect(sound).toBeGreaterThan(count / 100);
    expect(sound).toBeLessThan(count / 2);
    if (every > 0) expect(run).toBeGreaterThan(count / 200);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});

test('the one-sided demo is sound and complete: it retracts, and its faulty card raises its flag', () => {
  const { scenario, issues } = readScenario(oneSided(DEMO));
  expect(issues).toEqual([]);
  const run = simulate(scenario!, { card: 'healthy' });
  expect(run.outcome.kind).toBe('done');
  expect(run.log.some((e) => e.device === 'sequencer' && e.to === 'at work')).toBe(true);
  expect(scenario!.airspeed).toBeGreaterThan(0);
  expect(Object.keys(scenario!.mechanisms)).toContain('left-cover');
  expect(run.log.some((e) => e.device === 'left' && e.to === 'up and closed')).toBe(true);
  const faulty = simulate(scenario!, { card: 'doors-early' });
  expect(faulty.flags.some((f) => f.rule === 'door-before-leg' && f.margin < 0)).toBe(true);
});
