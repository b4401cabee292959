import { describe, expect, it } from 'vitest';
import { components } from '../../packages/core/src/component/index.js';
import type { CoordinateData, Parameters } from '../../packages/core/src/define/index.js';
import { simulateWith } from '../../packages/core/src/machine/index.js';
import { FakeFrame } from '../support/fake-frame.js';
import { coordinate, flat, rig } from '../support/rig.js';
import { SURROUNDINGS, seeded } from '../support/sample-parameters.js';

function frame(kind: string, own: Parameters, travels: readonly number[]): FakeFrame {
  const device = components[kind];
  const defaults = Object.entries(device.parameters).map(([n, d]) => [n, d.default] as const);
  const p = { ...Object.fromEntries(defaults), ...own } as Parameters;
  const made = new FakeFrame(device, p, SURROUNDINGS.mild);
  made.travels.set(travels);
  device.equations?.(made);
  return made;
}

function run(
  kind: string,
  names: readonly [string, string],
  parameters: Parameters,
  data: readonly [Partial<CoordinateData>, Partial<CoordinateData>],
  duration = 3,
) {
  const [first, second] = names;
  const made = rig({
    parts: {
      pair: { is: kind, parameters, links: { [first]: { to: first }, [second]: { to: second } } },
    },
    coordinates: { [first]: coordinate(data[0]), [second]: coordinate(data[1]) },
    duration,
  });
  return simulateWith(made.with, made.scenario, { tolerance: 'fine' });
}
const last = (r: ReturnType<typeof run>, channel: string): number => r.series(channel)!.v.at(-1)!;
const words = (r: ReturnType<typeof run>): readonly string[] =>
  r.log.filter((e) => e.device === 'pair' && e.from !== '').map((e) => e.to);

/** Forces of a pair are minus the slopes of its energy, at rest. */
function isPotential(kind: string, own: Parameters, at: readonly (readonly [number, number])[]) {
  const h = 1e-6;
  for (const [x, y] of at) {
    const { forces } = frame(kind, own, [x, y]);
    const energy = (a: number, b: number): number =>
      components[kind].energy!(frame(kind, own, [a, b]));
    const scale = 1e-5 * (1 + Math.abs(forces[0].value) + Math.abs(forces[1].value));
    const bySecond = (energy(x, y + h) - energy(x, y - h)) / (2 * h);
    const byFirst = (energy(x + h, y) - energy(x - h, y)) / (2 * h);
    expect(Math.abs(forces[0].value + byFirst), `${x} ${y}`).toBeLessThan(scale);
    expect(Math.abs(forces[1].value + bySecond), `${x} ${y}`).toBeLessThan(scale);
  }
}

describe('a chain', () => {
  const own = { ratio: 1.5, offset: 0.1, slack: 0.04, stiffness: 5000, onset: 0.004 };

  it('hangs loose within its slack, pulls beyond it, and with its ratio on the driver', () => {
    const home = 1.5 * 0.4 + 0.1;
    const forces = (follower: number) => frame('chain', own, [0.4, follower]).forces;
    for (const off of [-0.0199, 0, 0.0199]) expect(Math.abs(forces(home + off)[1].value)).toBe(0);
    // Taut, the spring counts from half the onset beyond the slack.
    expect(forces(home + 0.05)[1].value).toBeCloseTo(-5000 * (0.03 - 0.002), 9);
    expect(forces(home - 0.05)[1].value).toBeCloseTo(5000 * (0.03 - 0.002), 9);
    expect(forces(home + 0.05)[0].value).toBeCloseTo(1.5 * 5000 * (0.03 - 0.002), 9);
  });

  it('has a potential', () => {
    const random = seeded(3);
    isPotential(
      'chain',
      own,
      Array.from({ length: 200 }, () => {
        const driver = random();
        return [driver, 1.5 * driver + 0.1 + 0.1 * (random() - 0.5)] as const;
      }),
    );
  });

  it('a jumped tooth puts the follower a tooth ahead', () => {
    const lead = (jumped: number) =>
      components.chain.readings!.lead.value(frame('chain', { jumped, teeth: 20 }, [0.3, 0.3]));
    expect(lead(1)).toBeCloseTo(-(2 * Math.PI) / 20, 12);
    expect(lead(-2)).toBeCloseTo((4 * Math.PI) / 20, 12);
    expect(lead(0)).toBe(0);
  });

  it('takes its follower along, behind by half the slack and its stretch', () => {
    // The driver is turned by 100 N m, slowly; the follower rubs with 10 N m.
    const r = run(
      'chain',
      ['driver', 'follower'],
      { ratio: 0.8, slack: 0.05, stiffness: 2000 },
      [{ inertia: flat(5), moment: flat(100), damping: 400 }, { friction: 10 }],
      8,
    );
    expect(last(r, 'driver.angle')).toBeCloseTo(1, 9);
    // At rest the strand holds no more than the follower's friction.
    const behind = 0.8 - last(r, 'follower.angle');
    expect(behind).toBeGreaterThan(0.025);
    expect(behind).toBeLessThan(0.025 + 10 / 2000 + 0.002);
    expect(words(r)).toEqual(['taut']);
    const { energy } = r.account();
    expect(Math.abs(energy.gap)).toBeLessThan(1e-4 * energy.weight);
  });

  it('clacks through its slack when the load turns over, and says so once', () => {
    // The follower's weight pulls it back until half way, then on ahead of the driver.
    const weight = { x: [0, 0.25, 0.5, 0.75, 1], y: [-40, -20, 0, 20, 40] };
    const r = run('chain', ['driver', 'follower'], { slack: 0.06, damping: 60 }, [
      { inertia: flat(20), moment: flat(80), damping: 120 },
      { moment: weight },
    ]);
    expect(words(r).slice(0, 1)).toEqual(['taut']);
    expect(words(r).filter((w) => w === 'slack').length).toBeGreaterThan(0);
    expect(words(r).length).toBeLessThan(12);
    expect(last(r, 'follower.angle')).toBeCloseTo(1, 9);
  });

  it('without slack is a stiff link: two inertias turn as one', () => {
    const r = run(
      'chain',
      ['driver', 'follower'],
      { ratio: 1, slack: 0, stiffness: 1e5, onset: 1e-4, damping: 200 },
      [{ inertia: flat(3), moment: flat(2) }, { inertia: flat(1) }],
      1.9,
    );
    // 2 N m on 4 kg m2 for 1.9 s.
    expect(last(r, 'driver.angle')).toBeCloseTo(0.5 * 0.5 * 1.9 ** 2, 3);
    expect(last(r, 'follower.angle')).toBeCloseTo(last(r, 'driver.angle'), 3);
    expect(words(r)).toEqual([]);
  });
});

describe('two doors that meet', () => {
  const LAP = 0.15;
  const lap: Parameters = { lap: LAP, ratio: 1.2 };
  const closing = { moment: flat(-30), damping: 20 };

  it('do not feel each other in the right order, nor when one is clear of the other', () => {
    for (const at of [
      [0, 0],
      [0, 1],
      [0.1, 0.13],
      [0.16, 0],
      [1, 0],
      [1, 1],
    ] as const)
      expect(frame('door-lap', lap, at).forces.map((f) => f.value)).toEqual([0, 0]);
  });

  it('press along the nearer way out, by a potential', () => {
    const random = seeded(5);
    isPotential(
      'door-lap',
      lap,
      Array.from({ length: 300 }, () => [0.2 * random(), 0.2 * random()] as const),
    );
    const [under, over] = frame('door-lap', lap, [LAP - 0.006, 0]).forces;
    expect(under.value).toBeGreaterThan(20 * Math.abs(over.value));
    const resting = frame('door-lap', lap, [0.02, 0.02 * 1.2 - 0.004]).forces;
    // One lies on the other: moments as their angles per angle.
    expect(resting[1].value).toBeGreaterThan(0);
    expect(resting[0].value / resting[1].value).toBeCloseTo(-1.2, 1);
  });

  it('close one after the other: no clash', () => {
    const r = run('door-lap', ['under', 'over'], lap, [
      { ...closing, initial: 0.5 },
      { ...closing, initial: 1, damping: 60 },
    ]);
    expect(last(r, 'under.angle')).toBe(0);
    expect(last(r, 'over.angle')).toBe(0);
    expect(words(r)).toEqual(['overlapped']);
  });

  it('clash when the over door is first: the under door is stopped at the lap', () => {
    const r = run('door-lap', ['under', 'over'], lap, [
      { ...closing, initial: 1 },
      { ...closing, initial: 0.2 },
    ]);
    expect(words(r)).toEqual(['clashed']);
    expect(last(r, 'over.angle')).toBe(0);
    // 30 N m on an edge of 50 kN m/rad that begins smoothly over 4 mrad.
    const depth = Math.sqrt((2 * 0.004 * 30) / 50_000);
    expect(LAP - last(r, 'under.angle')).toBeCloseTo(depth, 4);
    const { energy } = r.account();
    expect(Math.abs(energy.gap)).toBeLessThan(1e-4 * energy.weight);
  });

  it('open with the under door pushing the over door before it, until past the lap', () => {
    const r = run('door-lap', ['under', 'over'], lap, [
      { moment: flat(60), damping: 20 },
      { moment: flat(-5), damping: 20 },
    ]);
    expect(r.log.find((e) => e.device === 'pair')!.to).toBe('overlapped');
    expect(words(r)).toEqual(['clear']);
    expect(Math.max(...r.series('over.angle')!.v)).toBeGreaterThan(1.2 * LAP - 0.01);
    expect(last(r, 'under.angle')).toBeCloseTo(1, 9);
    expect(last(r, 'over.angle')).toBe(0);
  });

  it('do not let a strong jack past: the edges hold 1000 N m', () => {
    const r = run('door-lap', ['under', 'over'], lap, [
      { moment: flat(-1000), damping: 800, initial: 0.6 },
      { moment: flat(-200), initial: 0 },
    ]);
    expect(last(r, 'under.angle')).toBeGreaterThan(0.5 * LAP);
    expect(words(r)).toEqual(['clashed']);
  });
});
