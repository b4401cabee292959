/** Longest text that is compared: names are short, hostile ones need not be. */
const LONGEST = 60;
/** More names than these are no help. */
const MOST_NAMES = 4;

/** Edits (insert, delete, replace, swap neighbours) from one text to the other. */
function distance(a: string, b: string, cap: number): number {
  if (Math.abs(a.length - b.length) > cap) return cap + 1;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min(last[j] + 1, row[j - 1] + 1, last[j - 1] + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        best = Math.min(best, before[j - 2] + 1);
      }
      row.push(best);
    }
    before = last;
    last = row;
  }
  return last[b.length];
}

/**
 * The known name nearest to what was written, when it is near enough to have been meant: up to
 * one edit per three letters (at least one), or the same words in another order.
 */
export function nearestName(written: string, known: Iterable<string>): string | undefined {
  if (written.length < 2 || written.length > LONGEST) return undefined;
  const plain = written.toLowerCase().replace(/[_\s]+/g, '-');
  const words = plain.split('-').sort().join('-');
  let cap = Math.max(1, Math.floor(plain.length / 3)) + 1;
  let best: string | undefined;
  for (const name of known) {
    if (name.length > LONGEST) continue;
    const lower = name.toLowerCase();
    const d = lower.split('-').sort().join('-') === words ? 0.5 : distance(plain, lower, cap);
    if (d < cap) {
      cap = d;
      best = name;
    }
  }
  return best;
}

/** Names that hold the written word as a whole part, like `engine-pump` for `pump`: a few at most. */
function namesWith(written: string, known: readonly string[]): readonly string[] {
  const plain = written.toLowerCase().replace(/[_\s]+/g, '-');
  if (plain.length < 3 || plain.length > LONGEST) return [];
  const found = known.filter((name) => `-${name.toLowerCase()}-`.includes(`-${plain}-`));
  return found.length <= MOST_NAMES ? found : [];
}

/** `did you mean x?`, or `x or y?`, or nothing when no known name is near. */
export function didYouMean(written: string, known: Iterable<string>): string {
  const names = [...known];
  const nearest = nearestName(written, names);
  const meant = nearest === undefined ? namesWith(written, names) : [nearest];
  return meant.length === 0 ? '' : `did you mean ${meant.join(' or ')}?`;
}
