import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BrokenLink } from '../../packages/viz/src/model/fields.js';
import { PLAIN, readLink, writeLink } from '../../packages/viz/src/model/link.js';
import type { Link } from '../../packages/viz/src/model/link.js';
import type { Mark } from '../../packages/viz/src/model/marks.js';
import { pack, unpack } from '../../packages/viz/src/model/pack.js';
import { RATES } from '../../packages/viz/src/model/state.js';
import { TEXT } from './demo.js';

/** Any text a user's file or name can hold, signs of the link's own grammar among them. */
const text = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 12 }),
  fc.constantFrom('a&b=c', 'x,y', '100 %', '#', '+', 'é ü', '<b>', '"\'`', '\n', '..', '__proto__'),
);
const named = text.filter((t) => t !== '');
const number = fc.double({ min: 0, max: 1e9, noNaN: true }).map((n) => n + 0);
const order = fc.nat(99);
const mark: fc.Arbitrary<Mark> = fc.oneof(
  fc.record({ kind: fc.constant('event' as const), on: text, to: text, nth: order }),
  fc.record({ kind: fc.constant('flag' as const), rule: text, nth: order }),
  fc.record({ kind: fc.constant('measured' as const), on: text, event: text, since: text }),
  fc.record({ kind: fc.constant('time' as const), t: number }),
);
const link: fc.Arbitrary<Link> = fc.record({
  from: fc.oneof(
    fc.record({ demo: named }),
    fc.record({ file: named, text: fc.string({ unit: 'grapheme', maxLength: 400 }) }),
  ),
  card: text,
  faults: fc.option(
    fc.array(
      fc.record({
        fault: text,
        on: text,
        severity: fc.double({ min: 0, max: 1, noNaN: true }).map((n) => n + 0),
      }),
      { maxLength: 4 },
    ),
    { nil: undefined },
  ),
  edits: fc.array(fc.record({ path: text, value: text }), { maxLength: 4 }),
  condition: fc.option(fc.record({ charge: number, temperature: number }), { nil: undefined }),
  stood: fc.option(
    fc
      .record(
        {
          supplyFlow: number,
          supplyPressure: number,
          temperature: number,
          attitude: number.map((x) => 0 - x),
          leftFor: number,
          fluid: text,
          doors: fc.constantFrom('connected' as const, 'disconnected' as const),
        },
        { requiredKeys: [] },
      )
      .filter((c) => Object.keys(c).length > 0),
    { nil: undefined },
  ),
  measured: fc.array(
    fc.record({ on: text, event: text, since: text, time: number, error: number }),
    { maxLength: 4 },
  ),
  time: number,
  rate: fc.constantFrom(...RATES),
  span: fc.option(
    fc.tuple(number, number).filter(([a, b]) => a < b),
    { nil: undefined },
  ),
  loop: fc.option(fc.record({ from: number, to: number, on: fc.boolean() }), { nil: undefined }),
  picked: fc.option(fc.oneof(mark, fc.record({ kind: fc.constant('part' as const), name: text })), {
    nil: undefined,
  }),
  marks: fc.array(mark, { maxLength: 2 }),
  system: fc.constantFrom('us' as const, 'metric' as const, undefined),
  bench: text,
  traces: fc.option(fc.array(named, { maxLength: 4 }), { nil: undefined }),
  shown: fc.array(named, { maxLength: 4 }),
  large: fc.boolean(),
});

const plain = (patch: Partial<Link>): Link => ({ from: { demo: 'hedgelark' }, ...PLAIN, ...patch });

describe('a link', () => {
  it('read again says what was written, whatever it holds', async () => {
    await fc.assert(
      fc.asyncProperty(link, async (each) => {
        expect(await readLink(`#${await writeLink(each)}`)).toEqual(each);
      }),
    );
  });

  it('holds only what an address may, as it stands', async () => {
    await fc.assert(
      fc.asyncProperty(link, async (each) => {
        // Reserved and unreserved characters of RFC 3986; no quotes or brackets that end a link in running text.
        expect(await writeLink(each)).toMatch(/^[\w\-.~!*'()%+,&=]*$/);
      }),
    );
  });

  it('can be read by a person, and says only what is not as usual', async () => {
    expect(await writeLink(plain({}))).toBe('aircraft=hedgelark');
    const faults = [{ fault: 'restrictor-blocked', on: 'left-leg-restrictor', severity: 0.6 }];
    const edits = [{ path: 'components.left-leg-jack.bore', value: '42 mm' }];
    expect(
      await writeLink(plain({ card: 'healthy', faults, edits, time: 12.5, bench: 'blow-down' })),
    ).toBe(
      'aircraft=hedgelark&card=healthy&fault=restrictor-blocked,left-leg-restrictor,0.6' +
        '&set=components.left-leg-jack.bore,42+mm&t=12.5&bench=blow-down',
    );
    expect(await writeLink(plain({ faults: [] }))).toBe('aircraft=hedgelark&fault=none');
  });

  it('with a text in it is noticed when it was cut short anywhere', async () => {
    const written = await writeLink(plain({ from: { file: 'mine.yaml', text: TEXT } }));
    const start = written.indexOf('&text=') + 6;
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: start, max: written.length - 1 }), async (at) => {
        await expect(readLink(written.slice(0, at))).rejects.toThrow(/cut short|missing/);
      }),
    );
  });

  it('packs a scenario into about a third of its letters', async () => {
    expect((await pack(TEXT)).length).toBeLessThan(TEXT.length / 2.5);
  });

  it('that would unpack to far more than a scenario is refused', async () => {
    await expect(unpack(await pack('0'.repeat(5_000_001)))).rejects.toThrow('too large');
    expect(await unpack(await pack('0'.repeat(5_000_000)))).toHaveLength(5_000_000);
  });
});

describe('a broken link', () => {
  it.each([
    ['', 'aircraft'],
    ['#', 'aircraft'],
    ['#nonsense', 'nonsense'],
    ['#card=healthy', 'names no aircraft'],
    ['#aircraft=hedgelark&amp;card=healthy', 'amp;card'],
    ['#aircraft=hedgelark&t=soon', 'soon'],
    ['#aircraft=hedgelark&t=', 't'],
    ['#aircraft=hedgelark&t=-1', '-1'],
    ['#aircraft=hedgelark&t=Infinity', 'Infinity'],
    ['#aircraft=hedgelark&t=1,2', '1,2'],
    ['#aircraft=hedgelark&t=1&t=2', 'twice'],
    ['#aircraft=%E0%A4%A', 'aircraft'],
    ['#aircraft=hedgelark&fault=restrictor-bl', 'fault'],
    ['#aircraft=hedgelark&fault=a,b,2', 'a,b,2'],
    ['#aircraft=hedgelark&span=3,1', '3,1'],
    ['#aircraft=hedgelark&speed=3', 'speed'],
    ['#aircraft=hedgelark&units=yards', 'yards'],
    ['#aircraft=hedgelark&mark=time,1&mark=time,2&mark=time,3', 'mark'],
    ['#file=mine.yaml', 'mine.yaml'],
    ['#file=mine.yaml&text=!!', 'cut short'],
    ['#file=mine.yaml&text=AAAA', 'cut short'],
  ])('%s says in one clause what is wrong', async (hash, telling) => {
    const wrong: unknown = await readLink(hash).then(
      () => undefined,
      (e: unknown) => e,
    );
    expect(wrong).toBeInstanceOf(BrokenLink);
    expect((wrong as BrokenLink).message).toContain(telling);
    expect((wrong as BrokenLink).message.length).toBeLessThan(120);
  });

  it('is all that any other text can be: it is never taken for something else', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 60 }), async (hash) => {
        const read = await readLink(hash).catch((e: unknown) => e);
        if (!(read instanceof BrokenLink)) expect(hash).toContain('aircraft=');
      }),
    );
  });
});
