/* eslint-disable no-control-regex -- escape codes are what these tests look for */
import { describe, expect, it } from 'vitest';
import type { Engine } from '../../packages/core/src/cli/engine.js';
import { BadInput, type Io } from '../../packages/core/src/cli/io.js';
import { runProgram } from '../../packages/core/src/cli/program.js';
import { components } from '../../packages/core/src/component/index.js';
import type { FaultDefinition } from '../../packages/core/src/define/index.js';
import { mechanisms } from '../../packages/core/src/mechanism/index.js';
import { fluids } from '../../packages/core/src/medium/index.js';
import { rules } from '../../packages/core/src/monitor/index.js';
import * as door from '../../packages/core/src/index.js';
import { swing, type Story } from '../support/evidence.js';
import { runOf } from '../support/run.js';

const seized: FaultDefinition = {
  kind: 'dry-bearing',
  title: 'Dry bearing',
  group: 'actuators, locks, structure',
  meaning: 'No grease.',
  shows: 'Slow leg.',
  confirm: 'By hand.',
  remedy: 'Grease.',
  caution: 'Fingers.',
  source: 'made up for a test',
  prior: 'common',
  priorWhy: 'made up',
  befalls: ['leg'],
  worst: 'ten times the friction',
  change: () => ({}),
};

interface Result {
  code: number;
  out: string;
  error: string;
  files: Record<string, string>;
  asked: Parameters<Engine['simulate']>[1][];
}

interface Setting {
  story?: (s: Story) => void;
  terminal?: boolean;
  /** The engine breaks. */
  breaks?: boolean;
  /** Milliseconds a simulation takes. */
  takes?: number;
}

/** Runs the command line on a made-up engine: 'good.yaml' reads well, 'bad.yaml' has two issues. */
function run(
  line: string | readonly string[],
  { story, terminal = false, takes = 0, breaks = false }: Setting = {},
): Result {
  const result: Result = { code: -1, out: '', error: '', files: {}, asked: [] };
  const e = swing(story);
  let clock = 0;
  const io: Io = {
    out: (t) => (result.out += t),
    error: (t) => (result.error += t),
    outIsTerminal: terminal,
    errorIsTerminal: terminal,
    read: (file) => {
      if (file === 'none.yaml') throw new BadInput('cannot use none.yaml: no such file or folder');
      return file;
    },
    write: (file, text) => (result.files[file] = text),
    now: () => clock,
  };
  const issue = {
    file: 'bad.yaml',
    line: 3,
    column: 5,
    path: 'components.relief.crack',
    message: 'is a length',
    found: '3 mm',
    allowed: 'a pressure',
    hint: '',
  };
  const engine: Engine = {
    ...door,
    readScenario: (text) =>
      text === 'bad.yaml'
        ? { issues: [issue, { ...issue, line: 7, message: 'is missing' }] }
        : { scenario: e.scenario, issues: [] },
    simulate: (_, options) => {
      result.asked.push(options);
      if (breaks) throw new TypeError('a bug');
      for (let i = 1; i <= 10; i++) {
        clock += takes / 10;
        options.onProgress?.(i / 10);
      }
      return runOf(e);
    },
    scenarioJsonSchema: () => ({ title: 'a schema' }),
    observationJsonSchema: () => ({ title: 'another schema' }),
    catalogues: {
      components,
      mechanisms,
      fluids,
      gases: {},
      rules,
      faults: { 'dry-bearing': seized },
    },
  };
  const argv = typeof line === 'string' ? line.split(' ').filter((w) => w !== '') : line;
  result.code = runProgram(argv, io, engine, '1.2.3');
  return result;
}

const rotten = (s: Story): void => {
  s.left.doorCloses = 5.2;
};

describe('exit codes', () => {
  it('are 0 for a clean run and 1 for a flagged one', () => {
    expect(run('swing good.yaml').code).toBe(0);
    expect(run('swing good.yaml', { story: rotten }).code).toBe(1);
  });
  it('is 2 for bad input, with every issue on the error stream', () => {
    const { code, out, error, asked } = run('swing bad.yaml');
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(error.trimEnd().split('\n')).toEqual([
      'bad.yaml:3:5: components.relief.crack: is a length, found 3 mm; allowed: a pressure',
      'bad.yaml:7:5: components.relief.crack: is missing, found 3 mm; allowed: a pressure',
    ]);
    expect(asked).toEqual([]);
  });
  it('is 2 for a file that is not there', () => {
    expect(run('swing none.yaml')).toMatchObject({
      code: 2,
      error: 'wheelwell: cannot use none.yaml: no such file or folder\n',
    });
  });
  it('is 3 for a run that could not finish, which is reported all the same', () => {
    const { code, out, error } = run('swing good.yaml', {
      story: (s) => {
        s.outcome = {
          kind: 'stuck',
          time: 20,
          where: ['pump'],
          why: 'It stuck.',
          hint: 'Look there.',
        };
      },
    });
    expect(code).toBe(3);
    expect(out).toContain('Events');
    expect(error).toBe('wheelwell: could not finish: It stuck. Look there.\n');
  });
});

describe('swing', () => {
  it('owns up to a fault of its own, and does not call it flagged', () => {
    const { code, error } = run('swing good.yaml', { breaks: true });
    expect(code).toBe(3);
    expect(error).toContain('a fault of the program itself');
    expect(error).toContain('a bug');
  });
  it('prints the test card, plain on a pipe and painted on a terminal', () => {
    expect(run('swing good.yaml', { story: rotten }).out).toMatch(/^CAUTION[^\u001b]*$/);
    expect(run('swing good.yaml', { story: rotten, terminal: true }).out).toContain(
      '\u001b[1;31mFAIL',
    );
  });
  it('reports JSON and CSV', () => {
    expect((JSON.parse(run('swing good.yaml --json').out) as { format: string }).format).toBe(
      'wheelwell-run',
    );
    expect(run('swing good.yaml --csv --units si').out).toMatch(
      /^time \(s\),left-leg\.angle \(rad\)/,
    );
    expect(run('swing good.yaml --csv --csv-of events').out).toMatch(/^index,time \(s\),kind/);
  });
  it('writes files in place of, or beside, the report', () => {
    const beside = run('swing good.yaml --csv traces.csv');
    expect(beside.files['traces.csv']).toMatch(/^time/);
    expect(beside.out).toMatch(/^CAUTION/);
    const instead = run('swing good.yaml --output card.txt', { story: rotten, terminal: true });
    expect(instead.out).toBe('');
    expect(instead.files['card.txt']).toMatch(/^CAUTION[^\u001b]*$/);
  });
  it('never writes over the scenario', () => {
    const { code, files } = run('swing good.yaml --output good.yaml');
    expect(code).toBe(2);
    expect(files).toEqual({});
  });
  it('refuses two reports on one output', () => {
    expect(run('swing good.yaml --json --csv').code).toBe(2);
    expect(run('swing good.yaml --csv a.txt --output a.txt')).toMatchObject({ code: 2, files: {} });
  });
  it('passes card, tick and tolerance on', () => {
    const [asked] = run([
      'swing',
      'good.yaml',
      '--card',
      'swing',
      '--tick',
      '10 ms',
      '--tolerance',
      'fine',
    ]).asked;
    expect(asked).toMatchObject({ card: 'swing', tick: 0.01, tolerance: 'fine', faults: [] });
  });
  it('refuses a card, tick, tolerance or unit system that is not allowed', () => {
    expect(run('swing good.yaml --card swng').error).toBe(
      'wheelwell: no card swng, the scenario has swing (did you mean swing?)\n',
    );
    for (const line of [
      '--tick fast',
      '--tick 5',
      '--tick 1000s',
      '--tolerance nice',
      '--units feet',
    ]) {
      const { code, error, asked } = run(`swing good.yaml ${line}`);
      expect(code).toBe(2);
      expect(error.length).toBeGreaterThan(20);
      expect(asked).toEqual([]);
    }
  });
});

describe('faults', () => {
  const fault = (...texts: string[]): Result =>
    run(['swing', 'good.yaml', ...texts.flatMap((t) => ['--fault', t])]);
  it('are given to the run, several at once, in parts or percent', () => {
    expect(fault('dry-bearing@left-leg=0.6', 'dry-bearing@right-leg=25%').asked[0].faults).toEqual([
      { fault: 'dry-bearing', on: 'left-leg', severity: 0.6 },
      { fault: 'dry-bearing', on: 'right-leg', severity: 0.25 },
    ]);
  });
  it('need a device when more than one could have it', () => {
    const { code, error } = fault('dry-bearing=0.6');
    expect(code).toBe(2);
    expect(error).toContain('dry-bearing@left-leg=0.6, dry-bearing@right-leg=0.6');
  });
  it.each([
    ['dry-baering@left-leg=0.5', 'did you mean dry-bearing?'],
    ['dry-bearing@left-lge=0.5', 'did you mean left-leg?'],
    ['dry-bearing@selector=0.5', 'cannot befall selector'],
    ['dry-bearing@left-leg=2', 'allowed 0 to 1'],
    ['dry-bearing@left-leg=-1', 'allowed 0 to 1'],
    ['dry-bearing@left-leg=1e', 'allowed 0 to 1'],
    ['dry-bearing@left-leg', 'name@device=severity'],
    ['=0.5', 'name@device=severity'],
  ])('refuse %s: %s', (text, message) => {
    const { code, error, asked } = fault(text);
    expect(code).toBe(2);
    expect(error).toContain(message);
    expect(asked).toEqual([]);
  });
});

describe('progress', () => {
  it('says nothing on a pipe, and asks the run for none', () => {
    const { error, asked } = run('swing good.yaml', { takes: 10_000 });
    expect(error).toBe('');
    expect(asked[0].onProgress).toBeUndefined();
  });
  it('says nothing on a terminal when the work is short', () => {
    expect(run('swing good.yaml', { terminal: true, takes: 400 }).error).toBe('');
  });
  it('counts on a terminal when the work is long, and cleans up', () => {
    const { error } = run('swing good.yaml', { terminal: true, takes: 10_000 });
    expect(error).toContain('simulating swing 50 %');
    expect(error.endsWith('\r\u001b[K')).toBe(true);
  });
});

describe('check', () => {
  it('says that a file is in order, and what cards it has', () => {
    expect(run('check good.yaml')).toMatchObject({
      code: 0,
      out: expect.stringMatching(
        /^good\.yaml: no problems found; its test cards:\n {2}swing {2}\S/,
      ),
    });
  });
  it('names all issues of all files', () => {
    const { code, out } = run('check bad.yaml good.yaml');
    expect(code).toBe(2);
    expect(out.trimEnd().split('\n')).toHaveLength(4);
  });
});

describe('list', () => {
  it.each([
    ['devices', [...Object.keys(components), ...Object.keys(mechanisms)]],
    ['rules', Object.keys(rules)],
    ['fluids', Object.keys(fluids)],
    ['limits', ['time-up', 'time-down', 'spread']],
  ])('shows all %s, one a line under a head', (what, names) => {
    const { code, out } = run(`list ${what}`);
    expect(code).toBe(0);
    const [head, ...rows] = out.trimEnd().split('\n');
    expect(head).toMatch(/^name +title/);
    const shown = rows.map((l) => l.split(' ')[0]);
    // Limits are a list of their own, of which these come first.
    expect(what === 'limits' ? shown.slice(0, names.length) : shown).toEqual(names);
    expect(rows.every((l) => l.length <= 130)).toBe(true);
  });
  it('shows every device in full, with each parameter, in both systems of units', () => {
    for (const [name, d] of Object.entries({ ...components, ...mechanisms })) {
      for (const units of ['us', 'metric']) {
        const { code, out } = run(`list devices ${name} --units ${units}`);
        expect(code).toBe(0);
        expect(out).not.toMatch(/undefined|NaN|\[object/);
        // Long titles are folded.
        const flat = out.replace(/\s+/g, ' ');
        for (const p of Object.values(d.parameters)) expect(flat).toContain(p.title);
      }
    }
  });
  it('tells which faults befall a device, what its ports are for, and which limit a rule reads', () => {
    expect(run('list devices leg').out).toContain('\nFaults: dry-bearing\n');
    expect(run('list devices').out).toMatch(/^leg +Leg +dry-bearing$/m);
    expect(run('list devices engine-pump').out).toContain('\nPorts:\n  inlet: suction\n');
    expect(run('list rules').out).toMatch(/^slow-swing .* time-up, time-down$/m);
    expect(run('list limits clearance --units metric').out).toMatch(
      /^clearance: smallest distance .*\nlength, 0 mm to 5000 mm\nRules: clearance\b/,
    );
  });
  it('keeps to a hundred columns in full', () => {
    for (const name of [...Object.keys(components), ...Object.keys(mechanisms)]) {
      const lines = run(`list devices ${name}`).out.split('\n');
      expect(lines.filter((l) => l.length > 100)).toEqual([]);
    }
  });
  it('shows units, range and default of a parameter', () => {
    const out = run('list devices line').out;
    // 0.002 to 0.05 m, default 0.0064 m, by 25.4 mm to the inch.
    expect(out).toContain(
      '  bore: inside diameter\n    length, 0.079 in to 1.969 in; default 0.252 in\n',
    );
    expect(run('list devices line --units metric').out).toContain('2 mm to 50 mm; default 6.4 mm');
  });
  it('shows every rule, fluid and fault in full', () => {
    const lines = [
      ...Object.keys(rules).map((n) => `list rules ${n}`),
      ...Object.keys(fluids).map((n) => `list fluids ${n}`),
      'list faults dry-bearing',
    ];
    for (const line of lines) {
      const { code, out } = run(line);
      expect(code).toBe(0);
      expect(out).toContain('Source: ');
      expect(out).not.toMatch(/undefined|NaN/);
    }
    expect(run('list rules hard-arrival').out).toContain(
      'Limits: arrival-speed, door-arrival-speed',
    );
  });
  it('names the nearest one for a slip', () => {
    expect(run('list rules sprad')).toMatchObject({
      code: 2,
      error:
        'wheelwell: nothing named sprad among the rules, and none speaks of it (did you mean spread?); wheelwell list rules shows them all\n',
    });
    expect(run('list ruels').error).toContain('did you mean rules?');
  });
});

describe('the program itself', () => {
  it('prints the schema', () => {
    expect(JSON.parse(run('schema').out)).toEqual({ title: 'a schema' });
    expect(JSON.parse(run('schema --observations').out)).toEqual({ title: 'another schema' });
  });
  it('names the nearest command or option, and ends with 2', () => {
    const command = run('swng good.yaml');
    expect(command.code).toBe(2);
    expect(command.error).toMatch(/unknown command 'swng'\n\(Did you mean swing\?\)/);
    const option = run('swing good.yaml --crad x');
    expect(option.code).toBe(2);
    expect(option.error).toMatch(/unknown option '--crad'\n\(Did you mean --card\?\)/);
  });
  it('wants a file, and no more than it knows what to do with', () => {
    expect(run('swing')).toMatchObject({ code: 2, out: '' });
    expect(run('swing a.yaml b.yaml')).toMatchObject({ code: 2, out: '' });
    expect(run('swing').error).toBe(
      "wheelwell: missing required argument 'file'\n(--help tells what is allowed)\n",
    );
  });
  it('explains itself', () => {
    const none = run('');
    expect(none.code).toBe(2);
    expect(none.error).toContain('Usage: wheelwell');
    const help = run('--help');
    expect(help).toMatchObject({ code: 0, error: '' });
    expect(help.out).toContain('Exit codes: 0 clean');
    expect(help.out).toMatch(
      /First steps[^]*wheelwell check scenarios\/hedgelark\/hedgelark\.yaml/,
    );
    expect(run('swing --help')).toMatchObject({ code: 0, error: '' });
    expect(run('--version').out).toBe('1.2.3\n');
  });
});
