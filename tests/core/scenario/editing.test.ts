import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  catalogues,
  editScenarioText,
  holdScenario,
  OWN_PARAMETERS,
  readScenario,
  SI_UNIT,
} from '../../../packages/core/src/index.js';
import type {
  Edit,
  NumberParameter,
  ParameterDefinition,
  Scenario,
} from '../../../packages/core/src/define/index.js';
import { holdWith } from '../../../packages/core/src/scenario/index.js';
import { MADE_UP_TEXT, madeUp } from '../../support/made-up.js';

const NAMES = ['hedgelark', 'fenwren', 'tarnswift'] as const;
const textOf = (name: string): string =>
  readFileSync(new URL(`../../../scenarios/${name}/${name}.yaml`, import.meta.url), 'utf8');
const kebab = (name: string): string => name.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`);

interface Figure {
  readonly path: string;
  readonly definition: NumberParameter;
  readonly of: (s: Scenario) => unknown;
}

const isNumber = (d: ParameterDefinition): d is NumberParameter =>
  d.type === undefined || d.type === 'number';

/** Every plain figure a scenario has, written in the file or not. */
function figuresOf(scenario: Scenario): Figure[] {
  const parts = (['components', 'mechanisms'] as const).flatMap((section) =>
    Object.entries(scenario[section]).flatMap(([name, { is }]) =>
      Object.entries(catalogues[section][is].parameters).flatMap(([key, definition]): Figure[] =>
        isNumber(definition)
          ? [
              {
                path: `${section}.${name}.${kebab(key)}`,
                definition,
                of: (s) => s[section][name].parameters[key],
              },
            ]
          : [],
      ),
    ),
  );
  const limits = Object.entries(OWN_PARAMETERS.limits).map(([key, definition]): Figure => ({
    path: `limits.${kebab(key)}`,
    definition,
    of: (s) => s.limits[key],
  }));
  return [...parts, ...limits];
}

/** What is left of the lines when the changed values are taken out: comments, order, layout. */
function othersOf(text: string, before: string): string[] {
  const old = new Set(before.split('\n'));
  return text.split('\n').filter((line) => old.has(line));
}

describe('changes of a scenario text', () => {
  it.each(NAMES)('any figures of %s: written and read they are the changed ones', (name) => {
    const text = textOf(name);
    const held = holdScenario(text, { file: name });
    const scenario = held.read().scenario!;
    const figures = figuresOf(scenario);
    const comments = (t: string): string[] => t.match(/#.*/g) ?? [];
    let taken = 0;
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            at: fc.nat(figures.length - 1),
            share: fc.double({ min: 0, max: 1, noNaN: true }),
          }),
          { minLength: 1, maxLength: 4 },
        ),
        (picks) => {
          const wanted = new Map<string, { figure: Figure; value: number }>();
          for (const { at, share } of picks) {
            const figure = figures[at];
            const { range } = figure.definition;
            const now = figure.of(scenario) as number | undefined;
            // Near what it is, so that most changes fit the figures beside them.
            const span = now === undefined ? range[1] - range[0] : 0.2 * Math.abs(now);
            const low = Math.max(range[0], (now ?? range[0]) - span / 2);
            const value = Math.min(range[1], low + share * span);
            wanted.set(figure.path, { figure, value });
          }
          const edits = [...wanted].map(([path, { figure, value }]): Edit => {
            const unit = SI_UNIT[figure.definition.quantity];
            return { path, value: unit === '' ? `${value}` : `${value} ${unit}` };
          });
          const read = held.read(edits);
          const written = editScenarioText(text, edits, { file: name });
          // A stroke too short for its travel is refused alike by both.
          expect(written.issues).toEqual(read.issues);
          if (read.scenario === undefined) return;
          taken++;
          const again = readScenario(written.text!, { file: name });
          expect(again.issues).toEqual([]);
          expect(again.scenario).toEqual(read.scenario);
          for (const { figure, value } of wanted.values()) {
            const got = figure.of(read.scenario) as number;
            expect(Math.abs(got - value)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
          }
          expect(comments(written.text!)).toEqual(comments(text));
          // Only lines of changed values are others.
          const lines = text.split('\n').length;
          expect(othersOf(written.text!, text).length).toBeGreaterThanOrEqual(lines - edits.length);
        },
      ),
      { numRuns: 25 },
    );
    expect(taken).toBeGreaterThan(12);
  });

  const held = holdWith(madeUp, MADE_UP_TEXT, { file: 'made-up.yaml' });
  const write = (...edits: [string, string][]): string => {
    const { text, issues } = held.write(edits.map(([path, value]) => ({ path, value })));
    expect(issues).toEqual([]);
    return text!;
  };

  it('changes a figure in a line, in braces, in a list, and nothing else', () => {
    expect(write(['components.left-jack.bore', '44 mm'])).toBe(
      MADE_UP_TEXT.replace('bore: 1 3/4 in', 'bore: 44 mm'),
    );
    expect(write(['fluid.free-air', '1 %'])).toBe(MADE_UP_TEXT.replace('0.5 %', '1 %'));
    expect(write(['components.door-jack.links.rod.table.1.1', '61 mm'])).toBe(
      MADE_UP_TEXT.replace('[45 deg, 60 mm]', '[45 deg, 61 mm]'),
    );
    expect(write(['cards.healthy.steps.0.at', '1.5 s'])).toBe(
      MADE_UP_TEXT.replace('{ at: 1 s,', '{ at: 1.5 s,'),
    );
    expect(write(['cards.cold.set.components.pump.flow', '5 gal/min'])).toBe(
      MADE_UP_TEXT.replace('components.pump.flow: 4 gal/min', 'components.pump.flow: 5 gal/min'),
    );
  });

  it('changes a word, a switch, a point and a curve', () => {
    const edits = [
      { path: 'components.selector.style', value: 'spool' },
      { path: 'components.selector.detent', value: 'no' },
      { path: 'mechanisms.left-leg.pivot', value: '[100 mm, 3 in]' },
      { path: 'mechanisms.left-door.pull', value: '[[0 deg, 2 N m], [90 deg, 3 N m]]' },
    ];
    const { scenario, issues } = held.read(edits);
    expect(issues).toEqual([]);
    const { selector } = scenario!.components;
    expect([selector.parameters.style, selector.parameters.detent]).toEqual(['spool', false]);
    expect(scenario!.mechanisms['left-leg'].parameters.pivot).toEqual([0.1, 3 * 0.0254]);
    expect(scenario!.mechanisms['left-door'].parameters.pull).toMatchObject({ y: [2, 3] });
    const again = holdWith(madeUp, held.write(edits).text!, { file: 'made-up.yaml' }).read();
    expect(again.scenario).toEqual(scenario);
  });

  it('adds a figure that the file leaves to its default after the last line of its part', () => {
    const text = write(['components.pump.least', '10 bar'], ['components.pump.most', '200 bar']);
    expect(text).toBe(
      MADE_UP_TEXT.replace(
        'flow: 3.2 gal/min\n',
        'flow: 3.2 gal/min\n    least: 10 bar\n    most: 200 bar\n',
      ),
    );
    expect(write(['limits.time-down', '8 s'])).toBe(
      MADE_UP_TEXT.replace('own-limit: 3 mm }', 'own-limit: 3 mm, time-down: 8 s }'),
    );
    expect(write(['cards.healthy.set.components.pump.flow', '2 L/min'])).toBe(
      MADE_UP_TEXT.replace(
        '    expect: [hook-first]\n',
        '    expect: [hook-first]\n    set: { components.pump.flow: 2 L/min }\n',
      ),
    );
  });

  it('keeps what is said behind a value, the ends of lines and a file without an end', () => {
    const odd = 'a:  { b: 3 mm }   # why\r\nc: 4 mm # there\r\nd:\r\n# last';
    const edit = (path: string, value: string): string | undefined =>
      holdWith(madeUp, odd).write([{ path, value }]).text;
    expect(edit('a.b', '4 mm')).toBe(odd.replace('3 mm', '4 mm'));
    expect(edit('c', '5 mm')).toBe(odd.replace('4 mm #', '5 mm #'));
    expect(edit('d', '6 mm')).toBe(odd.replace('d:', 'd: 6 mm'));
    expect(edit('e', '7 mm')).toBe(odd.replace('d:\r\n', 'd:\r\ne: 7 mm\r\n'));
  });

  it('of two changes at one path takes the later, and no change gives the same text', () => {
    expect(write(['fluid.free-air', '2 %'], ['fluid.free-air', '1 %'])).toBe(
      MADE_UP_TEXT.replace('0.5 %', '1 %'),
    );
    expect(write()).toBe(MADE_UP_TEXT);
  });

  it('will not write a figure that others share through an anchor', () => {
    const shared = 'a: &bore 3 mm\nb: *bore\nc: 1 mm\n';
    const { text, issues } = holdWith(madeUp, shared).write([
      { path: 'a', value: '4 mm' },
      { path: 'c', value: '2 mm' },
    ]);
    expect(text).toBeUndefined();
    expect(issues).toMatchObject([{ path: 'a', line: 1, found: '4 mm' }]);
  });

  it.each([
    ['components.left-jack.bore', '9 kg', 253, 'kg is a mass', '45 mm'],
    ['components.left-jack.bore', '9000 mm', 253, 'outside its range', ' mm to '],
    ['components.selector.style', 'popet', 242, 'not one of those allowed', 'poppet, spool'],
    ['components.pump.least', '290 bar', 230, 'above the most', ''],
    ['components.left-jak.bore', '9 mm', 223, 'nothing of the name "left-jak"', 'left-jack'],
    ['cards.cold.set.components.pump.flow', '9 mm', 329, 'a flow belongs here', ''],
    ['limits.time-up', '', 306, '', 'a time'],
    ['cards.healthy.steps.9.at', '1 s', 223, 'nothing of the name "9"', '0, 1, 2, 3'],
  ])('refuses %s: %s at its line, with what is allowed', (path, value, line, message, allowed) => {
    const { scenario, issues } = held.read([{ path, value }]);
    expect(scenario).toBeUndefined();
    expect(issues).toHaveLength(1);
    // Lines as an editor counts them; the text above stands in line 223 of its own file.
    expect(issues[0]).toMatchObject({ file: 'made-up.yaml', path, line: line - 222 });
    expect(issues[0].message).toContain(message);
    expect(issues[0].allowed).toContain(allowed);
    expect(issues[0].found).toBe(value);
  });

  it('refuses a figure that its part does not have', () => {
    const { scenario, issues } = held.read([{ path: 'components.left-jack.boore', value: '9 mm' }]);
    expect(scenario).toBeUndefined();
    expect(issues).toMatchObject([{ path: 'components.left-jack.boore', line: 245 - 222 }]);
    expect(issues[0].allowed).toContain('bore');
  });

  it('refuses a change within another', () => {
    const { issues } = held.read([
      { path: 'mechanisms.left-leg.pivot', value: '[1 mm, 2 mm]' },
      { path: 'mechanisms.left-leg.pivot.0', value: '3 mm' },
    ]);
    expect(issues).toMatchObject([{ path: 'mechanisms.left-leg.pivot.0' }]);
  });
});

describe('hostile changes', () => {
  const held = holdWith(madeUp, MADE_UP_TEXT, { file: 'made-up.yaml' });
  const before = held.read().scenario!;

  it.each([
    '__proto__.polluted',
    'components.__proto__.polluted',
    'components.pump.__proto__',
    'components.constructor.prototype.polluted',
    'limits.__proto__',
    '',
    '.',
    '...',
    'components.pump.flow.deeper',
    'components.pump.a: 1\nb',
    'x'.repeat(100_000),
    'a.'.repeat(50_000),
  ])('the path %# changes nothing', (path) => {
    const edit = [{ path, value: '1 mm' }];
    expect(held.read(edit).scenario).toBeUndefined();
    expect(editScenarioText(textOf('fenwren'), edit).text).toBeUndefined();
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it('any text given for a note comes back as that text, and nothing else changes', () => {
    const sample = fc.oneof(
      fc.string({ maxLength: 60 }),
      fc.string({ maxLength: 30, unit: fc.constantFrom(...` :#&*!|>-?%@"'\`,[]{}\\0a~=<`) }),
    );
    fc.assert(
      fc.property(sample, (value) => {
        const edits = [{ path: 'components.selector.note', value }];
        const { scenario } = held.read(edits);
        const { text } = held.write(edits);
        if (scenario === undefined || text === undefined) return;
        const { note } = scenario.components.selector;
        expect(note === value.trim() || Number(note) === Number(value)).toBe(true);
        expect({
          ...scenario,
          components: {
            ...scenario.components,
            selector: { ...scenario.components.selector, note: 'invented' },
          },
        }).toEqual(before);
        expect(holdWith(madeUp, text, { file: 'made-up.yaml' }).read().scenario).toEqual(scenario);
      }),
      { numRuns: 200 },
    );
  });

  it.each([
    'injected\nwheelwell: 2',
    '3 mm\u2028bore: 4 mm',
    '\0',
    'y'.repeat(5_000),
    `[${'['.repeat(2_000)}`,
    '[1 mm, 2 mm], [3 mm',
    '{ a: &x 1 mm, b: *x ',
  ])('the value %# is refused at its place', (value) => {
    const { scenario, issues } = held.read([{ path: 'components.left-jack.bore', value }]);
    expect(scenario).toBeUndefined();
    expect(issues).toMatchObject([{ path: 'components.left-jack.bore', line: 253 - 222 }]);
  });
});

it('a change leaves all it does not touch the objects they were, in a file held for changes', () => {
  const held = holdScenario(textOf('hedgelark'), { file: 'hedgelark' });
  const before = held.read().scenario!;
  const path = 'mechanisms.left-leg.mass';
  const after = held.read([{ path, value: '141 kg' }]).scenario!;
  const parts = (s: Scenario) => ({ ...s.components, ...s.mechanisms });
  const changed = Object.entries(parts(after))
    .filter(([name, { parameters }]) => parameters !== parts(before)[name].parameters)
    .map(([name]) => name);
  expect(changed).toEqual(['left-leg']);
  expect(after.mechanisms['left-leg'].parameters.mass).toBe(141);
  // And back again, though the last one read was another.
  expect(held.read()).toEqual({ scenario: before, issues: [] });
});
