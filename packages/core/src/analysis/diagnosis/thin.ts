/** Sheets with hundreds of entries: what says the same under the same conditions is put together. */
import type { Evidences, FigureEntry } from './entry.js';

/** So many figures are weighed one by one; the cost goes with the third power. */
const MOST = 120;
/** The same fact counts so often: beyond that it tells nothing new, however often it is noted. */
const TIMES = 3;
/** Spread of a median over that of a mean, for normal readings (any text on statistics). */
const MEDIAN = 1.25;

export function thinned(e: Evidences): Evidences {
  const unused = [...e.unused];
  const often = <T extends { readonly label: string }>(
    entries: readonly T[],
    key: (entry: T) => string,
    times: number,
  ): readonly T[] => {
    const counts = new Map<string, number>();
    const kept = entries.filter((entry) => {
      const count = (counts.get(key(entry)) ?? 0) + 1;
      counts.set(key(entry), count);
      return count <= times;
    });
    const seen = new Set<string>();
    for (const entry of entries) {
      const count = counts.get(key(entry))!;
      if (count <= times || seen.has(key(entry))) continue;
      seen.add(key(entry));
      unused.push(
        `${entry.label}: noted ${count} times, counted ${times === 1 ? 'once' : `${times} times`}`,
      );
    }
    return kept;
  };
  return {
    figures: e.figures.length > MOST ? medians(e.figures) : e.figures,
    facts: often(e.facts, (f) => `${f.setup} ${f.label}`, TIMES),
    looks: often(e.looks, (l) => l.label, 1),
    unused,
  };
}

/** One figure for all of a kind: the middle one, known the better the more there are. */
function medians(figures: readonly FigureEntry[]): readonly FigureEntry[] {
  const alike = new Map<string, FigureEntry[]>();
  for (const f of figures) {
    const key = `${f.setup} ${f.key}`;
    const known = alike.get(key);
    if (known === undefined) alike.set(key, [f]);
    else known.push(f);
  }
  return [...alike.values()].map((all) => {
    if (all.length === 1) return all[0];
    const sorted = [...all].sort((a, b) => a.value - b.value);
    const middle = sorted[sorted.length >> 1];
    const sharper = Math.min(1, MEDIAN / Math.sqrt(all.length));
    return {
      ...middle,
      swing: all[0].swing,
      label: `${middle.label}, middle of ${all.length}`,
      spread: middle.spread * sharper,
      error: middle.error * sharper,
    };
  });
}
