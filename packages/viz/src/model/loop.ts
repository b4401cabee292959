/** A span of the run that plays over and over. */
import type { Picture } from '../worker/message.js';
import { reached } from './history.js';
import { seconds } from './sentence.js';
import type { Store } from './store.js';

export interface Loop {
  readonly from: number;
  readonly to: number;
  readonly on: boolean;
}

/** Shorter is a flicker, s. */
const SHORTEST = 0.05;

/** Held to the run and to a length that can be seen; undefined when the run is too short for one. */
export function loopWithin(loop: Loop, picture: Picture): Loop | undefined {
  const end = reached(picture);
  const from = Math.min(Math.max(loop.from, 0), end - SHORTEST);
  const to = Math.min(Math.max(loop.to, from + SHORTEST), end);
  return from >= 0 ? { from, to, on: loop.on } : undefined;
}

/** Where the play head is after running on to `next`: past the end it comes in again at the start. */
export function looped({ from, to }: Loop, next: number): number {
  return next < to ? next : from + ((next - from) % (to - from));
}

/** The verbs, on the page's one store. */
export class LoopWork {
  readonly #store: Store;

  constructor(store: Store) {
    this.#store = store;
  }

  /** The loop starts at the play head; it ends where it did, or with the run. */
  start(): void {
    const { picture, time, loop } = this.#store.state;
    if (picture === undefined) return;
    const to = loop !== undefined && loop.to > time + SHORTEST ? loop.to : reached(picture);
    this.over(time, to);
  }

  /** The loop ends at the play head; it starts where it did, or with the run. */
  end(): void {
    const { time, loop } = this.#store.state;
    this.over(loop !== undefined && loop.from < time - SHORTEST ? loop.from : 0, time);
  }

  /** On or off; without a span it takes what the chart shows. */
  toggle(): void {
    const { loop, span } = this.#store.state;
    if (loop === undefined) this.over(...span);
    else if (loop.on) this.#store.set({ loop: { ...loop, on: false }, said: 'Loop off.' });
    else this.over(loop.from, loop.to);
  }

  over(a: number, b: number): void {
    const { picture } = this.#store.state;
    if (picture === undefined) return;
    const loop = loopWithin({ from: Math.min(a, b), to: Math.max(a, b), on: true }, picture);
    if (loop === undefined) return;
    this.#store.set({ loop, said: `Loop from ${seconds(loop.from)} to ${seconds(loop.to)}.` });
  }

  clear(): void {
    this.#store.set({ loop: undefined, said: 'Loop removed.' });
  }
}
