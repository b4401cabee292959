/**
 * Bracketed root finding: the Illinois variant of regula falsi (Dowell, Jarratt, BIT 11
 * (1971) 168-174) with a bisection whenever the bracket fails to halve in three turns.
 *
 * `f(a) <= 0 < f(b)` on entry. Returns the right end of the final bracket, so that f there is
 * above zero: a guard located this way has fired.
 */
export function firstAbove(
  f: (x: number) => number,
  a: number,
  fa: number,
  b: number,
  fb: number,
  width: number,
): number {
  let wa = fa;
  let wb = fb;
  let side = 0;
  let turns = 0;
  let last = b - a;
  while (b - a > width) {
    let x = wb === wa ? 0.5 * (a + b) : b - (wb * (b - a)) / (wb - wa);
    if (++turns % 3 === 0) {
      const slow = b - a > 0.5 * last;
      if (slow) x = 0.5 * (a + b);
      last = slow ? 0.5 * (b - a) : b - a;
    }
    // Keep off the ends, so that both close in.
    const margin = 0.25 * width;
    if (!(x > a + margin)) x = a + margin;
    if (!(x < b - margin)) x = b - margin;
    const fx = f(x);
    if (fx > 0) {
      b = x;
      wb = fx;
      if (side === 1) wa *= 0.5;
      side = 1;
    } else {
      a = x;
      wa = fx;
      if (side === -1) wb *= 0.5;
      side = -1;
    }
    if (turns > 200) break;
  }
  return b;
}
