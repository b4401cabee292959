/** The time between two marks. One is held; the other is whatever is picked out, until it is held, too. */
import { markOf, placeOf, sameMark } from './marks.js';
import type { Mark, MarkPlace } from './marks.js';
import { seconds } from './sentence.js';
import type { State } from './state.js';
import type { Store } from './store.js';

export interface Between {
  readonly from: MarkPlace;
  readonly to: MarkPlace;
  /** The second end still follows what is picked out. */
  readonly live: boolean;
}

/** Undefined when no mark is held, or the run on show does not have one of them. */
export function between(state: State): Between | undefined {
  const { picture, marks, measured, selection, time } = state;
  const [first, second] = marks;
  if (picture === undefined || first === undefined) return undefined;
  const from = placeOf(picture, first, measured);
  const to = placeOf(picture, second ?? markOf(picture, selection, time), measured);
  if (from === undefined || to === undefined) return undefined;
  return { from, to, live: second === undefined };
}

export function sentenceOfBetween({ from, to }: Between): string {
  return `From ${from.words} to ${to.words}: ${seconds(to.t - from.t, 3)}.`;
}

/** The verbs, on the page's one store. */
export class BetweenWork {
  readonly #store: Store;

  constructor(store: Store) {
    this.#store = store;
  }

  /** Holds what is picked out, or the play head, as the next end; a third time starts anew. */
  hold(): void {
    const { picture, selection, time } = this.#store.state;
    if (picture !== undefined) this.#hold(markOf(picture, selection, time));
  }

  /** The same for a mark that is pointed at: the first end is what is picked out. */
  reach(mark: Mark): void {
    const { picture, selection, time, marks } = this.#store.state;
    if (picture === undefined) return;
    if (marks.length !== 1 && selection.kind !== 'none')
      this.#store.set({ marks: [markOf(picture, selection, time)] });
    this.#hold(mark);
  }

  clear(): void {
    if (this.#store.state.marks.length > 0)
      this.#store.set({ marks: [], said: 'The marks are let go.' });
  }

  #hold(mark: Mark): void {
    const { marks } = this.#store.state;
    const [first] = marks;
    if (marks.length !== 1 || first === undefined) this.#store.set({ marks: [mark] });
    else if (sameMark(first, mark)) {
      this.clear();
      return;
    } else this.#store.set({ marks: [first, mark] });
    const found = between(this.#store.state);
    if (found === undefined) return;
    this.#store.set({
      said: found.live
        ? `Held: ${found.from.words} at ${seconds(found.from.t, 3)}. Go to the other mark.`
        : sentenceOfBetween(found),
    });
  }
}
