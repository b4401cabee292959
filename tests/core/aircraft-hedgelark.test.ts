/**
 * The first aircraft as a whole: what each card is there to show hangs on its fault and on the rule
 * that finds it, and the tail unit moves as its linkage, chain and edges would have it.
 * Figures that are not statics or plane geometry are the scenario's own: common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import type { Card, Flag } from '@wheelwell/core';
import type { SimulatedRun } from '../../packages/core/src/machine/index.js';
import { aircraft, raised, raisedWithout, valueAt, when } from '../support/aircraft.js';

const DEG = Math.PI / 180;
const { scenario, play } = aircraft('hedgelark');
type Run = SimulatedRun;

const runs = new Map<string, Run>();
/** A run of a card, changed or as it is, made once. */
function runOf(card: string, change: Partial<Card> = {}): Run {
  const key = `${card} ${JSON.stringify(change)}`;
  const known = runs.get(key);
  if (known !== undefined) return known;
  const run = play(card, change);
  runs.set(key, run);
  return run;
}

/** When a leg last came through an angle (rad) one way, s. */
function passes(run: Run, leg: string, angle: number, way: 'up' | 'down'): number {
  const { t, v } = run.series(`${leg}.angle`)!;
  let found = NaN;
  for (let i = 1; i < t.length; i++) {
    const [a, b] = [v[i - 1] - angle, v[i] - angle];
    if (way === 'up' ? a < 0 && b >= 0 : a > 0 && b <= 0)
      found = t[i - 1] + ((t[i] - t[i - 1]) * a) / (a - b);
  }
  expect(found).toBeGreaterThan(0);
  return found;
}

const faulty = Object.entries(scenario.cards).filter(([, card]) => card.faults.length > 0);

// The switch: a card's flags come from its fault, and each from its rule alone.
describe.each(faulty)('%s', (name, { expect: meant }) => {
  it.each([...meant])('%s is lost when its rule does not judge', (rule) => {
    const run = runOf(name);
    expect(raised(run)).toContain(rule);
    expect([...raisedWithout(run, rule)].sort()).toEqual(meant.filter((r) => r !== rule).sort());
  });

  it('shows nothing without its fault', () => {
    expect(meant).not.toEqual([]);
    // A blow-down jolts the oil under the legs in health too, and a line without oil stays one: there
    // is gas in it, and it does not brake the legs, which outrun theirs.
    const { gas, start } = scenario.cards[name];
    const blown = Object.keys(start).length > 0 || Object.keys(gas).length > 0;
    const sound = blown ? scenario.cards['blow-down'].expect : [];
    const air = Object.keys(gas).length > 0 ? ['gas-in-return', 'cavitation'] : [];
    const left = raised(runOf(name, { faults: [], set: {} }));
    expect([...left].sort()).toEqual([...sound, ...air].sort());
  });
});

describe('tail doors in health', () => {
  const run = runOf('healthy');
  const { parameters: chain } = scenario.components['tail-chain'];
  const halfSlack = 0.5 * (chain.slack as number);
  const legAngles = [30, 50, 70, 85].map((q) => q * DEG);

  it('are open with the leg down and closed with it up, the chained one first to close and last to open', () => {
    const down = when(run, 'selector', 'down', 5);
    const closed = when(run, 'tail-right-door', 'at closed');
    expect(closed).toBeLessThan(when(run, 'tail-left-door', 'at closed', 5));
    expect(when(run, 'tail-left-door', 'rising', down)).toBeLessThan(
      when(run, 'tail-right-door', 'rising', down),
    );
    for (const door of ['tail-left-door', 'tail-right-door']) {
      const { travel } = scenario.mechanisms[door].parameters;
      for (const t of [0.5, 29])
        expect(valueAt(run, `${door}.angle`, t)).toBeCloseTo(travel as number, 6);
      expect(Math.abs(valueAt(run, `${door}.angle`, down))).toBeLessThan(0.5 * DEG);
    }
  });

  it('never lie on each other: the edge beneath is home before the one that laps it', () => {
    const words = run.log.filter((x) => x.device === 'tail-lap').map((x) => x.to);
    expect(words).toEqual(['clear', 'overlapped', 'clear']);
    const left = run.series('tail-left-door.angle')!;
    const right = run.series('tail-right-door.angle')!;
    left.v.forEach((angle, i) => {
      if (angle > DEG) expect(right.v[i]).toBeLessThan(angle);
    });
  });

  it.each(['up', 'down'] as const)(
    'the chained door hangs half the slack behind on the way %s, and its weight is what the chain carries',
    (way) => {
      const p = scenario.mechanisms['tail-right-door'].parameters;
      const weight = (p.mass as number) * 9.80665 * (p.cog as number);
      for (const angle of legAngles) {
        // Going down it is the last of the way (below 40 degrees) that the other strand pulls.
        if (way === 'down' && angle < 40 * DEG) continue;
        const t = passes(run, 'tail-leg', angle, way);
        const lead = valueAt(run, 'tail-chain.lead', t);
        expect(lead).toBeGreaterThan(halfSlack);
        // Statics of a hinged panel: m g cog cos(q), give or take hinge friction, air and grease.
        const q = valueAt(run, 'tail-right-door.angle', t);
        const drag =
          (p.friction as number) +
          (p.damping as number) * Math.abs(valueAt(run, 'tail-right-door.speed', t));
        const rubs = way === 'up' ? drag : -drag;
        const pull = -valueAt(run, 'tail-chain.pull', t);
        expect(Math.abs(pull - (weight * Math.cos(q) + rubs))).toBeLessThan(0.05 * weight);
      }
    },
  );

  it('take the fairing along turn for turn', () => {
    for (const angle of legAngles) {
      const t = passes(run, 'tail-leg', angle, 'up');
      expect(valueAt(run, 'tail-fairing.angle', t)).toBeCloseTo(angle, 4);
    }
  });
});

describe('tail doors out of step', () => {
  /** How much further open than in health the right door is with the leg at an angle, going up, rad. */
  const behind = (card: string, angle: number): number => {
    const [run, sound] = [runOf(card), runOf('healthy')].map((r) =>
      valueAt(r, 'tail-right-door.angle', passes(r, 'tail-leg', angle, 'up')),
    );
    return run - sound;
  };

  it('by half of the 9 degrees that a slack chain has more', () => {
    for (const q of [60, 75]) expect(behind('chain-slack', q * DEG)).toBeCloseTo(4.5 * DEG, 2);
  });

  it('by one tooth of 24 where the timing has jumped', () => {
    for (const q of [60, 75])
      expect(behind('chain-jumped', q * DEG)).toBeCloseTo((2 * Math.PI) / 24, 2);
  });

  it('where a hinge binds, by what the chain stretches for it', () => {
    const lead = (run: Run): number =>
      Math.max(
        ...run.series('tail-chain.lead')!.v.filter((_, i) => {
          const q = run.series('tail-right-door.angle')!.v[i];
          return q > 8 * DEG && q < 20 * DEG;
        }),
      );
    const more = lead(runOf('tail-door-binding')) - lead(runOf('healthy'));
    // The fault's own words: twice the weight moment plus 20 N m, here six tenths of it.
    const moment = 0.6 * (20 + 2 * 1.2 * 9.81 * 0.08);
    expect(more / (moment / 600)).toBeGreaterThan(0.7);
    expect(more / (moment / 600)).toBeLessThan(1.3);
  });
});

describe('clearances', () => {
  it.each(['healthy', 'engine-pump', 'in-flight'])(
    'are kept with something in hand: %s',
    (card) => {
      const near = (rule: string): readonly Flag[] =>
        runOf(card).flags.filter((f) => f.rule === rule);
      expect(
        near('bay-clearance')
          .flatMap((f) => f.devices)
          .sort(),
      ).toEqual(['left-leg', 'right-leg', 'tail-leg']);
      const doors = near('clearance').map((f) => f.devices.join(' '));
      for (const side of ['left', 'right']) {
        expect(doors).toContain(`${side}-leg ${side}-door`);
        expect(doors).toContain(`tail-leg tail-${side}-door`);
      }
      expect(near('door-clearance')).toHaveLength(1);
      for (const flag of ['bay-clearance', 'clearance', 'door-clearance'].flatMap(near))
        expect(flag.margin).toBeGreaterThan(0);
    },
  );
});

describe('in flight', () => {
  it('the wind helps the jacks up by what it drags on the legs', () => {
    const [windy, still] = [runOf('in-flight'), runOf('in-flight', { airspeed: 0 })];
    const angle = 45 * DEG;
    const p = scenario.mechanisms['left-leg'].parameters;
    const jack = scenario.components['left-leg-jack'].parameters;
    const head = (Math.PI / 4) * (jack.bore as number) ** 2;
    const rod = head - (Math.PI / 4) * (jack.rodDiameter as number) ** 2;
    const push = (run: Run): number => {
      const t = passes(run, 'left-leg', angle, 'up');
      return (
        valueAt(run, 'left-leg-up.pressure', t) * head -
        valueAt(run, 'left-leg-down.pressure', t) * rod
      );
    };
    // Law of cosines: arm of a jack between 800 mm and 245 mm, 28 degrees apart with the leg down.
    const phi = 28 * DEG + angle;
    const length = Math.sqrt(0.8 ** 2 + 0.245 ** 2 - 2 * 0.8 * 0.245 * Math.cos(phi));
    const arm = (0.8 * 0.245 * Math.sin(phi)) / length;
    // Dynamic pressure at 75 kn in the standard atmosphere at sea level (ISO 2533), and drag on a
    // slender body by the wind square to it (cross-flow principle, from memory): both fall off with
    // the cosine of the lean.
    const wind = 0.5 * 1.225 * (75 * (1852 / 3600)) ** 2;
    const lean = angle + (p.rake as number);
    const moment = wind * (p.dragArea as number) * (p.dragArm as number) * Math.cos(lean) ** 2;
    const less = (push(still) - push(windy)) * arm;
    expect(less / moment).toBeGreaterThan(0.9);
    expect(less / moment).toBeLessThan(1.1);
  });
});

describe('the tail hook’s cable', () => {
  it('lets the tail leg go without pressure, and no other', () => {
    const run = runOf('tail-cable');
    const pull = run.log.find((x) => x.device === 'tail-uplock' && x.kind === 'operator')!;
    expect(valueAt(run, 'tail-down.pressure', pull.t)).toBeLessThan(scenario.ambient + 0.1e6);
    expect(when(run, 'tail-uplock', 'open', pull.t - 1)).toBeCloseTo(pull.t, 2);
    expect(valueAt(run, 'tail-leg.angle', 29)).toBeLessThan(30 * DEG);
    expect(valueAt(run, 'tail-left-door.angle', 29)).toBeGreaterThan(80 * DEG);
    for (const side of ['left', 'right']) {
      const words = run.log.filter((x) => x.device === `${side}-uplock`).map((x) => x.to);
      expect(words.at(-1)).toBe('engaged');
    }
  });
});
