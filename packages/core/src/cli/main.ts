import { readFileSync, writeFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import process from 'node:process';
import * as wheelwell from '../index.js';
import { BadInput, type Io } from './io.js';
import { runProgram } from './program.js';

/** Runs the command line on this process and sets its exit code. */
export function main(): void {
  // A reader that has seen enough (head) closes the pipe: that is no error of ours.
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') process.exit();
      throw error;
    });
  }
  // The code is set, not exited with, so that long output on a pipe is written out first.
  process.exitCode = runProgram(process.argv.slice(2), io(), wheelwell, version());
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
    now: () => performance.now(),
  };
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
