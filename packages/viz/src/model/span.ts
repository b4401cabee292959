/** The window of time that the charts show, s. */
export type Span = readonly [number, number];

/** The closest look, s. */
const NARROWEST = 0.05;
/** Where in the window the play head appears after the window has moved on to it. */
const ENTRY = 0.2;

/** Moved so that it holds a time; the same when it does already. */
export function follow(span: Span, time: number, duration: number): Span {
  const [a, b] = span;
  if (time >= a && time <= b) return span;
  const width = b - a;
  const start = Math.min(Math.max(time - width * ENTRY, 0), duration - width);
  return [start, start + width];
}

/** Closer (factor above 1) or wider; `about` stays where it is in the window. */
export function zoomed(span: Span, factor: number, about: number, duration: number): Span {
  const [a, b] = span;
  const width = Math.min(Math.max((b - a) / factor, NARROWEST), duration);
  const share = b > a ? Math.min(Math.max((about - a) / (b - a), 0), 1) : 0.5;
  const start = Math.min(Math.max(about - share * width, 0), duration - width);
  return [start, start + width];
}

/** From one time to another, whichever is first; no narrower than the closest look. */
export function between(a: number, b: number, duration: number): Span {
  const [from, to] = a < b ? [a, b] : [b, a];
  const width = Math.min(Math.max(to - from, NARROWEST), duration);
  const start = Math.min(Math.max((from + to - width) / 2, 0), duration - width);
  return [start, start + width];
}
