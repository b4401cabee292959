/** Where the parts of a layer stand across it: as near to their neighbours as those beside them allow. */
import type { Flat, Port, Turned } from './part.js';

const ROUNDS = 12;

/** Places of the parts' middles, by name. `across` is what a part covers from its middle, `free` the room between two. */
export function spread(
  layers: readonly (readonly Turned[])[],
  across: (b: Turned) => Flat,
  portAt: (p: Port) => number,
  free: number,
): Map<string, number> {
  const at = new Map<string, number>();
  for (const layer of layers) {
    let edge = 0;
    for (const b of layer) {
      at.set(b.part.name, edge - across(b)[0]);
      edge += across(b)[1] - across(b)[0] + free;
    }
    for (const b of layer) at.set(b.part.name, (at.get(b.part.name) ?? 0) - edge / 2);
  }
  const ports = layers.flat().flatMap((b) => b.ports.map((p) => ({ b, p })));
  const wanted = (b: Turned, layer: readonly Turned[]): number => {
    const pulls = b.ports.flatMap((p) =>
      ports
        .filter((o) => o.p.node === p.node && !layer.includes(o.b))
        .map((o) => (at.get(o.b.part.name) ?? 0) + portAt(o.p) - portAt(p)),
    );
    if (pulls.length === 0) return at.get(b.part.name) ?? 0;
    return pulls.reduce((s, v) => s + v, 0) / pulls.length;
  };
  for (let round = 0; round < ROUNDS; round++) {
    const down = round % 2 === 0;
    for (let k = 0; k < layers.length; k++) {
      const layer = layers[down ? k : layers.length - 1 - k];
      if (layer === undefined) continue;
      // Distance of each from the first when all stand side by side: what is left is a rising series.
      const offset: number[] = [];
      layer.forEach((b, i) => {
        const former = layer[i - 1];
        const gap = former === undefined ? 0 : across(former)[1] + free - across(b)[0];
        offset.push((offset[i - 1] ?? 0) + gap);
      });
      const fitted = rising(layer.map((b, i) => wanted(b, layer) - (offset[i] ?? 0)));
      layer.forEach((b, i) => at.set(b.part.name, (fitted[i] ?? 0) + (offset[i] ?? 0)));
    }
  }
  return at;
}

/** The series that never falls and is nearest to the values (pooling of adjacent violators). */
function rising(values: readonly number[]): number[] {
  const pools: { mean: number; size: number }[] = [];
  for (const value of values) {
    let pool = { mean: value, size: 1 };
    let last = pools[pools.length - 1];
    while (last !== undefined && last.mean > pool.mean) {
      const size = last.size + pool.size;
      pool = { mean: (last.mean * last.size + pool.mean * pool.size) / size, size };
      pools.pop();
      last = pools[pools.length - 1];
    }
    pools.push(pool);
  }
  return pools.flatMap(({ mean, size }) => Array.from({ length: size }, () => mean));
}
