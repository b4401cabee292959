/**
 * Columns of pixels in which a line goes up and down, filled pixel by pixel: strokes of a noisy line,
 * and dashes that nobody could see in it, take a hundred times as long.
 */
import type { Layout } from './trace-layout.js';

/** Numbers of a path (two to a point) in one column from which it is dense. */
export const DENSE = 6;

/** Where the points end that share the column of the one at `i`. */
export function columnEnd(path: Float32Array, i: number): number {
  const column = Math.floor(path[i] ?? NaN);
  let end = i + 2;
  while (end < path.length && Math.floor(path[end] ?? NaN) === column) end += 2;
  return end;
}

export interface Raster {
  /** Of the whole canvas. */
  readonly image: ImageData;
  /** Pixels to a px, and of the left edge of the plot. */
  readonly scale: number;
  readonly left: number;
  /** Half the width of a line, px. */
  readonly half: number;
}

/** Fills the dense columns of every line. */
export function fillDense(
  { image, scale, left, half }: Raster,
  layout: Layout,
  dark: boolean,
): void {
  const { width, height } = image;
  const pixels = new Uint32Array(image.data.buffer);
  const edge = Math.min(width, Math.ceil(left + layout.plotWidth * scale));
  for (const { top, height: tall, lines } of layout.panels) {
    const first = Math.max(0, Math.floor((top - 2) * scale));
    const last = Math.min(height, Math.ceil((top + tall + 2) * scale));
    for (const { path, style } of lines) {
      const colour = opaque(dark ? style.dark : style.light);
      for (let i = 0; i < path.length;) {
        const end = columnEnd(path, i);
        if (end - i >= DENSE) {
          const column = Math.floor(path[i] ?? 0);
          let [low, high] = [Infinity, -Infinity];
          // Up to where the column before it ended.
          const joined = Math.floor(path[i - 2] ?? NaN) === column - 1;
          for (let k = joined ? i - 1 : i + 1; k < end; k += 2) {
            const y = path[k] ?? 0;
            if (y < low) low = y;
            if (y > high) high = y;
          }
          const x0 = Math.max(Math.floor(left), Math.floor(left + column * scale));
          const x1 = Math.min(edge, Math.ceil(left + (column + 1) * scale));
          const y1 = Math.min(last, Math.ceil((high + half) * scale));
          for (let y = Math.max(first, Math.floor((low - half) * scale)); y < y1; y++)
            pixels.fill(colour, y * width + x0, y * width + Math.max(x0, x1));
        }
        i = end;
      }
    }
  }
}

/** '#rrggbb' as the bytes of a pixel, lowest first. */
function opaque(colour: string): number {
  const rgb = parseInt(colour.slice(1), 16);
  const swapped = ((rgb & 0xff) << 16) | (rgb & 0xff00) | (rgb >> 16);
  return (swapped | 0xff000000) >>> 0;
}
