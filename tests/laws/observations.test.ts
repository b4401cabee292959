import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  GAUGE_MOMENTS,
  readObservations,
  REMARKS,
  TIMED,
  writeObservations,
  type ObservationSheet,
  type ObservedSwing,
  type SupplyReading,
} from '@wheelwell/core';

const between = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true, noDefaultInfinity: true }).map((v) => v + 0);
/** Anything a keyboard gives; line ends of other systems become plain ones in any YAML file. */
const text = fc
  .string({ maxLength: 60, unit: 'grapheme' })
  .filter((s) => !/[\0\ufffd\r\u0085\u2028\u2029\ufeff]/.test(s));
const name = fc.constantFrom('left', 'right', 'tail', 'nose', 'gear', 'unit-7');
const pressure = between(-1e5, 1e8);
const some = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });
const each = <K extends string, T>(keys: readonly K[], value: fc.Arbitrary<T>) =>
  fc.record(Object.fromEntries(keys.map((k) => [k, value])), {
    requiredKeys: [],
  });
const filled = <T extends object>(value: fc.Arbitrary<T>) =>
  value.filter((v) => Object.keys(v).length > 0);
const conditions = fc.record(
  {
    supplyFlow: between(0, 0.05),
    supplyPressure: pressure,
    fluid: fc.constantFrom('mineral-red'),
    temperature: between(203.15, 423.15),
    attitude: between(-1.5, 1.5),
    doors: fc.constantFrom('connected' as const, 'disconnected' as const),
    leftFor: between(0.1, 86_400),
  },
  { requiredKeys: [] },
);
const column = fc.record(
  { column: text.filter((t) => t !== ''), unit: fc.constantFrom('psi', 'ms') },
  { requiredKeys: ['column'] },
);
const event = fc.record({ unit: name, event: fc.constantFrom(...TIMED) });
/** What need not be there at all. */
const more = fc
  .record({
    never: some(fc.array(event, { minLength: 1, maxLength: 3 })),
    supply: some(
      filled(
        fc.dictionary(
          fc.constantFrom('stand', 'unloader'),
          filled(
            fc.record(
              {
                'moving-flow': between(0, 0.05),
                'dead-head-flow': between(0, 0.05),
                strokes: between(0, 10_000),
                'cut-out': between(0, 3600),
                'cut-in': between(0, 3600),
              } satisfies Record<SupplyReading, unknown>,
              { requiredKeys: [] },
            ),
          ),
        ),
      ),
    ),
  })
  .map(({ never, supply }) => ({ ...(never && { never }), ...(supply && { supply }) }));
const plain: fc.Arbitrary<ObservedSwing> = fc.record({
  direction: fc.constantFrom('up' as const, 'down' as const, 'blow-down' as const),
  conditions,
  times: fc.dictionary(
    name,
    filled(each(TIMED, fc.record({ at: between(0, 3600), error: between(0.001, 60) }))),
  ),
  order: fc.array(event, { maxLength: 5 }),
  gauges: fc.dictionary(name, filled(each([...GAUGE_MOMENTS, 'error'] as const, pressure))),
  remarks: fc.dictionary(
    name,
    fc.array(fc.constantFrom(...REMARKS), { minLength: 1, maxLength: 3 }),
  ),
  recordings: fc.array(
    fc
      .record({
        file: text.filter((t) => t !== ''),
        time: some(column),
        columns: fc.dictionary(fc.constantFrom('pressure.pressure', 'left-leg.angle'), column),
        offset: some(between(-1e4, 1e4)),
      })
      .map(({ time, offset, ...rest }) => ({
        ...rest,
        ...(time && { time }),
        ...(offset !== undefined && { offset }),
      })),
    { maxLength: 2 },
  ),
  note: text,
});
const swing = fc.tuple(plain, more).map(([one, own]): ObservedSwing => ({ ...one, ...own }));
const sheet: fc.Arbitrary<ObservationSheet> = fc.record({
  aircraft: text,
  scenario: text,
  card: text,
  date: text,
  by: text,
  readingError: between(0.001, 60),
  conditions,
  swings: fc.array(swing, { maxLength: 4 }),
  note: text,
});

/** Numbers in the same places, as near as nine digits in another unit are. */
function expectNear(a: unknown, b: unknown): void {
  if (typeof a === 'number' && typeof b === 'number') {
    expect(Math.abs(a - b)).toBeLessThanOrEqual(1.01e-9 * Math.abs(b));
  } else if (typeof a === 'object' && a !== null && typeof b === 'object' && b !== null) {
    expect(Object.keys(a).sort()).toEqual(Object.keys(b).sort());
    for (const [key, value] of Object.entries(a))
      expectNear(value, (b as Record<string, unknown>)[key]);
  } else expect(a).toEqual(b);
}

describe('a sheet that is written and read', () => {
  it.each(['yaml', 'json'] as const)('as %s is the same', (format) => {
    fc.assert(
      fc.property(sheet, (whole) => {
        const read = readObservations(writeObservations(whole, { format }));
        expect(read.issues).toEqual([]);
        expect(read.sheet).toEqual(whole);
      }),
      { seed: 5, numRuns: 60, endOnFailure: true },
    );
  });
  it.each(['us', 'metric'] as const)('in %s units is the same to nine digits', (units) => {
    fc.assert(
      fc.property(sheet, (whole) => {
        const read = readObservations(writeObservations(whole, { units }));
        expect(read.issues).toEqual([]);
        expectNear(read.sheet, whole);
      }),
      { seed: 6, numRuns: 60, endOnFailure: true },
    );
  });
  it('in pieces is never a reason to throw', () => {
    fc.assert(
      fc.property(sheet, fc.nat(), fc.nat(40), text, (whole, at, length, put) => {
        const full = writeObservations(whole);
        const from = at % full.length;
        readObservations(full.slice(0, from) + put + full.slice(from + length));
      }),
      { seed: 7, numRuns: 100, endOnFailure: true },
    );
  });
});
