/** Finds things by a few letters of their words. */

/**
 * How well a text fits what was typed, larger is better; 0 when it does not. Every word typed must
 * be found: as the beginning of a word, within one, or letter by letter in order.
 */
export function fits(text: string, typed: string): number {
  const hay = text.toLowerCase();
  const words = typed
    .toLowerCase()
    .split(/[\s.,-]+/)
    .filter((w) => w !== '');
  let sum = 0;
  for (const word of words) {
    const score = wordFits(hay, word);
    if (score === 0) return 0;
    sum += score;
  }
  return words.length === 0 ? 1 : sum / words.length;
}

function wordFits(hay: string, word: string): number {
  const at = hay.indexOf(word);
  if (at === 0 || (at > 0 && /[\s.-]/.test(hay[at - 1] ?? ''))) return 4;
  if (at > 0) return hay.includes(` ${word}`) ? 4 : 3;
  // Letters in order, each no further than a few from the last: `lflg` for `left leg`.
  let from = -1;
  for (const letter of word) {
    const next = hay.indexOf(letter, from + 1);
    if (next < 0 || (from >= 0 && next - from > 6)) return 0;
    from = next;
  }
  return word.length > 1 ? 1 : 0;
}
