/** Code that comes when it is first asked for. */
import { whyOf } from './why.js';

/** What was asked for meanwhile is done in the order in which it was asked. */
export function later<T>(load: () => Promise<T>): (use: (part: T) => void) => void {
  let part: Promise<T> | undefined;
  return (use) => {
    part ??= load().catch((error: unknown) => {
      const why = whyOf(error);
      throw new Error(`a part of the page could not be loaded (${why}); load the page anew`);
    });
    // A failure is told as any other of the worker's: the page hears it as the worker's error.
    part.then(use).catch(reportError);
  };
}
