/** Seeded random numbers (mulberry32, public domain), so that every case can be played again alone. */
export function generator(seed) {
  let a = seed >>> 0;
  const uniform = () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return {
    uniform,
    normal,
    pick: (list) => list[Math.floor(uniform() * list.length)],
    chance: (p) => uniform() < p,
  };
}

/** A seed from words (FNV-1a). */
export function seedOf(...words) {
  let h = 0x811c9dc5;
  for (const c of words.join(' ')) h = Math.imul(h ^ c.charCodeAt(0), 0x01000193);
  return h >>> 0;
}
