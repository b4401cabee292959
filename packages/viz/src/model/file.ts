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
export async function sourceOf(file: GivenFile): Promise<Source> {
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
