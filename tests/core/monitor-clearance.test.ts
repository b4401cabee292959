import { describe, expect, it } from 'vitest';
import type { Evidence, Flag, Placement } from '../../packages/core/src/define/index.js';
import { rules } from '../../packages/core/src/monitor/index.js';
import { swing, type Story } from '../support/evidence.js';

// Expected distances are plane geometry on the figures stated beside them, no other source.
const judged = (rule: string, e: Evidence): readonly Flag[] => rules[rule].judge(e);
const margins = (rule: string, change?: (s: Story) => void): number[] =>
  judged(rule, swing(change)).map((f) => f.margin);

describe('clearance', () => {
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
  it('finds doors that cross, but lets doors meet as near as they are when closed', () => {
    // Hinges at +-0.495: the closed edges overlap by 10 mm. Hinges at +-0.505: a gap of 10 mm.
    const meet = (hinge: number): Flag | undefined =>
      judged(
        'clearance',
        swing((s) => {
          s.limits.clearance = 0.02;
          s.outline = (name, angle) =>
            name.endsWith('leg') ? undefined : place(name, angle, hinge);
        }),
      ).find((f) => f.devices.join() === 'left-door,right-door');
    expect(meet(0.505)?.margin).toBeCloseTo(0, 6);
    const early = judged(
      'clearance',
      swing((s) => {
        // The left door's hinge is lower, so closed they stand apart; half-way one strikes the other.
        s.limits.clearance = 0.02;
        s.outline = (name, angle) =>
          name === 'left-door'
            ? door(-0.3, 1, angle)
            : name === 'right-door'
              ? door(0.3, -1, angle, -0.6)
              : undefined;
      }),
    ).find((f) => f.devices.join() === 'left-door,right-door');
    expect(early?.severity).toBe('fail');
    expect(early?.margin).toBeCloseTo(-0.02, 6);
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
  it('cannot judge without geometry', () => {
    expect(margins('clearance', (s) => (s.limits.clearance = 0.02))).toEqual([]);
  });
});
