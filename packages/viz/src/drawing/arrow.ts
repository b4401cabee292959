/** The arrow from a cause to its effect on the order chart. */

/** A curve from one mark to another that leaves and arrives level; between marks of one instant it bows to the right. */
export function causeArrow(x1: number, y1: number, x2: number, y2: number): string {
  const gap = 5;
  const down = Math.sign(y2 - y1);
  if (x2 - x1 > 24) {
    const mid = (x1 + x2) / 2;
    return `M${x1},${y1}C${mid},${y1} ${mid},${y2} ${x2 - gap},${y2}`;
  }
  const bow = 18 + Math.abs(y2 - y1) * 0.12;
  return `M${x1},${y1}C${x1 + bow},${y1 + down * 4} ${x2 + bow},${y2 - down * 4} ${x2 + gap},${y2 - down}`;
}

/** Its head, turned the way the curve arrives. */
export function arrowHead(x1: number, x2: number, y2: number): string {
  return x2 - x1 > 24 ? `M${x2 - 4},${y2}l-7,-4v8Z` : `M${x2 + 4},${y2}l7,-4v8Z`;
}
