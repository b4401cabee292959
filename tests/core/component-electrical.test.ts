/**
 * Switches and solenoid valves: modes and guards on a frame without a network. What is expected
 * follows from the settings given in each test; the ways of switching (differential travel, rise
 * and fall, pull-in) are common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import type { Parameters } from '../../packages/core/src/define/index.js';
import { bench, OIL } from '../support/bench.js';

describe('position switch', () => {
  const at = (given: Parameters = {}) => bench('position-switch', { at: 1.5, gap: 0.02, ...given });
  const sweep = (b: ReturnType<typeof bench>, angles: readonly number[]) =>
    angles.map((angle) => {
      b.frame.travels[0] = angle;
      return b.settled();
    });

  it('makes above its angle and opens again only a gap before it', () => {
    const b = at();
    expect(sweep(b, [0, 1.499, 1.501, 1.485, 1.479, 1.499])).toEqual([
      'open',
      'open',
      'made',
      'made',
      'open',
      'open',
    ]);
  });

  it('makes below its angle where it is told so', () => {
    const b = at({ side: 'below', at: 0.1 });
    expect(sweep(b, [1, 0.101, 0.099, 0.119, 0.121])).toEqual([
      'open',
      'open',
      'made',
      'made',
      'open',
    ]);
  });

  it.each([
    ['above', 1.55, 1.5],
    ['below', 1.45, 1.5],
  ])('rigged by 0.05 rad makes so much later, on the side %s', (side, makes, right) => {
    const b = at({ side, rigged: 0.05 });
    const past = side === 'above' ? 1e-3 : -1e-3;
    expect(sweep(b, [right + past, makes - past, makes + past])).toEqual(['open', 'open', 'made']);
  });

  it('says the same on both its contacts, one the other way round', () => {
    const b = at();
    b.frame.travels[0] = 1.6;
    expect([b.says('made'), b.says('open')]).toEqual([0, 1]);
    b.settled();
    expect([b.says('made'), b.says('open')]).toEqual([1, 0]);
  });

  it.each(['open', 'made'])('stuck %s stays so wherever the mechanism is', (stuck) => {
    const b = at({ stuck });
    expect(new Set(sweep(b, [0, 1.6, 0, 3]))).toEqual(new Set([stuck]));
  });
});

describe('pressure switch', () => {
  const PSI = 6894.757;
  const at = (given: Parameters = {}) =>
    bench('pressure-switch', { opens: 1400 * PSI, closes: 1100 * PSI, ...given });
  const sweep = (b: ReturnType<typeof bench>, psi: readonly number[]) =>
    psi.map((p) => {
      b.frame.pressures[0] = OIL.ambient + p * PSI;
      return b.settled();
    });

  it('opens above one gauge pressure and closes below the other', () => {
    const b = at();
    expect(sweep(b, [0, 1399, 1401, 1101, 1099, 1399])).toEqual([
      'closed',
      'closed',
      'open',
      'open',
      'closed',
      'closed',
    ]);
    expect([b.says('closed'), b.says('open')]).toEqual([1, 0]);
  });

  it('stays as it is where it is stuck', () => {
    expect(sweep(at({ stuck: 'closed' }), [0, 3000])).toEqual(['closed', 'closed']);
    expect(sweep(at({ stuck: 'open' }), [3000, 0])).toEqual(['open', 'open']);
  });

  it('refuses settings the wrong way round', () => {
    expect(at({ closes: 1500 * PSI }).findings).toEqual([
      'must be above the pressure at which it closes',
    ]);
  });
});

describe('squat switch', () => {
  it('says air while the strut hangs fully, ground with weight on the wheels', () => {
    const b = bench('squat-switch');
    expect(b.settled()).toBe('air');
    b.set('weight', 'on');
    expect(b.settled()).toBe('ground');
    expect([b.says('inAir'), b.says('onGround')]).toEqual([0, 1]);
    b.set('weight', 'off');
    expect(b.settled()).toBe('air');
    expect([b.says('inAir'), b.says('onGround')]).toEqual([1, 0]);
  });

  it('keeps on saying ground on jacks when the strut does not come out', () => {
    expect(bench('squat-switch', { strutExtension: 0.15, makesAt: 0.2 }).settled()).toBe('ground');
    expect(bench('squat-switch', { strutExtension: 0.2, makesAt: 0.2 }).settled()).toBe('air');
  });

  it('stays as it is where it is stuck', () => {
    const b = bench('squat-switch', { stuck: 'air' });
    b.set('weight', 'on');
    expect(b.settled()).toBe('air');
    expect(bench('squat-switch', { stuck: 'ground' }).settled()).toBe('ground');
  });
});

describe.each([
  ['closed', 'open'],
  ['open', 'closed'],
])('solenoid valve, %s at rest', (rest, pulled) => {
  const shut = (mode: string) => (mode === 'closed' ? 0 : 1);
  const at = (given: Parameters = {}) =>
    bench('solenoid-valve', { atRest: rest, riseTime: 0.2, fallTime: 0.1, ...given });

  it('pulls within its rise time and drops within its fall time', () => {
    const b = at();
    expect(b.settled()).toBe(rest);
    expect(b.openings()).toEqual([shut(rest)]);
    b.set('coil', 'on');
    expect(b.settled()).toBe('pulling');
    expect(b.rate()).toBeCloseTo(1 / 0.2, 12);
    b.frame.states[0] = 1 + 1e-9;
    expect(b.settled()).toBe(pulled);
    expect(b.rate()).toBe(0);
    expect(b.openings()).toEqual([shut(pulled)]);
    b.set('coil', 'off');
    expect(b.settled()).toBe('dropping');
    expect(b.rate()).toBeCloseTo(-1 / 0.1, 12);
    b.frame.states[0] = -1e-9;
    expect(b.settled()).toBe(rest);
    expect(b.frame.states[0]).toBe(0);
  });

  it('turns back on its way', () => {
    const b = at();
    b.set('coil', 'on');
    b.settled();
    b.frame.states[0] = 0.4;
    b.set('coil', 'off');
    expect(b.settled()).toBe('dropping');
    b.set('coil', 'on');
    expect(b.settled()).toBe('pulling');
    expect(b.frame.states[0]).toBe(0.4);
  });

  it('does not pull on a weak supply, against too high a drop, or with a dead coil', () => {
    const settled = (given: Parameters, drop: number): string => {
      const b = at({ pullIn: 0.6, maxDrop: 10e6, ...given });
      b.frame.pressures.set([OIL.ambient + drop, OIL.ambient]);
      b.set('coil', 'on');
      return b.settled();
    };
    expect(settled({}, 9.9e6)).toBe('pulling');
    expect(settled({}, 10.1e6)).toBe(rest);
    expect(settled({ supply: 0.59 }, 0)).toBe(rest);
    // (0.8^2 - 0.6^2) / (1 - 0.6^2) = 0.4375 of the drop at nominal voltage: force with its square.
    expect(settled({ supply: 0.8 }, 4.37e6)).toBe('pulling');
    expect(settled({ supply: 0.8 }, 4.38e6)).toBe(rest);
    expect(settled({ supply: 0 }, -30e6)).toBe(rest);
  });

  it.each(['closed', 'open'])('stuck %s stays so', (stuck) => {
    const b = at({ stuck });
    for (const word of ['on', 'off']) {
      b.set('coil', word);
      expect(b.settled()).toBe(stuck);
      expect(b.openings()).toEqual([shut(stuck)]);
    }
  });
});

describe('solenoid selector', () => {
  const at = (given: Parameters = {}) =>
    bench('solenoid-selector', { riseTime: 0.2, fallTime: 0.1, ...given });

  it.each([
    ['up', 1, [1, 0, 0, 1]],
    ['down', -1, [0, 1, 1, 0]],
  ])('shifts %s by its coil and is centred by its springs', (side, way, open) => {
    const b = at();
    expect(b.settled()).toBe('neutral');
    expect(b.openings()).toEqual([0, 0, 0, 0]);
    b.set(side, 'on');
    expect(b.settled()).toBe(`pulling-${side}`);
    expect(b.rate()).toBeCloseTo(way / 0.2, 12);
    b.frame.states[0] = way * (1 + 1e-9);
    expect(b.settled()).toBe(side);
    expect(b.frame.states[0]).toBe(way);
    // Pressure to up, pressure to down, up to return, down to return.
    expect(b.openings()).toEqual(open);
    b.set(side, 'off');
    expect(b.settled()).toBe(`leaving-${side}`);
    expect(b.rate()).toBeCloseTo(-way / 0.1, 12);
    b.frame.states[0] = -way * 1e-9;
    expect(b.settled()).toBe('neutral');
    expect(b.frame.states[0]).toBe(0);
  });

  it('goes back to neutral with both coils on, and through it to the other side', () => {
    const b = at();
    b.set('up', 'on');
    b.settled();
    b.frame.states[0] = 1.001;
    b.settled();
    b.set('down', 'on');
    expect(b.settled()).toBe('leaving-up');
    b.frame.states[0] = -1e-9;
    expect(b.settled()).toBe('neutral');
    b.set('up', 'off');
    expect(b.settled()).toBe('pulling-down');
  });

  it('lets both lines to return where its centre floats', () => {
    const b = at({ centre: 'lines-to-return', overlap: 0.5 });
    const [feedUp, feedDown, returnUp, returnDown] = b.openings();
    expect([feedUp, feedDown]).toEqual([0, 0]);
    expect(returnUp).toBeGreaterThan(0.2);
    expect(returnDown).toBe(returnUp);
  });

  it('does not answer a dead coil or a weak supply', () => {
    const mode = (side: string, given: Parameters): string => {
      const b = at(given);
      b.set(side, 'on');
      return b.settled();
    };
    expect(mode('up', { dead: 'up' })).toBe('neutral');
    expect(mode('down', { dead: 'up' })).toBe('pulling-down');
    expect(mode('up', { supply: 0.6, pullIn: 0.65 })).toBe('neutral');
    expect(mode('up', { supply: 0.7, pullIn: 0.65 })).toBe('pulling-up');
  });

  it.each([
    ['neutral', [0, 0, 0, 0]],
    ['up', [1, 0, 0, 1]],
    ['down', [0, 1, 1, 0]],
  ])('stuck at %s stays there and passes oil accordingly', (stuck, open) => {
    const b = at({ stuck });
    for (const side of ['up', 'down']) {
      b.set(side, 'on');
      expect(b.settled()).toBe(stuck);
      expect(b.openings()).toEqual(open);
      b.set(side, 'off');
    }
  });
});
