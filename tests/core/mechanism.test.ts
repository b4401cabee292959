import { describe, expect, it } from 'vitest';
import { mechanisms } from '../../packages/core/src/mechanism/index.js';
import type {
  Parameters,
  ParameterValue,
  Point3,
  Shape,
} from '../../packages/core/src/define/index.js';

const DEG = Math.PI / 180;
/** Standard gravity, ISO 80000-3. */
const G = 9.80665;

function filled(kind: string, given: Record<string, ParameterValue>): Parameters {
  const all: Record<string, ParameterValue> = {};
  for (const [name, d] of Object.entries(mechanisms[kind].parameters))
    if (d.default !== undefined) all[name] = d.default;
  return { ...all, ...given };
}

const plain = filled('leg', {
  travel: 90 * DEG,
  retract: 'aft',
  mass: 100,
  cog: 0.8,
  inertia: 80,
  length: 1.1,
  tyreRadius: 0.3,
  tyreWidth: 0.2,
});

/** Shortening by a smooth link, 0.15 m over a quarter turn, and its closed-form slope. */
const S = 0.15;
const shortening = (q: number): number => (S / 2) * (1 - Math.cos(2 * q));
const table: Shape = (() => {
  const x = Array.from({ length: 181 }, (_, i) => (i * 90 * DEG) / 180);
  return { x, y: x.map(shortening) };
})();

const full = filled('leg', {
  ...plain,
  rake: -6 * DEG,
  slidingMass: 60,
  shortening: table,
  gasPressure: 1.5e6,
  gasArea: 2e-3,
  gasVolume: 6e-4,
  gasIndex: 1.1,
  twist: 92 * DEG,
  spinInertia: 3,
  wheelOffset: 0.1,
  assistMoment: 120,
  assistRate: 40,
  pitch: 3 * DEG,
  pivotRight: -1.5,
});

const at = (s: Shape, i: number): number => s.y[i];
const dist = (a: Point3, b: Point3): number => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

describe('a plain leg', () => {
  it('weighs as a rigid pendulum: M = -m g r sin(angle from plumb), engineering mechanics textbooks', () => {
    const m = mechanisms.leg.coordinate(plain).moment;
    m.x.forEach((q, i) => expect(at(m, i)).toBeCloseTo(-100 * G * 0.8 * Math.sin(q), 8));
  });

  it('takes the pitch on the jacks as so much lean: aft retraction sees angle - pitch', () => {
    // Nose up carries the retracted end of an aft leg lower, so the leg is nearer to plumb.
    const m = mechanisms.leg.coordinate({ ...plain, pitch: 7 * DEG }).moment;
    m.x.forEach((q, i) => expect(at(m, i)).toBeCloseTo(-100 * G * 0.8 * Math.sin(q - 7 * DEG), 8));
  });

  it('retracting inboard feels only cos(pitch) of its weight', () => {
    const m = mechanisms.leg.coordinate({ ...plain, retract: 'inboard', pitch: 10 * DEG }).moment;
    m.x.forEach((q, i) =>
      expect(at(m, i)).toBeCloseTo(-100 * G * 0.8 * Math.cos(10 * DEG) * Math.sin(q), 8),
    );
  });

  it('has the inertia it is given', () => {
    for (const y of mechanisms.leg.coordinate(plain).inertia.y) expect(y).toBeCloseTo(80, 9);
  });

  it('feels wind on the leg towards aft, most when down and none when trailing', () => {
    const wind = mechanisms.leg.coordinate({ ...plain, dragArea: 0.2, dragArm: 0.9 }).airload?.(0);
    expect(wind?.y[0]).toBeCloseTo(0.2 * 0.9, 9);
    expect(wind?.y.at(-1)).toBeCloseTo(0, 9);
  });
});

describe('a leg that turns and shortens', () => {
  const c = mechanisms.leg.coordinate(full);
  const place = mechanisms.leg.outline(full).at;

  /** Potential energy from where the parts are (outline) and the gas' work by Simpson's rule: no derivative of the model used. */
  const energy = (q: number): number => {
    const d = { x: Math.sin(3 * DEG), z: -Math.cos(3 * DEG) };
    const height = (p: Point3): number => -(p.x * d.x + p.z * d.z);
    const placed = place(q);
    const [pivot, foot, wheel] = placed.line;
    const reach = dist(pivot, foot);
    const along = {
      x: (foot.x - pivot.x) / reach,
      y: (foot.y - pivot.y) / reach,
      z: (foot.z - pivot.z) / reach,
    };
    // First moment of the whole leg as if extended, then the sliding mass moved from the extended foot to the wheel.
    const e =
      height(along) * 100 * 0.8 * G +
      60 * G * (height(wheel) - height(pivot) - 1.1 * height(along));
    const force = (s: number): number =>
      2e-3 * ((1.5e6 + 101325) * (6e-4 / (6e-4 - 2e-3 * s)) ** 1.1 - 101325);
    const s = 1.1 - reach;
    const n = 200;
    let work = 0;
    for (let i = 0; i < n; i++) {
      const a = (s * i) / n;
      const b = (s * (i + 1)) / n;
      work += ((b - a) / 6) * (force(a) + 4 * force((a + b) / 2) + force(b));
    }
    return e + work + 120 * q + 20 * q * q;
  };

  it('keeps energy: the moment is minus the slope of its potential energy (virtual work)', () => {
    const h = 1e-4;
    c.moment.x.forEach((q, i) => {
      if (i === 0 || i === c.moment.x.length - 1) return;
      expect(at(c.moment, i)).toBeCloseTo(-(energy(q + h) - energy(q - h)) / (2 * h), 2);
    });
  });

  it('has the inertia of its moving parts: I = I0 - m L^2 + m |dw/dq|^2 + J (dturn/dq)^2', () => {
    const h = 1e-4;
    c.inertia.x.forEach((q, i) => {
      if (i === 0 || i === c.inertia.x.length - 1) return;
      const a = place(q - h).line[2];
      const b = place(q + h).line[2];
      const w = dist(a, b) / (2 * h);
      expect(at(c.inertia, i)).toBeCloseTo(80 - 60 * 1.1 ** 2 + 60 * w * w + 3 * (92 / 90) ** 2, 3);
    });
  });

  it('is heavier to raise late, with more gas in the strut', () => {
    const more = mechanisms.leg.coordinate({ ...full, gasPressure: 3e6 }).moment;
    expect(at(more, 120)).toBeLessThan(at(c.moment, 120));
    // No shortening at down: the curve's end slope is zero to 1e-6 m/rad, times 3 kN.
    expect(at(more, 0)).toBeCloseTo(at(c.moment, 0), 2);
  });

  it('moves its wheel without a jump, axle square to the leg all the way', () => {
    let last = place(0);
    for (let i = 1; i <= 900; i++) {
      const now = place((i * 90 * DEG) / 900);
      expect(dist(now.tyre!.centre, last.tyre!.centre)).toBeLessThan(0.004);
      const [pivot, foot] = now.line;
      const a = now.tyre!.axle;
      expect(Math.hypot(a.x, a.y, a.z)).toBeCloseTo(1, 12);
      expect(
        a.x * (foot.x - pivot.x) + a.y * (foot.y - pivot.y) + a.z * (foot.z - pivot.z),
      ).toBeCloseTo(0, 12);
      last = now;
    }
  });

  it.each(['aft', 'forward', 'inboard', 'outboard'])('mirrors left and right (%s)', (retract) => {
    const left = mechanisms.leg.outline({ ...full, retract, pivotRight: -1.5 }).at;
    const right = mechanisms.leg.outline({ ...full, retract, pivotRight: 1.5 }).at;
    for (const q of [0, 0.5, 1.2]) {
      const l = left(q).tyre!;
      const r = right(q).tyre!;
      expect(
        [l.centre.x, -l.centre.y, l.centre.z, l.axle.x, -l.axle.y, l.axle.z].map((v) =>
          v.toFixed(12),
        ),
      ).toEqual(
        [r.centre.x, r.centre.y, r.centre.z, r.axle.x, r.axle.y, r.axle.z].map((v) =>
          v.toFixed(12),
        ),
      );
    }
    const a = mechanisms.leg.coordinate({ ...full, retract, pivotRight: -1.5 });
    const b = mechanisms.leg.coordinate({ ...full, retract, pivotRight: 1.5 });
    b.moment.y.forEach((y, i) => expect(at(a.moment, i)).toBeCloseTo(y, 8));
  });

  it('lies flat in the well after a quarter turn', () => {
    const up = mechanisms.leg.outline({ ...full, rake: 0, twist: 90 * DEG }).at(90 * DEG).tyre!;
    expect(Math.abs(up.axle.z)).toBeCloseTo(1, 12);
  });
});

describe('a door', () => {
  const p = filled('door', {
    travel: 90 * DEG,
    mass: 10,
    cog: 0.4,
    inertia: 2.2,
    chord: 0.8,
    span: 0.9,
    slope: 4 * DEG,
    sealMoment: 60,
    sealAngle: 5 * DEG,
    hingeRight: 1.9,
  });
  const m = mechanisms.door.coordinate(p).moment;

  it('falls open by its weight: M = m g c cos(angle below level), engineering mechanics textbooks', () => {
    m.x.forEach((q, i) => {
      if (q > 5 * DEG) expect(at(m, i)).toBeCloseTo(10 * G * 0.4 * Math.cos(q - 4 * DEG), 8);
    });
  });

  it('keeps energy with its seal: work from closed = weight lowered + the seal’s store', () => {
    let work = 0;
    for (let i = 1; i < m.x.length; i++)
      work += ((m.y[i] + m.y[i - 1]) / 2) * (m.x[i] - m.x[i - 1]);
    // Trapezoid over half a degree on the seal's cubic: a few 0.01 J.
    expect(work).toBeCloseTo(
      10 * G * 0.4 * (Math.sin(86 * DEG) + Math.sin(4 * DEG)) + (60 * 5 * DEG) / 4,
      1,
    );
    const edge = mechanisms.door.outline(p).at;
    expect(edge(0).edge![0].z - edge(90 * DEG).edge![0].z).toBeCloseTo(
      0.8 * (Math.sin(86 * DEG) + Math.sin(4 * DEG)),
      12,
    );
  });

  it('feels its seal only near closed, without a kink', () => {
    const bare = mechanisms.door.coordinate({ ...p, sealMoment: 0 }).moment;
    const seal = m.y.map((y, i) => y - bare.y[i]);
    expect(seal[0]).toBeCloseTo(60, 9);
    const second = seal.map((y, i) =>
      i === 0 || i === 180 ? 0 : seal[i - 1] - 2 * y + seal[i + 1],
    );
    second.forEach((s, i) => {
      if (i > 1 && i < 180) expect(Math.abs(s - second[i - 1])).toBeLessThan(0.4);
    });
    expect(seal.slice(11).every((y) => Math.abs(y) < 1e-9)).toBe(true);
  });

  it('hangs straight down when open and reaches inboard when closed', () => {
    const flat = mechanisms.door.outline({ ...p, slope: 0 }).at;
    expect(flat(0).edge![0].y).toBeCloseTo(1.1, 12);
    expect(flat(90 * DEG).edge![0].z).toBeCloseTo(-0.8, 12);
  });
});

describe('a leg with something wrong', () => {
  const place = (own: Record<string, ParameterValue>, q: number) =>
    mechanisms.leg.outline({ ...full, ...own }).at(q);
  /** Pivot to axle, less the wheel's offset. */
  const reach = (own: Record<string, ParameterValue>, q: number): number => {
    const [pivot, foot] = place(own, q).line;
    return dist(pivot, foot);
  };
  const moments = (own: Record<string, ParameterValue>): Shape =>
    mechanisms.leg.coordinate({ ...full, ...own }).moment;

  it('rubs more at a tight spot and nowhere else', () => {
    const tight = { friction: 12, bumpMoment: 80, bumpAngle: 30 * DEG, bumpWidth: 5 * DEG };
    expect(mechanisms.leg.coordinate({ ...full, friction: 12 }).friction).toBe(12);
    const friction = mechanisms.leg.coordinate({ ...full, ...tight }).friction as Shape;
    friction.x.forEach((q, i) => {
      if (Math.abs(q - 30 * DEG) > 5 * DEG) expect(at(friction, i)).toBe(12);
    });
    expect(at(friction, 60)).toBeCloseTo(92, 9);
    // Half of it half way to its end.
    expect(at(friction, 65)).toBeCloseTo(52, 9);
  });

  it('goes up too long with its shortening link broken, and late it is easier to raise, not harder', () => {
    expect(reach({}, 80 * DEG)).toBeCloseTo(1.1 - shortening(80 * DEG), 6);
    expect(reach({ linkShare: 0 }, 80 * DEG)).toBeCloseTo(1.1, 12);
    expect(reach({ linkShare: 0.5 }, 80 * DEG)).toBeCloseTo(1.1 - shortening(80 * DEG) / 2, 6);
    const gas = { gasPressure: 6e6 };
    expect(at(moments({ ...gas, linkShare: 0 }), 130)).toBeGreaterThan(at(moments(gas), 130));
  });

  it('hangs short with its strut stuck, until the link shortens it further', () => {
    // Rounded within 2 mm: at down by r^2 / 4s = 0.03 mm, and so late.
    expect(reach({ stuckShort: 0.03 }, 0)).toBeCloseTo(1.07, 4);
    expect(reach({ stuckShort: 0.03 }, 85 * DEG)).toBeCloseTo(1.1 - shortening(85 * DEG), 4);
    expect(reach({ stuckShort: 0.2 }, 85 * DEG)).toBeCloseTo(0.9, 4);
  });

  it('keeps energy with a stuck strut: the gas works only where the strut moves', () => {
    const own = { stuckShort: 0.04, linkShare: 0.9 };
    const bare = moments({ ...own, gasArea: 0 });
    const h = 1e-5;
    moments(own).x.forEach((q, i) => {
      if (i % 20 !== 10) return;
      const s = 1.1 - reach(own, q);
      const slope = (reach(own, q - h) - reach(own, q + h)) / (2 * h);
      const force = 2e-3 * ((1.5e6 + 101325) * (6e-4 / (6e-4 - 2e-3 * s)) ** 1.1 - 101325);
      expect(at(moments(own), i) - at(bare, i)).toBeCloseTo(-force * slope, 3);
    });
  });

  it('turns its wheel about the leg’s own axis when out of line, which changes no load on a centred wheel', () => {
    for (const q of [0, 0.7, 1.5]) {
      const straight = place({}, q).tyre!.axle;
      const turned = place({ misaligned: 20 * DEG }, q).tyre!.axle;
      const cos = straight.x * turned.x + straight.y * turned.y + straight.z * turned.z;
      expect(cos).toBeCloseTo(Math.cos(20 * DEG), 12);
    }
    const centred = { wheelOffset: 0, misaligned: 20 * DEG };
    expect(moments(centred).y).toEqual(moments({ wheelOffset: 0 }).y);
  });

  it('is refused when its strut cannot hang that short', () => {
    const refused = mechanisms.leg.check!({ ...full, stuckShort: 0.4 });
    expect(refused.map((f) => f.parameter)).toContain('gasVolume');
  });
});

describe('a door that is worn', () => {
  const p = filled('door', {
    travel: 90 * DEG,
    mass: 10,
    cog: 0.4,
    inertia: 2.2,
    chord: 0.8,
    span: 0.9,
  });

  it('swings beyond its travel with its restraint out', () => {
    expect(mechanisms.door.coordinate(p).high).toBe(90 * DEG);
    expect(mechanisms.door.coordinate({ ...p, overTravel: 25 * DEG }).high).toBeCloseTo(
      115 * DEG,
      12,
    );
  });

  it('hangs low by its hinge play, all over', () => {
    const tight = mechanisms.door.outline(p).at(1);
    const loose = mechanisms.door.outline({ ...p, hingePlay: 0.006 }).at(1);
    [...tight.line, ...tight.edge!].forEach((point, i) => {
      const low = [...loose.line, ...loose.edge!][i];
      expect(point.z - low.z).toBeCloseTo(0.006, 12);
      expect([low.x, low.y]).toEqual([point.x, point.y]);
    });
  });
});
