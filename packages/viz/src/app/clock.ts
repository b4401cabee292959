/** Lets the play head run with the browser's frames; in coarse steps where motion is to be reduced. */
import type { Store } from '../model/store.js';

/** Steps a second with reduced motion. */
const COARSE = 4;
/** A hidden page sends no frames; coming back must not jump, s. */
const LONGEST = 0.25;

export function runClock(store: Store): void {
  const reduced = matchMedia('(prefers-reduced-motion: reduce)');
  let last = 0;
  let owed = 0;
  const frame = (now: number): void => {
    if (!store.state.playing) return;
    owed += Math.min((now - last) / 1000, LONGEST);
    last = now;
    if (!reduced.matches || owed >= 1 / COARSE) {
      store.advance(owed);
      owed = 0;
    }
    requestAnimationFrame(frame);
  };
  store.watch((changed) => {
    if (!changed.has('playing') || !store.state.playing) return;
    last = performance.now();
    owed = 0;
    requestAnimationFrame(frame);
  });
}

/** For stopwatches, s: as steady as the page's own clock, and going on over a reload. */
export function watchClock(): number {
  return (performance.timeOrigin + performance.now()) / 1000;
}
