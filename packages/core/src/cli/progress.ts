import type { Io } from './io.js';

/** Work shorter than this needs no word, ms. */
const PATIENCE = 500;
/** Between two words, ms. */
const PACE = 100;

/**
 * Progress of long work on the error stream, only on a terminal. `undefined` on a pipe, so that
 * the work need not report at all.
 */
export function progress(
  io: Io,
  what: string,
): { readonly report: (share: number) => void; readonly done: () => void } | undefined {
  if (!io.errorIsTerminal) return undefined;
  const start = io.now();
  let last = start + PATIENCE - PACE;
  let shown = false;
  return {
    report: (share) => {
      const now = io.now();
      if (now - last < PACE) return;
      last = now;
      shown = true;
      io.error(`\r${what} ${Math.floor(100 * Math.min(1, Math.max(0, share)))} %`);
    },
    done: () => {
      if (shown) io.error('\r\u001b[K');
    },
  };
}
