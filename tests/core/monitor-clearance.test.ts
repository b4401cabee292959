import { describe, expect, it } from 'vitest';
import type { Evidence, Flag, Placement } from '../../packages/core/src/define/index.js';
import { rules } from '../../packages/core/src/monitor/index.js';
import { swing, type Story } from '../support/evidence.js';

// Expected distances are plane geometry on the figures stated beside them, no other source.
const judged = (rule: string, e: Evidence): readonly Flag[] => rules[rule].judge(e);
const margins = (rule: string, change?: (s: Story) => void): number[] =>
  judged(rule, swing(change)).map((f) => f.margin);

// Legs stand still, the wheel's centre at y = +-1, z = -1. Tyre of radius 0.3 and width 0.2
// with its axle across: seen along x a line from z = -1.2 to -0.8 with shoulders of 0.1.
const tyre = (y: number): Placement => ({
  line: [{ x: 0, y, z: 0 }],
  tyre: { centre: { x: 0, y, z: -1 }, axle: { x: 0, y: 1, z: 0 }, radius: 0.3, width: 0.2 },
});
// A door hinged at `hinge`, chord 0.5 m: level when closed, hanging straight down when open.
const door = (hinge: number, inward: number, angle: number, z = -0.5): Placement => {
  const a = (angle / 1.5) * (Math.PI / 2);
  const edge = { y: hinge + inward * 0.5 * Math.cos(a), z: z - 0.5 * Math.sin(a) };
  return {
    line: [
      { x: -0.5, y: hinge, z },
      { x: 0.5, y: hinge, z },
    ],
    edge: [
      { x: -0.5, ...edge },
      { x: 0.5, ...edge },
    ],
  };
};
const place = (name: string, angle: number, hinge: number): Placement => {
  const side = name.startsWith('left') ? -1 : 1;
  return name.endsWith('leg') ? tyre(side) : door(side * hinge, -side, angle);
};
const at = (hinge: number) => (s: Story) => {
  s.limits.clearance = 0.02;
  s.outline = (name, angle) => place(name, angle, hinge);
};

describe('clearance', () => {
  it('measures from the tyre to a door hanging beside it', () => {
    // Hinge 0.15 m outboard of the wheel's plane: as the door closes it sweeps through the wheel.
    const flags = judged('clearance', swing(at(1.15)));
    const left = flags.find(
      (f) => f.devices.includes('left-leg') && f.devices.includes('left-door'),
    );
    // Its free edge is in that plane at cos a = 0.15 / 0.5, where z = -0.5 - 0.5 sin a = -0.977:
    // on the wheel's line, so the door cuts in by the whole shoulder.
    expect(left?.margin).toBeCloseTo(-0.1 - 0.02, 3);
    expect(left?.severity).toBe('fail');
    expect(left?.explanation).toContain('ran into');
  });
  it('notes a door that stays clear', () => {
    // Hinge 0.7 m outboard. The free edge runs on a circle of 0.5 m about the hinge, which is
    // 0.7 m beside and 0.3 m above the top of the wheel's line.
    const nearest = Math.hypot(0.7, 0.3) - 0.5 - 0.1;
    const flags = judged('clearance', swing(at(1.7)));
    const left = flags.find((f) => f.devices.includes('left-leg'));
    expect(left?.margin).toBeCloseTo(nearest - 0.02, 4);
    expect(left?.severity).toBe('note');
  });
  it('sees a lying wheel: axle upright', () => {
    const flags = judged(
      'clearance',
      swing((s) => {
        s.limits.clearance = 0.02;
        s.outline = (name, angle) =>
          name === 'left-leg'
            ? {
                line: [],
                tyre: {
                  centre: { x: 0, y: -1, z: -0.2 },
                  axle: { x: 0, y: 0, z: 1 },
                  radius: 0.3,
                  width: 0.2,
                },
              }
            : name === 'left-door'
              ? {
                  line: [
                    { x: -1, y: -2, z: -0.5 - 0 * angle },
                    { x: 1, y: -2, z: -0.5 },
                  ],
                  edge: [
                    { x: -1, y: 0, z: -0.5 },
                    { x: 1, y: 0, z: -0.5 },
                  ],
                }
              : undefined;
      }),
    );
    // 0.3 m from the wheel's middle plane to the panel, less half the width.
    expect(flags[0].margin).toBeCloseTo(0.3 - 0.1 - 0.02, 9);
  });
  it('counts a panel inside the outline of a tyre seen face on', () => {
    const [flag] = judged(
      'clearance',
      swing((s) => {
        s.limits.clearance = 0.02;
        const fore = (y: number) => [-1, 1].map((x) => ({ x, y, z: -1 }));
        s.outline = (name) => {
          const t = tyre(-1).tyre!;
          if (name === 'left-leg') return { line: [], tyre: { ...t, axle: { x: 1, y: 0, z: 0 } } };
          return name === 'left-door' ? { line: fore(-1.05), edge: fore(-0.95) } : undefined;
        };
      }),
    );
    // The disc of 0.2 m hides the panel whole: minus half the width of the tyre.
    expect(flag.margin).toBeCloseTo(-0.1 - 0.02, 9);
  });
  it('judges a door only where it lies beside the tyre', () => {
    // The tyre reaches 0.3 m forward and aft; the door cuts through where it would be, seen from behind.
    const from = (front: number): readonly Flag[] =>
      judged(
        'clearance',
        swing((s) => {
          s.limits.clearance = 0.02;
          const beside = (y: number) => [front, 2].map((x) => ({ x, y, z: -1 }));
          s.outline = (name) =>
            name === 'left-leg'
              ? tyre(-1)
              : name === 'left-door'
                ? { line: beside(-2), edge: beside(0) }
                : undefined;
        }),
      );
    expect(from(0.31)).toEqual([]);
    expect(from(0.29)[0].margin).toBeCloseTo(-0.1 - 0.02, 9);
  });
  it('begins to judge where a moving tyre comes beside the door', () => {
    // The tyre goes aft and up by a metre a radian: beside the door (from 1 m aft) from 0.7 rad on,
    // where its lowest shoulder has its middle at z = -1.2 + 0.7, half a metre over the panel.
    const flags = judged(
      'clearance',
      swing((s) => {
        s.limits.clearance = 0.02;
        const beside = (y: number) => [1, 3].map((x) => ({ x, y, z: -1 }));
        s.outline = (name, angle) => {
          const t = tyre(-1).tyre!;
          const centre = { x: angle, y: -1, z: -1 + angle };
          if (name === 'left-leg') return { line: [], tyre: { ...t, centre } };
          return name === 'left-door' ? { line: beside(-2), edge: beside(0) } : undefined;
        };
      }),
    );
    expect(flags.map((f) => f.margin)).toEqual([expect.closeTo(0.5 - 0.1 - 0.02, 3)]);
  });
  it("leaves another unit's door out while it stays clear, though it swings round the corner", () => {
    // Hinge at (-1.55, -0.25), chord 0.5: hypot(0.55, 0.55) - 0.5 - 0.1 = 0.18 m to the tyre.
    const flags = judged(
      'clearance',
      swing((s) => {
        s.limits.clearance = 0.02;
        s.outline = (name, angle) =>
          name === 'right-door' ? door(-1.55, 1, angle, -0.25) : place(name, angle, 1.7);
      }),
    );
    expect(flags.filter((f) => f.devices[0] === 'left-leg').map((f) => f.devices[1])).toEqual([
      'left-door',
    ]);
  });
  it('cannot judge without geometry', () => {
    expect(margins('clearance', (s) => (s.limits.clearance = 0.02))).toEqual([]);
  });
});

describe('door-clearance', () => {
  const pair = (
    change: (s: Story) => void,
    left: (angle: number) => Placement,
    right: (angle: number) => Placement,
    oneUnit = false,
  ): Flag | undefined => {
    const e = swing((s) => {
      s.limits.clearance = 0.02;
      s.outline = (name, angle) =>
        name === 'left-door' ? left(angle) : name === 'right-door' ? right(angle) : undefined;
      change(s);
    });
    const { left: l, right: r } = e.scenario.units;
    const units = oneUnit
      ? { left: { ...l, doors: ['left-door', 'right-door'] }, right: { ...r, doors: [] } }
      : e.scenario.units;
    const flags = judged('door-clearance', { ...e, scenario: { ...e.scenario, units } });
    expect(flags.length).toBeLessThan(2);
    return flags[0];
  };
  const same = (): void => undefined;

  it('lets doors meet as near as they are when closed', () => {
    // Hinges at +-0.505, chords of 0.5: a gap of 10 mm. Half a millimetre is forgiven.
    const flag = pair(
      same,
      (a) => door(-0.505, 1, a),
      (a) => door(0.505, -1, a),
    );
    expect(flag?.margin).toBeCloseTo(0.0005, 6);
    expect(flag?.severity).toBe('note');
  });
  it('flags doors that come nearer on their way than they are when closed', () => {
    // The right door, 15 mm lower and 0.2 m over the left one, stands 15 mm off it when both are
    // closed. It comes 0.3 s later, and on its way up its hinge end goes through the left edge.
    const flag = pair(
      (s) => (s.right.doorCloses = 6.1),
      (a) => door(-0.4, 1, a),
      (a) => door(0.4, -1, a, -0.515),
    );
    expect(flag?.severity).toBe('fail');
    expect(flag?.margin).toBeCloseTo(-0.0145, 6);
    expect(flag?.explanation).toContain('ran into');
  });
  it('flags doors that stand clear when closed and strike half-way', () => {
    const flag = pair(
      same,
      (a) => door(-0.3, 1, a),
      (a) => door(0.3, -1, a, -0.6),
    );
    expect(flag?.severity).toBe('fail');
    expect(flag?.margin).toBeCloseTo(-0.02, 6);
  });
  it('lets doors lap when closed, and flags them when they touch before', () => {
    // Overlap of 10 mm at one level: they touch at the very end only.
    const lapped = pair(
      same,
      (a) => door(-0.495, 1, a),
      (a) => door(0.495, -1, a),
    );
    expect(lapped?.severity).not.toBe('fail');
    // Overlap of 0.4 m: they cross long before.
    const early = pair(
      same,
      (a) => door(-0.3, 1, a),
      (a) => door(0.3, -1, a),
    );
    expect(early?.severity).toBe('fail');
    expect(early?.margin).toBeCloseTo(-0.0005, 6);
  });
  it('shows the margin of far doors of one unit, and is silent on far doors of two', () => {
    const far = (oneUnit: boolean): Flag | undefined =>
      pair(
        same,
        (a) => door(-1.7, 1, a),
        (a) => door(1.7, -1, a),
        oneUnit,
      );
    // Closed edges at +-1.2.
    expect(far(true)?.margin).toBeCloseTo(2.4 - 0.02, 6);
    expect(far(false)).toBeUndefined();
  });
  it('goes by its own limit where there is one', () => {
    const flag = pair(
      (s) => (s.limits.doorClearance = 0.5),
      (a) => door(-0.7, 1, a),
      (a) => door(0.7, -1, a),
    );
    // 0.4 m apart when closed: nearer than asked, so they may meet there.
    expect(flag?.margin).toBeCloseTo(0.0005, 6);
    expect(margins('door-clearance')).toEqual([]);
  });
});

describe('bay-clearance', () => {
  // The tyre of `tyre(-1)`: y from -1.1 to -0.9, z from -1.3 to -0.7, x from -0.3 to 0.3.
  const inBay = (
    bay: NonNullable<Evidence['scenario']['units'][string]['bay']>,
    skin = -1.4,
    rise: (angle: number) => number = () => 0,
    doors: readonly string[] = ['left-door'],
  ): Flag | undefined => {
    const e = swing((s) => {
      s.limits.clearance = 0.02;
      s.outline = (name, angle) => {
        if (name === 'left-door') return door(-3, -1, angle, skin);
        const { line, tyre: t } = tyre(-1);
        const centre = { ...t!.centre, z: -1 + rise(angle) };
        return name === 'left-leg' ? { line, tyre: { ...t!, centre } } : undefined;
      };
    });
    const units = { ...e.scenario.units, left: { ...e.scenario.units.left, bay, doors } };
    return judged('bay-clearance', { ...e, scenario: { ...e.scenario, units } })[0];
  };

  it('measures to the roof', () => {
    const flag = inBay({ roof: -0.65, walls: [-2, 0] });
    expect(flag?.margin).toBeCloseTo(0.05 - 0.02, 9);
    expect(flag?.severity).toBe('note');
    expect(flag?.explanation).toContain('roof');
  });
  it('measures to a side wall', () => {
    const flag = inBay({ roof: 0, walls: [-1.105, 0] });
    expect(flag?.margin).toBeCloseTo(0.005 - 0.02, 9);
    expect(flag?.severity).toBe('fail');
    expect(flag?.explanation).toContain('side wall');
  });
  it('measures to an end wall, seen from the side', () => {
    const flag = inBay({ roof: 0, walls: [-2, 0], ends: [-0.31, 2] });
    // From the side the wheel is a circle, for which 160 corners stand: 0.04 mm at most.
    expect(flag?.margin).toBeCloseTo(0.01 - 0.02, 4);
    expect(flag?.explanation).toContain('end wall');
  });
  it('counts a wall down to the closed doors only', () => {
    // Skin at -0.4: the wall ends above the tyre, whose shoulder of 0.1 has its middle at (-1, -0.8).
    const flag = inBay({ roof: 0.5, walls: [-1.105, 0] }, -0.4);
    expect(flag?.margin).toBeCloseTo(Math.hypot(0.105, 0.4) - 0.1 - 0.02, 9);
  });
  it('counts a wall down to the middle of the tyre at its highest without doors', () => {
    // Up by 1 its middle stands at z = 0; down it is at -1, beside nothing.
    const flag = inBay({ roof: 2, walls: [-1.105, 0] }, 0, (a) => a / 1.5, []);
    expect(flag?.margin).toBeCloseTo(0.005 - 0.02, 9);
    // Nearer than 20 mm while its line (0.2 m up from its middle) reaches within 58 mm of the wall's
    // foot: raised by 0.742 m or more. Looks are half a degree apart: 0.03 s here.
    const near = 1 - 0.2 - Math.sqrt(0.12 ** 2 - 0.105 ** 2);
    expect(Math.abs(flag!.from - (1.5 + 4.5 * near))).toBeLessThan(0.06);
    expect(Math.abs(flag!.to - (13.7 + 4.3 * (1 - near)))).toBeLessThan(0.06);
  });
  it('a roof that the tyre goes through counts as minus half its width', () => {
    const flag = inBay({ roof: -0.2, walls: [-2, 0] }, -1.4, (a) => a / 1.5);
    expect(flag?.margin).toBeCloseTo(-0.1 - 0.02, 3);
    expect(flag?.explanation).toContain('ran into');
  });
  it('cannot judge without a well or a limit', () => {
    expect(margins('bay-clearance', at(1.7))).toEqual([]);
  });
});
