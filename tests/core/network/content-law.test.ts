import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  contentAt,
  enthalpyAt,
  nodeEnergy,
  pressureAt,
  type ContentLaw,
  type NodeLaw,
} from '../../../packages/core/src/medium/content.js';
import { Network } from '../../../packages/core/src/network/index.js';
import { catalogues } from '../../../packages/core/src/index.js';
import { gearUnits } from '../../support/gear-units.js';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const law: fc.Arbitrary<ContentLaw> = fc.record({
  bulkModulus: real(1e9, 2.5e9),
  ambient: real(2e4, 1.1e5),
  vapour: real(10, 1000),
  freeAir: real(1e-6, 0.05),
});
const volume = real(1e-6, 1e-2);
/** Walls that give up to a tenth of the volume at 200 bar, pockets up to a fifth of it. */
const node = (v: number): fc.Arbitrary<NodeLaw> =>
  fc.record({ compliance: real(0, (0.1 * v) / 2e7), pocket: real(0, 0.2 * v) });
const place = volume.chain((v) => fc.record({ law, node: node(v), volume: fc.constant(v) }));

describe('content law', () => {
  it('pressure and content are each other’s inverse, from deep void to 400 bar', () => {
    fc.assert(
      fc.property(place, real(0.02, 1), ({ law: l, node: k, volume: v }, share) => {
        // Even in the logarithm of the height above the vapour pressure.
        const p = l.vapour + 10 ** (1 + share * 6.6);
        const n = contentAt(l, k, v, p);
        fc.pre(n > 0);
        // Content keeps its last digits: next to the oil's compressibility that is some Pa.
        const slack = 4e-15 * l.bulkModulus + 1e-9 * p;
        expect(Math.abs(pressureAt(l, k, v, n) - p)).toBeLessThan(slack * 10);
      }),
      { seed: 3, numRuns: 1000 },
    );
  });

  it('pressure stays above the vapour pressure however little oil is left, and rises with content', () => {
    fc.assert(
      fc.property(
        place,
        real(1e-6, 1.03),
        real(1e-4, 0.1),
        ({ law: l, node: k, volume: v }, share, more) => {
          const low = pressureAt(l, k, v, share * v);
          expect(low).toBeGreaterThan(l.vapour);
          expect(pressureAt(l, k, v, share * v * (1 + more))).toBeGreaterThan(low);
          expect(pressureAt(l, k, v * (1 + more), share * v)).toBeLessThan(low);
        },
      ),
      { seed: 4, numRuns: 500 },
    );
  });

  it('a node at ambient pressure holds its volume, less its pocket', () => {
    fc.assert(
      fc.property(place, ({ law: l, node: k, volume: v }) => {
        const n = contentAt(l, k, v, l.ambient);
        expect(Math.abs(n * (1 + l.freeAir) + k.pocket - v)).toBeLessThan(1e-12 * v);
      }),
      { seed: 5 },
    );
  });

  it('stored energy changes by enthalpy brought in less work given to the walls of the chamber', () => {
    fc.assert(
      fc.property(place, real(0.1, 1), ({ law: l, node: k, volume: v }, share) => {
        const p = l.vapour + 10 ** (3 + share * 4.4);
        const n = contentAt(l, k, v, p);
        fc.pre(n > 0.2 * v);
        const energy = (nn: number, vv: number): number =>
          nodeEnergy(l, k, vv, nn, pressureAt(l, k, vv, nn));
        // Steps that change the pressure by some thousandths of itself.
        const dn = Math.abs(contentAt(l, k, v, p * 1.003) - n);
        const byContent = (energy(n + dn, v) - energy(n - dn, v)) / (2 * dn);
        const byVolume = (energy(n, v + dn) - energy(n, v - dn)) / (2 * dn);
        const size = Math.abs(enthalpyAt(l, p)) + l.ambient;
        expect(Math.abs(byContent - enthalpyAt(l, p)) / size).toBeLessThan(2e-3);
        expect(Math.abs(byVolume + p) / p).toBeLessThan(2e-3);
      }),
      { seed: 6, numRuns: 500 },
    );
  });

  it('oil brought through a void and back comes to the same pressure: nothing is lost', () => {
    const l: ContentLaw = { bulkModulus: 1.8e9, ambient: 101_325, vapour: 100, freeAir: 0.005 };
    const k: NodeLaw = { compliance: 0, pocket: 0 };
    const n = contentAt(l, k, 1e-4, 1e7);
    const stretched = pressureAt(l, k, 1.2e-4, n);
    expect(stretched).toBeLessThan(0.05 * l.ambient);
    expect(Math.abs(pressureAt(l, k, 1e-4, n) / 1e7 - 1)).toBeLessThan(1e-12);
  });
});

describe('the network’s own form of the law', () => {
  it('agrees with it at every node, with its partial derivatives', () => {
    const network = new Network(gearUnits({ units: 2 }), catalogues);
    const rate = new Float64Array(network.size);
    const values = new Float64Array(network.pattern.column.length);
    const y = network.initial();
    const { contentState } = network.wiring;
    for (const share of [0.9, 0.995, 1, 1.002, 1.008]) {
      const z = y.slice();
      contentState.forEach(
        (s, i) => (z[s] *= network.plan.nodes[i].vented === undefined ? share : 1),
      );
      network.refresh();
      network.jacobian(0, z, rate, values);
      network.plan.nodes.forEach((n, i) => {
        if (n.vented !== undefined) return;
        const v = network.volumeOf(i);
        const content = z[contentState[i]];
        const w = network.workspace;
        const at = (nn: number, vv: number): number => pressureAt(network.law, n, vv, nn);
        const h = content * 1e-7;
        expect(Math.abs(w.pressure[i] / at(content, v) - 1)).toBeLessThan(1e-11);
        expect(
          Math.abs((w.byContent[i] * 2 * h) / (at(content + h, v) - at(content - h, v)) - 1),
        ).toBeLessThan(1e-3);
        expect(
          Math.abs((w.byVolume[i] * 2 * h) / (at(content, v + h) - at(content, v - h)) - 1),
        ).toBeLessThan(1e-3);
      });
    }
  });

  it('starts with every oil node at ambient pressure, and reservoirs at their head', () => {
    const network = new Network(gearUnits({ units: 1 }), catalogues);
    network.derivatives(0, network.initial(), new Float64Array(network.size));
    network.plan.nodes.forEach((n, i) => {
      const expected = n.vented ?? network.around.ambient;
      expect(Math.abs(network.workspace.pressure[i] - expected)).toBeLessThan(1e-4);
    });
  });
});
