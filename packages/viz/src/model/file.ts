/** A file the user gives, as the text of a scenario. */
import type { Source } from './state.js';

export interface GivenFile {
  readonly name: string;
  /** Bytes. */
  readonly size: number;
  text(): Promise<string>;
}

/** A scenario is a few pages of text; a far larger file is something else, bytes. */
const LARGEST = 5e6;

/** @throws Error with a sentence for the user when the file is too large or cannot be had. */
async function sourceOf(file: GivenFile): Promise<Source> {
  if (file.size > LARGEST) {
    const megabytes = (file.size / 1e6).toFixed(0);
    throw new Error(
      `${file.name} was not read: it has ${megabytes} megabytes, a scenario at most 5.`,
    );
  }
  try {
    return { file: file.name, text: await file.text() };
  } catch {
    throw new Error(`${file.name} could not be read from the disk.`);
  }
}

/** What can be had of several files, and sentences about the rest. */
export async function sourcesOf(
  given: readonly GivenFile[],
): Promise<{ readonly sources: readonly Source[]; readonly failure: string }> {
  const read = await Promise.allSettled(given.map(sourceOf));
  return {
    sources: read.flatMap((r) => (r.status === 'fulfilled' ? [r.value] : [])),
    failure: read
      .flatMap((r) => (r.status === 'rejected' ? [(r.reason as Error).message] : []))
      .join(' '),
  };
}
