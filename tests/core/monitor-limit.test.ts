import { describe, expect, it } from 'vitest';
import type { Evidence, Flag } from '../../packages/core/src/define/index.js';
import { rules } from '../../packages/core/src/monitor/index.js';
import { AMBIENT, swing, type Story } from '../support/evidence.js';

// Expected margins are arithmetic on the numbers stated in each story, no other source.
const judged = (rule: string, e: Evidence): readonly Flag[] => rules[rule].judge(e);
const margins = (rule: string, change?: (s: Story) => void): number[] =>
  judged(rule, swing(change)).map((f) => f.margin);

describe('spread', () => {
  it('flags sides further apart than the limit', () => {
    const [up] = judged(
      'spread',
      swing((s) => {
        s.limits.spread = 1;
        s.right.doorClosed = 9;
      }),
    );
    expect(up.margin).toBeCloseTo(1 - (9 - 7.4), 12);
    expect(up.severity).toBe('caution');
    expect(up.explanation).toContain('right');
  });
  it('notes sides that finish together, up and down', () => {
    expect(margins('spread', (s) => (s.limits.spread = 1))).toEqual([
      expect.closeTo(0.7, 12),
      expect.closeTo(0.7, 12),
    ]);
  });
  it('holds a side that never finishes against the end of the move', () => {
    const [up] = margins('spread', (s) => {
      s.limits.spread = 1;
      s.right.doorClosed = null;
    });
    expect(up).toBeCloseTo(1 - (12 - 7.4), 12);
  });
  it('cannot judge without a limit', () => expect(margins('spread')).toEqual([]));
});

describe('slow-swing', () => {
  it('flags a unit over its time', () => {
    const flags = judged(
      'slow-swing',
      swing((s) => (s.limits.timeUp = 6.5)),
    );
    expect(flags.map((f) => [f.devices[0], f.severity])).toEqual([
      ['left-leg', 'note'],
      ['right-leg', 'caution'],
    ]);
    expect(flags[0].margin).toBeCloseTo(0.1, 12);
    expect(flags[1].margin).toBeCloseTo(-0.2, 12);
  });
  it('judges down by its own limit', () => {
    expect(margins('slow-swing', (s) => (s.limits.timeDown = 8))).toEqual([
      expect.closeTo(2, 12),
      expect.closeTo(1.7, 12),
    ]);
  });
  it('cannot judge a move cut short before the limit', () => {
    expect(
      margins('slow-swing', (s) => {
        s.limits.timeDown = 20;
        s.left.downlockEngages = s.right.downlockEngages = null;
      }),
    ).toEqual([]);
  });
});

describe('hard-arrival', () => {
  it('flags an arrival faster than the limit', () => {
    const [flag] = judged(
      'hard-arrival',
      swing((s) => {
        s.limits.arrivalSpeed = 0.35;
      }),
    );
    expect(flag.margin).toBeCloseTo(-0.05, 12);
    expect(flag.marginQuantity).toBe('angular-speed');
    expect(flag.from).toBe(18);
  });
  it('gives doors a limit of their own', () => {
    const flags = judged(
      'hard-arrival',
      swing((s) => {
        s.limits.doorArrivalSpeed = 1.5;
      }),
    );
    expect(flags.map((f) => f.devices[0])).toEqual(['left-door', 'right-door']);
    expect(flags[0].margin).toBeCloseTo(0.3, 12);
  });
  it('cannot judge without a limit', () => expect(margins('hard-arrival')).toEqual([]));
});

describe('peak-pressure', () => {
  const spike = (top: number) => (s: Story) => {
    s.limits.peakPressure = 10e6;
    s.channels['up-line.pressure'] = [
      'pressure',
      'up-line',
      [
        [0, AMBIENT],
        [5, AMBIENT],
        [6, AMBIENT + top],
        [7, AMBIENT],
        [25, AMBIENT],
      ],
    ];
    s.channels['down-line.pressure'] = [
      'pressure',
      'down-line',
      [
        [0, AMBIENT],
        [25, AMBIENT],
      ],
    ];
  };
  it('flags a spike, gauge against gauge, with the span above the limit', () => {
    const flags = judged('peak-pressure', swing(spike(12e6)));
    expect(flags).toHaveLength(1);
    expect(flags[0].margin).toBeCloseTo(-2e6, 6);
    expect(flags[0].devices).toEqual(['up-line']);
    // The ramp of 12 MPa/s is above 10 MPa from 5 + 10/12 s.
    expect(flags[0].from).toBeCloseTo(5 + 10 / 12, 9);
    expect(flags[0].to).toBeCloseTo(7 - 10 / 12, 9);
  });
  it('notes the node nearest to the limit', () => {
    expect(margins('peak-pressure', spike(9e6))).toEqual([expect.closeTo(1e6, 6)]);
  });
  it('cannot judge without pressures', () => {
    expect(margins('peak-pressure', (s) => (s.limits.peakPressure = 1e7))).toEqual([]);
  });
});

describe('trapped-pressure', () => {
  const residual = (gauge: number) => (s: Story) => {
    s.limits.residualPressure = 300e3;
    s.channels['up-line.pressure'] = [
      'pressure',
      'up-line',
      [
        [0, AMBIENT],
        [25, AMBIENT + gauge],
      ],
    ];
    s.channels['down-line.pressure'] = [
      'pressure',
      'down-line',
      [
        [0, AMBIENT],
        [25, AMBIENT + 7e6],
      ],
    ];
  };
  it('flags pressure left in the idle line, and only there', () => {
    const flags = judged('trapped-pressure', swing(residual(500e3)));
    expect(flags).toHaveLength(1);
    expect(flags[0].margin).toBeCloseTo(-200e3, 6);
    expect(flags[0].devices).toEqual(['selector', 'up-line']);
  });
  it('notes an idle line', () => {
    expect(margins('trapped-pressure', residual(100e3))).toEqual([expect.closeTo(200e3, 6)]);
  });
  it('cannot judge while something still moves', () => {
    expect(
      margins('trapped-pressure', (s) => {
        residual(500e3)(s);
        s.left.legDown = null;
      }),
    ).toEqual([]);
  });
});

describe('cavitation', () => {
  const gap = (pressure: number) => (s: Story) => {
    s.channels['down-line.void'] = [
      'volume',
      'down-line',
      [
        [0, 2e-6],
        [14, 2e-6],
        [15, 10e-6],
        [16, 2e-6],
        [25, 2e-6],
      ],
    ];
    s.channels['down-line.pressure'] = [
      'pressure',
      'down-line',
      [
        [0, AMBIENT],
        [14, AMBIENT],
        [15, pressure],
        [16, AMBIENT],
        [25, AMBIENT],
      ],
    ];
  };
  it('flags gas that swells below ambient, by Boyle', () => {
    const [flag] = judged('cavitation', swing(gap(0.2 * AMBIENT)));
    // 10 cm3 at 0.2 of ambient would be 2 cm3 at ambient: 8 cm3 opened, 1 cm3 allowed.
    expect(flag.margin).toBeCloseTo(1e-6 - 8e-6, 15);
    expect(flag.severity).toBe('caution');
  });
  it('does not count free air at or above ambient', () => {
    expect(margins('cavitation', gap(AMBIENT))).toEqual([expect.closeTo(1e-6, 15)]);
  });
  it('cannot judge without the channel', () => expect(margins('cavitation')).toEqual([]));
});

describe('relief-flowing', () => {
  const flow = (from: number, to: number) => (s: Story) => {
    s.channels['relief.flow'] = [
      'flow',
      'relief',
      [
        [0, 0],
        [from, 0],
        [from + 1e-6, 1e-4],
        [to, 1e-4],
        [to + 1e-6, 0],
        [25, 0],
      ],
    ];
  };
  it('flags oil lost over the relief while the gear travels', () => {
    const [flag] = judged('relief-flowing', swing(flow(4, 5)));
    expect(flag.margin).toBeCloseTo(-0.9, 4); // 1 s less the 0.1 s that is forgiven
    expect(flag.severity).toBe('caution');
  });
  it('notes the time between the end of travel and the relief', () => {
    // The last door is closed at 7.7 s (right side).
    expect(margins('relief-flowing', flow(8.7, 9))).toEqual([expect.closeTo(1, 4)]);
  });
  it('cannot judge without its flow', () => expect(margins('relief-flowing')).toEqual([]));
});

describe('starved-supply', () => {
  const suction = (low: number) => (s: Story) => {
    s.channels['suction-line.pressure'] = [
      'pressure',
      'suction-line',
      [
        [0, AMBIENT],
        [5, low],
        [25, AMBIENT],
      ],
    ];
  };
  it('flags a starved inlet', () => {
    const [flag] = judged('starved-supply', swing(suction(50e3)));
    expect(flag.margin).toBeCloseTo(50e3 - 0.7 * AMBIENT, 6);
    expect(flag.devices).toEqual(['pump', 'suction-line']);
  });
  it('notes a supplied inlet, and a reservoir that holds enough', () => {
    expect(
      margins('starved-supply', (s) => {
        suction(90e3)(s);
        s.limits.reservoirContent = 1e-3;
        s.channels['reservoir.content'] = [
          'volume',
          'reservoir',
          [
            [0, 4e-3],
            [7, 2.5e-3],
            [25, 4e-3],
          ],
        ];
      }),
    ).toEqual([expect.closeTo(90e3 - 0.7 * AMBIENT, 6), expect.closeTo(1.5e-3, 12)]);
  });
  it('cannot judge without the pressure', () => expect(margins('starved-supply')).toEqual([]));
});

describe('line-velocity', () => {
  // 10 mm bore: area 78.54 mm2.
  const flow = (v: number) => (s: Story) => {
    s.channels['up-pipe.flow'] = [
      'flow',
      'up-pipe',
      [
        [0, 0],
        [3, (-v * Math.PI * 0.01 ** 2) / 4],
        [25, 0],
      ],
    ];
  };
  it('only notes a breach of the guide, and flags a breach of the own limit, either way of flow', () => {
    const [guide] = judged('line-velocity', swing(flow(6)));
    expect(guide.margin).toBeCloseTo(4.572 - 6, 9);
    expect(guide.severity).toBe('note');
    const [own] = judged(
      'line-velocity',
      swing((s) => {
        flow(6)(s);
        s.limits.lineVelocity = 5;
      }),
    );
    expect(own.margin).toBeCloseTo(-1, 9);
    expect(own.severity).toBe('caution');
  });
  it('notes slower oil', () =>
    expect(margins('line-velocity', flow(3))).toEqual([expect.closeTo(1.572, 9)]));
  it('cannot judge without the flow', () => expect(margins('line-velocity')).toEqual([]));
});

describe('not-finished', () => {
  it('fails a run that broke off, by the time that is missing', () => {
    const [flag] = judged(
      'not-finished',
      swing((s) => {
        s.outcome = {
          kind: 'stuck',
          time: 20,
          where: ['pump'],
          why: 'The step became too small.',
          hint: 'Try fine.',
        };
      }),
    );
    expect(flag.margin).toBeCloseTo(-5, 12);
    expect(flag.severity).toBe('fail');
    expect(flag.explanation).toContain('The step became too small.');
  });
  it('cautions when the operator was left waiting', () => {
    const [flag] = judged(
      'not-finished',
      swing((s) => {
        s.outcome = {
          kind: 'done',
          time: 25,
          where: ['selector'],
          why: 'The operator waited.',
          hint: 'Look why.',
        };
      }),
    );
    expect(flag.severity).toBe('caution');
    expect(flag.margin).toBeCloseTo(12 - 25, 12); // since the lever went down
  });
  it('says nothing of a run that was played out', () =>
    expect(margins('not-finished')).toEqual([]));
});
