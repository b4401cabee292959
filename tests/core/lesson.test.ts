/** Lessons are read, and what they ask is answered by runs: never by the file. */
import { describe, expect, it } from 'vitest';
import {
  catalogues,
  formatIssue,
  prepareLesson,
  readLesson,
  simulate,
  writeLesson,
} from '@wheelwell/core';
import type { Lesson, LessonStep, PreparedStep, Run, Scenario, Scene } from '@wheelwell/core';
import { shipped } from '../support/lessons.js';

const [{ scenario }] = shipped;
const runs = new Map<string, Run>();

/** The run of a scene, finer than the lesson's own: an answer must not depend on the step control. */
function fine(of: Scenario, { card, faults }: Scene): Run {
  const key = JSON.stringify([of.title, card, faults]);
  const cards = { ...of.cards };
  if (faults !== undefined) cards[card] = { ...cards[card], faults };
  const run = runs.get(key) ?? simulate({ ...of, cards }, { card, tolerance: 'fine' });
  runs.set(key, run);
  return run;
}

const steps = shipped.flatMap(({ file, scenario: of, plan }) => {
  const { lesson, steps: prepared } = plan();
  return (lesson?.steps ?? []).map((step, i) => ({
    name: `${file}, step ${i + 1}`,
    of,
    step,
    ready: prepared[i],
  }));
});
const ofKind = <K extends LessonStep['kind']>(kind: K) =>
  steps.filter(
    (s): s is typeof s & { step: Extract<LessonStep, { kind: K }>; ready: PreparedStep } =>
      s.step.kind === kind,
  );

describe('the lessons that come with the project', () => {
  it('are five or more, of every kind of question', () => {
    expect(shipped.length).toBeGreaterThanOrEqual(5);
    const kinds = new Set(steps.map((s) => s.step.kind));
    expect([...kinds].sort()).toEqual(['arrange', 'compare', 'find', 'predict', 'tell']);
  });

  it.each(shipped.map((s) => [s.file, s] as const))('%s is borne out by its runs', (_, s) => {
    expect(s.plan().issues.map(formatIssue)).toEqual([]);
  });

  it.each(shipped.map((s) => [s.file, s] as const))('%s reads as it is written', (_, s) => {
    const { lesson } = s.plan();
    expect(lesson).toBeDefined();
    const again = readLesson(writeLesson(lesson!), { scenario: s.scenario });
    expect(again).toEqual({ lesson, issues: [] });
  });

  it.each(ofKind('predict').map((s) => [s.name, s] as const))(
    '%s: the right one is what the run does next',
    (_, { of, step, ready }) => {
      const run = fine(of, step);
      const now = ready.stop ?? NaN;
      // A state of some duration: nobody tells what is undone within a blink.
      const lasting = run.log.filter((e, i) => {
        const next = run.log.findIndex(
          (o, j) => j > i && o.device === e.device && o.kind === e.kind,
        );
        return next < 0 || run.log[next].t - e.t >= 0.05;
      });
      const next = lasting.find(
        (e) =>
          e.t > now + 1e-3 &&
          step.of.includes(e.device) &&
          (e.kind === 'mode' || e.kind === 'motion'),
      );
      expect(ready.right).toEqual([next === undefined ? 'nothing' : `${next.device} ${next.to}`]);
      expect(ready.choices.length).toBeGreaterThanOrEqual(3);
      for (const choice of ready.choices.filter((c) => !ready.right.includes(c.id))) {
        // No wrong one comes so soon after the right one that nobody could tell which was first.
        const soon = run.log.find(
          (e) => `${e.device} ${e.to}` === choice.id && e.t > now && e.t < (next?.t ?? 0) + 0.09,
        );
        expect(soon, choice.text).toBeUndefined();
      }
    },
  );

  it.each(ofKind('arrange').map((s) => [s.name, s] as const))(
    '%s: the order is that of the run, whatever order the file has',
    (_, { of, step, ready }) => {
      const run = fine(of, step);
      const times = ready.right.map((id) => {
        const e = run.log.find(
          (o) => `${o.device} ${o.to}` === id && o.t >= (ready.stop ?? 0) && o.from !== '',
        );
        return e?.t ?? NaN;
      });
      expect(times.every(Number.isFinite)).toBe(true);
      expect([...times].sort((a, b) => a - b)).toEqual(times);
      const turned: Lesson = {
        title: 'turned',
        note: '',
        scenario: 'x.yaml',
        steps: [{ ...step, events: [...step.events].reverse() }],
      };
      expect(prepareLesson(writeLesson(turned), of).steps[0].right).toEqual(ready.right);
      expect(ready.choices.map((c) => c.id)).not.toEqual(ready.right);
    },
  );

  it.each(ofKind('compare').map((s) => [s.name, s] as const))(
    '%s: the figures are those of the two runs',
    (_, { of, step, ready }) => {
      const { measure } = step;
      const figure = (run: Run): number => {
        if ('rule' in measure)
          return Math.min(...run.flags.filter((f) => f.rule === measure.rule).map((f) => f.margin));
        const all = run.timings.filter(
          (t) => t.direction === measure.time && (measure.unit === '' || t.unit === measure.unit),
        );
        return all.some((t) => Number.isNaN(t.total))
          ? Infinity
          : Math.max(...all.map((t) => t.total));
      };
      const [a, b] = [figure(fine(of, step)), figure(fine(of, step.with))];
      expect(ready.right).toEqual([a > b ? 'a' : 'b']);
      const told = ready.told.filter((l) => l.sort === 'figure').map((l) => l.value);
      const finite = [a, b].filter(Number.isFinite);
      // A lesson's run is of the normal tolerance: events within 1 ms, times from two of them.
      told.forEach((value, i) => expect(Math.abs(value! - finite[i])).toBeLessThan(4e-3));
    },
  );

  it.each(ofKind('find').map((s) => [s.name, s] as const))(
    '%s: the fault is what was hidden, and the stopwatch reads the run',
    (_, { of, step, ready }) => {
      const [hidden] = step.faults;
      expect(ready.right).toEqual([`${hidden.fault} on ${hidden.on}`]);
      expect(ready.choices.length).toBeGreaterThan(step.suspects.length);
      expect(ready.told.map((l) => l.text)).toContain(catalogues.faults[hidden.fault].meaning);
      const run = fine(of, step);
      for (const check of ready.checks.filter((c) => c.id.startsWith('time '))) {
        const [, unit, direction] = check.id.split(' ');
        const timing = run.timings.find((t) => t.unit === unit && t.direction === direction);
        expect(Math.abs((check.reading[0].value ?? NaN) - timing!.total)).toBeLessThan(4e-3);
      }
      // No word of the question or of a check names the fault.
      const open = [ready.question, ...ready.checks.map((c) => c.text)].join(' ');
      expect(open).not.toContain(catalogues.faults[hidden.fault].title);
    },
  );
});

const HEAD = 'wheelwell-lesson: 1\ntitle: A\nscenario: ../hedgelark.yaml\nsteps:\n';
const issuesOf = (body: string): readonly string[] =>
  prepareLesson(HEAD + body, scenario, { file: 'a.yaml' }).issues.map(formatIssue);

describe('a slip in the file is told with its place and what is allowed', () => {
  it.each([
    [
      'a misspelt key',
      '  - { kind: tell, crad: healthy, text: x }\n',
      /^a\.yaml:5:19: steps\.0\.crad: "crad" is not known here; allowed: .*\(did you mean card\?\)$/,
    ],
    [
      'a kind that there is not',
      '  - { kind: guess, card: healthy }\n',
      /^a\.yaml:5:13: steps\.0\.kind: this kind of step is not known, found guess; allowed: tell, predict/,
    ],
    [
      'no card to begin with',
      '  - { kind: tell, text: x }\n',
      /steps\.0\.card: the first step does not say which test card is played/,
    ],
    [
      'a card that there is not',
      '  - { kind: tell, card: helthy, text: x }\n',
      /steps\.0\.card: there is no test card of this name, found helthy; .*did you mean healthy\?/,
    ],
    [
      'a state that a part never has',
      '  - { kind: predict, card: healthy, after: { device: left-door, to: opened } }\n',
      /steps\.0\.after\.to: left-door is never in this state, found opened; allowed: .*at open/,
    ],
    [
      'a prediction without a moment',
      '  - { kind: predict, card: healthy }\n',
      /steps\.0: this step is not whole; allowed: at: a time, or after: an event/,
    ],
    [
      'a fault where it cannot be',
      '  - { kind: find, card: healthy, budget: 2, faults: [{ fault: dry-bearing, on: relief, severity: 1 }] }\n',
      /steps\.0\.faults\.0: dry-bearing cannot befall relief/,
    ],
    [
      'a time without its unit',
      '  - { kind: tell, card: healthy, text: x, at: 5 }\n',
      /^a\.yaml:5:\d+: steps\.0\.at: /,
    ],
    [
      'a budget of nothing',
      '  - { kind: find, card: healthy, budget: 0, faults: [] }\n',
      /steps\.0\.budget: a whole number belongs here, found 0; allowed: 1 to 12/,
    ],
  ])('%s', (_, body, wanted) => {
    expect(issuesOf(body).join('\n')).toMatch(wanted);
  });

  it('an empty file, another file and a later version', () => {
    expect(readLesson('').issues[0].allowed).toBe("a lesson, its first line 'wheelwell-lesson: 1'");
    expect(readLesson('wheelwell: 1\ntitle: x\n').issues.length).toBeGreaterThan(1);
    expect(readLesson(`${HEAD.replace(': 1', ': 2')}  - {}\n`).issues[0].message).toContain(
      'version',
    );
  });

  it.each([
    ['brackets without end', '['.repeat(5000)],
    ['a key of JavaScript', '__proto__: { polluted: yes }\n'],
    ['a tag', 'wheelwell-lesson: !!js/function "x"\n'],
    ['many steps', `${HEAD}${'  - { kind: tell, card: healthy, text: x }\n'.repeat(80)}`],
  ])('%s does no harm', (_, text) => {
    expect(readLesson(text).issues.length).toBeGreaterThan(0);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});

describe('what the runs do not bear out is told like a slip', () => {
  it.each([
    [
      'an event that never happens',
      '  - { kind: arrange, card: doors-late, events: [{ device: right-door, to: at closed }, { device: left-door, to: at closed }] }\n',
      /^a\.yaml:5:\d+: steps\.0\.events\.0: this does not happen in the run, found right door is closed$/,
    ],
    [
      'two events of one instant',
      '  - { kind: arrange, card: healthy, events: [{ device: tail-leg, to: at up }, { device: tail-left-door, to: at closed }] }\n',
      /steps\.0\.events: two of these happen at one instant/,
    ],
    [
      'a moment that does not come',
      '  - { kind: predict, card: healthy, after: { device: left-uplock, to: engaged, nth: 9 } }\n',
      /steps\.0\.after: this moment does not come in the run/,
    ],
    [
      'two runs that hardly differ',
      '  - { kind: compare, card: slow-left-leg, with: { card: healthy }, time: up }\n',
      /steps\.0: these two are too close to call/,
    ],
    [
      'a suspect that no check tells from the fault',
      '  - kind: find\n    card: healthy\n    budget: 2\n    of: [tail]\n    faults: [{ fault: plunger-rigged-early, on: left-door-close-valve, severity: 0.01 }]\n    suspects: [{ fault: plunger-rigged-early, on: right-door-close-valve }]\n',
      /steps\.0\.faults: no check tells this run from a sound one[\s\S]*steps\.0\.suspects\.0: no check tells this from the hidden fault/,
    ],
  ])('%s', (_, body, wanted) => {
    expect(issuesOf(body).join('\n')).toMatch(wanted);
  });
});

describe('what is made without the author', () => {
  it('suspects, told apart by the checks; a question; a reason with its causes', () => {
    const body =
      '  - { kind: find, card: healthy, budget: 3, of: [left, right], faults: [{ fault: restrictor-blocked, on: left-leg-restrictor, severity: 0.6 }] }\n' +
      '  - { kind: predict, card: healthy, at: 6 s }\n';
    const { steps: made, issues } = prepareLesson(HEAD + body, scenario);
    expect(issues.map(formatIssue)).toEqual([]);
    expect(made[0].choices.length).toBeGreaterThanOrEqual(3);
    expect(made[0].right).toEqual(['restrictor-blocked on left-leg-restrictor']);
    expect(made[1].question).toBe('What happens next?');
    const [first, ...causes] = made[1].told;
    expect(first.text).toMatch(/left uplock is engaged, because the leg is home/);
    expect(causes.filter((l) => l.sort === 'cause').at(-1)?.text).toBe('selector is set to up');
  });

  it('goes on with the run of the step before, and takes a card as it stands', () => {
    const body =
      '  - { kind: tell, card: healthy, faults: [{ fault: dry-bearing, on: left-leg, severity: 1 }], text: x }\n' +
      '  - { kind: tell, text: y }\n  - { kind: tell, card: healthy, text: z }\n';
    const { lesson } = readLesson(HEAD + body, { scenario });
    expect(lesson?.steps.map((s) => s.faults?.length)).toEqual([1, 1, undefined]);
  });
});
