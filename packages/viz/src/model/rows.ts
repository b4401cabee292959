/** Puts words side by side where they have room, else into further rows. */

export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The row of each, in the order given: the first one where it meets none that is there already. */
export function rowsFor(words: readonly Stretch[]): number[] {
  const ends: number[] = [];
  const rows = new Array<number>(words.length).fill(0);
  const order = words
    .map((_, i) => i)
    .sort((a, b) => (words[a]?.from ?? 0) - (words[b]?.from ?? 0));
  for (const i of order) {
    const { from, to } = words[i] ?? { from: 0, to: 0 };
    const free = ends.findIndex((end) => end < from);
    const row = free < 0 ? ends.length : free;
    ends[row] = to;
    rows[i] = row;
  }
  return rows;
}
