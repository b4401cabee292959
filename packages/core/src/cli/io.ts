import type { SignaturePool } from '../analysis/index.js';
import type { KeptSwings } from './kept-swings.js';

/** What the command line needs of its surroundings; tests hand in their own. */
export interface Io {
  readonly out: (text: string) => void;
  readonly error: (text: string) => void;
  /** True when the stream is a terminal: colour on the one, progress on the other. */
  readonly outIsTerminal: boolean;
  readonly errorIsTerminal: boolean;
  /** Text of a file, `-` for standard input. Throws an Error with a message for people. */
  readonly read: (file: string) => string;
  readonly write: (file: string, text: string) => void;
  /** Players of a diagnosis on other threads; absent: it plays here. */
  readonly pool?: () => {
    readonly pool: SignaturePool;
    readonly close: () => Promise<void>;
  };
  /** Swings of a scenario that were played before; absent: none are kept. */
  readonly kept?: (scenario: string) => KeptSwings;
  /** Milliseconds of a clock that only goes forward. */
  readonly now: () => number;
}

/** Exit codes. */
export const EXIT = { clean: 0, flagged: 1, badInput: 2, unfinished: 3 } as const;

/** Ends a command with a message and the code for bad input. */
export class BadInput extends Error {}
