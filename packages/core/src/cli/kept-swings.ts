/**
 * The swings that a diagnosis has played, kept in the user's cache folder from one command to the
 * next: a sheet that has grown by a check needs few new ones.
 */
import { createHash } from 'node:crypto';
import {
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { deserialize, serialize } from 'node:v8';
import envPaths from 'env-paths';
import type { Signature, SignatureMemory } from '../analysis/index.js';

/** Of so many scenarios, the last used, swings are kept. */
const MOST = 12;
/** More swings than these of one scenario are begun anew: some 30 MB. */
const FULL = 10_000;
const ENDING = '.swings';

export interface KeptSwings {
  readonly memory: SignatureMemory;
  /** Writes what has come to it. A folder that cannot be written is no reason to fail: then nothing is kept. */
  readonly keep: () => void;
}

/** @param program folder of the program's own files: another version plays other swings */
export function keptSwings(
  scenario: string,
  folder = envPaths('wheelwell', { suffix: '' }).cache,
  program = fileURLToPath(new URL('.', import.meta.url)),
): KeptSwings {
  const hash = createHash('sha256').update(scenario);
  for (const file of readdirSync(program).sort())
    if (file.endsWith('.js')) hash.update(readFileSync(join(program, file)));
  const file = join(folder, `${hash.digest('hex').slice(0, 24)}${ENDING}`);
  const memory = read(file);
  const known = memory.size;
  return {
    memory,
    keep: () => {
      if (memory.size === known) return;
      try {
        write(folder, file, memory);
      } catch {
        return;
      }
    },
  };
}

const none = (): SignatureMemory => new Map<string, Signature>();

function read(file: string): SignatureMemory {
  try {
    const found: unknown = deserialize(readFileSync(file));
    return found instanceof Map && found.size < FULL ? (found as SignatureMemory) : none();
  } catch {
    return none();
  }
}

function write(folder: string, file: string, memory: SignatureMemory): void {
  mkdirSync(folder, { recursive: true });
  // Aside first: another command may be reading it.
  const aside = `${file}.${process.pid}`;
  writeFileSync(aside, serialize(memory));
  renameSync(aside, file);
  const age = (name: string): number => statSync(join(folder, name)).mtimeMs;
  const all = readdirSync(folder).filter((name) => name.endsWith(ENDING));
  for (const old of all.sort((a, b) => age(b) - age(a)).slice(MOST)) rmSync(join(folder, old));
}
