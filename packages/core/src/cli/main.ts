import { readFileSync, writeFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import process from 'node:process';
import * as wheelwell from '../index.js';
import { BadInput, type Io } from './io.js';
import { keptSwings } from './kept-swings.js';
import Tinypool from 'tinypool';
import type { Signature, SignaturePool } from '../analysis/index.js';
import { runProgramAsync } from './program.js';

/** Runs the command line on this process and sets its exit code. */
export async function main(): Promise<void> {
  // A reader that has seen enough (head) closes the pipe: that is no error of ours.
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') process.exit();
      throw error;
    });
  }
  // The code is set, not exited with, so that long output on a pipe is written out first.
  process.exitCode = await runProgramAsync(process.argv.slice(2), io(), wheelwell, version());
}

function io(): Io {
  const colour = process.stdout.isTTY && !process.env.NO_COLOR;
  return {
    out: (text) => process.stdout.write(text),
    error: (text) => process.stderr.write(text),
    outIsTerminal: colour,
    errorIsTerminal: process.stderr.isTTY,
    read: (file) => reading(file, () => readFileSync(file === '-' ? 0 : file, 'utf8')),
    write: (file, text) => {
      reading(file, () => {
        writeFileSync(file, text);
        return '';
      });
    },
    pool: players,
    kept: keptSwings,
    now: () => performance.now(),
  };
}

/** Threads wait for more to play as long as this, ms. */
const IDLE = 30_000;

/** One thread a core. */
function players(): { pool: SignaturePool; close: () => Promise<void> } {
  const threads = new Tinypool({
    filename: new URL('./signature-thread.js', import.meta.url).href,
    // None before there is something to play: all may have been played before.
    minThreads: 0,
    idleTimeout: IDLE,
  });
  const pool: SignaturePool = {
    play: async (tasks, onSignature, signal) => {
      const all = tasks.map(async (task, i) => {
        // Which thread gets it is open, so each task has all: a copy takes a hundredth of a swing's time.
        const signature = (await threads.run(task)) as Signature;
        if (signal?.aborted !== true) onSignature(i, signature);
      });
      await Promise.all(all);
    },
  };
  return { pool, close: () => threads.destroy() };
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'no such file or folder',
  EISDIR: 'it is a folder',
  EACCES: 'no permission',
  ENOSPC: 'the disk is full',
};

function reading(file: string, action: () => string): string {
  try {
    return action();
  } catch (error) {
    const { code = '', message } = error as NodeJS.ErrnoException;
    throw new BadInput(`cannot use ${file}: ${REASONS[code] ?? message}`);
  }
}

function version(): string {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}
