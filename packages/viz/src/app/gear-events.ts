/** What `<ww-gear>` tells the page around it: plain data, none of it shared with the element. */
import type { Flag, Issue, Outcome, Picture, Timing } from '../worker/message.js';

export interface GearRun {
  readonly file: string;
  readonly title: string;
  /** Name of the card played. */
  readonly card: string;
  readonly cards: readonly { readonly name: string; readonly title: string }[];
  /** s */
  readonly duration: number;
  readonly outcome: Outcome;
  readonly flags: readonly Flag[];
  readonly timings: readonly Timing[];
}

export interface GearEvents {
  /** A card has been simulated and is on show. */
  readonly 'ww-run': GearRun;
  /** The play head moved, or the clock started or stopped. */
  readonly 'ww-time': { readonly time: number; readonly playing: boolean };
  /** The scenario cannot be read; the element shows why, too. */
  readonly 'ww-issues': { readonly file: string; readonly issues: readonly Issue[] };
  /** The scenario could not be loaded, or its simulation failed. */
  readonly 'ww-failure': { readonly message: string };
}

export function summaryOf(picture: Picture): GearRun {
  const { file, title, card, cards, duration, outcome, flags, timings } = picture;
  return structuredClone({
    file,
    title,
    card,
    cards: cards.map((c) => ({ name: c.name, title: c.title })),
    duration,
    outcome,
    flags,
    timings,
  });
}
