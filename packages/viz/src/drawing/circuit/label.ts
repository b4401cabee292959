/** How much room words take, before they are drawn. */

/** Size of letters and distance of lines, modules. */
export const LETTER = 1.9;
export const LEADING = 2.1;

/** Widths in a wide sans serif (DejaVu Sans, measured), em: other letters of the page are narrower. */
const NARROW = /[iljtfr.,' ]/;
const WIDE = /[mwMW%]/;

export function widthOf(text: string, size = LETTER): number {
  let em = 0;
  for (const c of text)
    em += NARROW.test(c) ? 0.4 : WIDE.test(c) ? 0.98 : c === c.toLowerCase() ? 0.62 : 0.74;
  return em * size;
}

/** Words in lines no wider than `most`, where they can be parted. */
export function wrap(text: string, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines[lines.length - 1];
    if (last !== undefined && widthOf(`${last} ${word}`) <= most)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
