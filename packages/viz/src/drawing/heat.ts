/**
 * Colours for a quantity, dark to light: equally spaced points on two straight lines in CIELAB (CIE 15),
 * each step of equal lightness and colour difference, so that equal differences look equal, in grey and to
 * the colour-blind too. Between them red, green and blue are mixed, which over so small a step is the same.
 */
export const HEAT_STOPS: readonly string[] = [
  ...['#10325a', '#1c4163', '#27516c', '#306274', '#39737d', '#428486', '#4a968f'],
  ...['#6ba498', '#88b3a0', '#a4c2a9', '#c0d0b1', '#dbdfba', '#f7eec3'],
];

const MIXED = HEAT_STOPS.map((stop) => [1, 3, 5].map((i) => parseInt(stop.slice(i, i + 2), 16)));

/** A colour for a share, 0 (worst) to 1 (best). */
export function heat(share: number): string {
  const place = Math.min(1, Math.max(0, share)) * (MIXED.length - 1);
  const stop = Math.min(MIXED.length - 2, Math.floor(place));
  const parts = MIXED[stop]?.map((a, i) =>
    Math.round(a + (place - stop) * ((MIXED[stop + 1]?.[i] ?? a) - a)),
  );
  return `rgb(${parts?.join(', ')})`;
}
