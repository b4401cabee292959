/** What we write as YAML, read by the library that reads scenarios. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { parse } from 'yaml';
import { yamlOf } from '../../../packages/core/src/scenario/yaml-text.js';

const key = fc
  .string({ unit: 'binary', minLength: 1, maxLength: 30 })
  .filter((k) => k !== '__proto__');
const text = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.string({ unit: 'grapheme', maxLength: 300 }),
  fc
    .array(fc.constantFrom('when', 'the', '- a', 'leg:', '#', "'up'", '12', '|', '>'), {
      maxLength: 60,
    })
    .map((words) => words.join(' ')),
  fc.constantFrom(
    '',
    '~',
    'null',
    'Yes',
    'true',
    '0x1F',
    '0o7',
    '.5',
    '1e3',
    '-.inf',
    '.NaN',
    '1.',
    '+1',
  ),
  fc.constantFrom(
    '2026-11-28',
    '1:30',
    '- a',
    '? a',
    '! a',
    '&a',
    '*a',
    '%a',
    '@a',
    '`a',
    'a: b',
    'a #b',
  ),
);
const data = fc.letrec<{ any: unknown }>((tie) => ({
  any: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    text,
    fc.double({ noNaN: true, noDefaultInfinity: true }).map((n) => (n === 0 ? 0 : n)),
    fc.constantFrom(true, false, null),
    fc.array(tie('any'), { maxLength: 5 }),
    fc.dictionary(key, tie('any'), { maxKeys: 5, noNullPrototype: true }),
  ),
}));

it.each([Infinity, 100, 20])('reads back as what it was, in lines of %d', (width) => {
  fc.assert(
    fc.property(fc.dictionary(key, data.any, { noNullPrototype: true }), (file) => {
      expect(parse(yamlOf(file, width), { schema: 'core', prettyErrors: false })).toEqual(file);
    }),
    { numRuns: 400 },
  );
});

it('is as people write it', () => {
  const note = 'The leg is slow over the last third of its way up, and the doors wait for it';
  expect(
    yamlOf(
      {
        title: 'Slow leg, left',
        empty: { list: [], map: {} },
        absent: undefined,
        steps: [{ at: '3 s', after: { device: 'left-leg', to: 'up' } }, [1, 2.5], 'stop: now'],
        note,
      },
      40,
    ),
  ).toBe(`title: Slow leg, left
empty:
  list: []
  map: {}
steps:
  - at: 3 s
    after:
      device: left-leg
      to: up
  - - 1
    - 2.5
  - "stop: now"
note: >-
  The leg is slow over the last third of
  its way up, and the doors wait for it
`);
});
