/** Drawings are laid out for the usual size of letters and grow with it. */

/** Size of letters the drawings are made for, px; as in theme.css. */
const USUAL = 15;

/** How much larger than usual the page's letters are. */
export function textScale(): number {
  const size = parseFloat(getComputedStyle(document.documentElement).fontSize);
  return size > 0 ? size / USUAL : 1;
}
