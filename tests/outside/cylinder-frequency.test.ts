/**
 * Natural frequency of a double-acting cylinder.
 *
 * Source: worked example of a motion-controller maker (forum.deltamotion.com, topic 1042): bore
 * 4 in, rod 2.5 in, stroke 12 in, 1000 lb, 180 000 psi, mid stroke, no dead volume: 77.03 Hz, from
 * f = sqrt(B/M (Aa^2/Va + Ab^2/Vb)) / 2 pi. The softest position, x/(L - x) = sqrt(Aa/Ab), is
 * recomputed from that formula: 6.739 in, 76.45 Hz.
 */
import { eigs, type Complex } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { contentAt } from '../../packages/core/src/medium/content.js';
import { placeOf } from '../../packages/core/src/solver/index.js';
import { Network } from '../../packages/core/src/network/index.js';
import { coordinate, device, flat, rig, type RigPart } from '../support/rig.js';
import { probe } from '../support/probe.js';

const INCH = 0.0254;
const PSI = 6894.757;
const MASS = 1000 * 0.45359237;
const MODULUS = 180_000 * PSI;
const STROKE = 12 * INCH;
const HEAD = (Math.PI / 4) * (4 * INCH) ** 2;
const ROD = HEAD - (Math.PI / 4) * (2.5 * INCH) ** 2;
/**
 * Both chambers stand under this pressure, which a constant load balances. Low, because the
 * engine's modulus is a secant one (its tangent falls by the pressure itself), and yet well above
 * ambient, where the least air the engine knows (1e-6) would soften it: 0.03 and 0.01 % here.
 */
const PRESSURE = 100 * PSI;
const AMBIENT = 101_325;

/** Nothing but two chambers and a piston: no friction, no leak, no dead volume. */
const ram = device('ram', {
  ports: { head: { title: 'head', volume: 0 }, rod: { title: 'rod', volume: ROD * STROKE } },
  links: { piston: { title: 'piston', shape: 'travel' } },
  chambers: [
    { port: 'head', link: 'piston', area: () => HEAD },
    { port: 'rod', link: 'piston', area: () => -ROD },
  ],
  forces: { push: { link: 'piston', also: ['head', 'rod'] } },
  equations: (d) => {
    d.force(0, (d.pressure(0) - AMBIENT) * HEAD - (d.pressure(1) - AMBIENT) * ROD);
    d.forceAlso(0, 0, HEAD);
    d.forceAlso(0, 1, -ROD);
  },
});

/** One radian of the coordinate is a metre of travel, its inertia the mass. */
function cylinder(part: Omit<RigPart, 'links'>, duration = 0.2) {
  return rig({
    parts: {
      jack: {
        ...part,
        links: {
          [part.is === ram ? 'piston' : 'rod']: {
            to: 'load',
            travel: { x: [0, STROKE], y: [0, STROKE] },
          },
        },
      },
    },
    coordinates: {
      load: coordinate({
        high: STROKE,
        inertia: flat(MASS),
        moment: flat(-(PRESSURE - AMBIENT) * (HEAD - ROD)),
        initial: STROKE / 2,
      }),
    },
    oil: { bulkModulus: MODULUS },
    duration,
  });
}

const bare = { is: ram, ports: { head: 'a', rod: 'b' } };
/** The catalogue's actuator, its cushions by-passed as its own notes say, without friction. */
const real = {
  is: 'double-acting-actuator',
  ports: { head: 'a', headChamber: 'a', rod: 'b', rodChamber: 'b' },
  parameters: {
    bore: 4 * INCH,
    rodDiameter: 2.5 * INCH,
    stroke: STROKE,
    seals: 0,
    pressureFriction: 0,
    drag: 0,
    bypass: 1e-15,
    deadVolume: 2e-5,
  },
};

/** Fills both chambers to PRESSURE with the piston at `x`, then pushes the piston `off` further. */
const fill =
  (x: number, off: number) =>
  (network: Network, y: Float64Array): void => {
    const { contentState, angleState } = network.wiring;
    y[angleState[0]] = x;
    network.refresh();
    network.derivatives(0, y, new Float64Array(network.size));
    for (const name of ['a', 'b']) {
      const i = network.plan.nodeOf.get(name)!;
      y[contentState[i]] = contentAt(
        network.law,
        network.plan.nodes[i],
        network.volumeOf(i),
        PRESSURE,
      );
    }
    y[angleState[0]] = x + off;
  };

/** Frequency of the published formula, Hz, with what each chamber has besides the swept volume. */
const published = (x: number, deadHead = 0, deadRod = 0): number =>
  Math.sqrt(
    (MODULUS / MASS) *
      (HEAD ** 2 / (HEAD * x + deadHead) + ROD ** 2 / (ROD * (STROKE - x) + deadRod)),
  ) /
  (2 * Math.PI);

/** Rings the piston and takes the frequency from its turning points. */
function rung(part: Omit<RigPart, 'links'>, x: number): number {
  const made = cylinder(part);
  const { machine } = probe(made.scenario, {
    with: made.with,
    tolerance: 1e-8,
    start: fill(x, 5e-6),
  });
  const turns = machine.log.entries.filter((e) => e.device === 'load' && e.t > 0).map((e) => e.t);
  return (turns.length - 1) / (2 * (turns.at(-1)! - turns[0]));
}

/** The network's Jacobian with the piston free at `x`. */
function jacobian(x: number): { matrix: number[][]; network: Network } {
  const made = cylinder(bare);
  const network = new Network(made.scenario, made.with);
  const y = network.initial();
  fill(x, 0)(network, y);
  network.workspace.direction[0] = 1;
  network.refresh();
  const values = new Float64Array(network.pattern.column.length);
  network.jacobian(0, y, new Float64Array(network.size), values);
  const matrix = Array.from({ length: network.size }, (_, i) =>
    Array.from({ length: network.size }, (__, j) => {
      const place = placeOf(network.pattern, i, j);
      return place < 0 ? 0 : (values[place] * network.scale[j]) / network.scale[i];
    }),
  );
  return { matrix, network };
}

describe('cylinder of the worked example, 4 x 2.5 x 12 in, 1000 lb, 180 000 psi', () => {
  it('rings at 77.03 Hz at mid stroke', () => {
    expect(Math.abs(rung(bare, STROKE / 2) / 77.03 - 1)).toBeLessThan(1e-3);
  });

  it('has that frequency among the eigenvalues of its Jacobian, undamped', () => {
    const { matrix } = jacobian(STROKE / 2);
    const { values } = eigs(matrix, { eigenvectors: false });
    const all = (values as (number | Complex)[]).map((v) =>
      typeof v === 'number' ? { re: v, im: 0 } : v,
    );
    const fastest = all.reduce((a, b) => (Math.abs(b.im) > Math.abs(a.im) ? b : a));
    expect(Math.abs(Math.abs(fastest.im) / (2 * Math.PI) / 77.03 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(fastest.re / fastest.im)).toBeLessThan(1e-9);
    expect(all.filter((v) => Math.abs(v.im) > 1)).toHaveLength(2);
  });

  it('is softest 6.739 in from the blind end, at 76.45 Hz', () => {
    const frequency = (x: number): number => {
      const { matrix, network } = jacobian(x);
      const { angleState, speedState } = network.wiring;
      const slope =
        matrix[speedState[0]][angleState[0]] *
        (network.scale[speedState[0]] / network.scale[angleState[0]]);
      return Math.sqrt(-slope) / (2 * Math.PI);
    };
    let [low, high] = [5 * INCH, 8 * INCH];
    for (let k = 0; k < 60; k++) {
      const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
      if (frequency(a) < frequency(b)) high = b;
      else low = a;
    }
    expect(Math.abs(low / INCH - 6.739)).toBeLessThan(0.01);
    expect(Math.abs(frequency(low) / 76.45 - 1)).toBeLessThan(1e-3);
  });

  it('the formula itself gives the published figures', () => {
    expect(Math.abs(published(STROKE / 2) / 77.033 - 1)).toBeLessThan(1e-4);
    expect(Math.abs(published(6.739 * INCH) / 76.45 - 1)).toBeLessThan(1e-4);
  });

  it.each([2, 6, 10])(
    'the catalogue’s actuator follows the formula at %d in, its dead volume counted',
    (inches) => {
      const x = inches * INCH;
      // Ports of 2 cm3 beside the dead volume of 20 cm3.
      expect(Math.abs(rung(real, x) / published(x, 2.2e-5, 2.2e-5) - 1)).toBeLessThan(1.5e-3);
    },
  );
});
