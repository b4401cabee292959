/** Fenced blocks of a Markdown page, and what happens when a TypeScript one is run. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import ts from 'typescript';
import { vi } from 'vitest';
import { ROOT, textOf } from './files.js';

export interface Block {
  readonly language: string;
  readonly text: string;
  /** Line number (from 0) of the block's first line of text, and of the closing fence. */
  readonly start: number;
  readonly end: number;
}

/** Blocks in the order of the page; fences of three backticks at the line's start only. */
export function blocksOf(page: string): Block[] {
  const lines = textOf(page).split('\n');
  const blocks: Block[] = [];
  for (let i = 0; i < lines.length; i++) {
    if (!lines[i].startsWith('```')) continue;
    const start = i + 1;
    const end = lines.indexOf('```', start);
    if (end < 0) throw new Error(`${page}:${start}: the block is not closed`);
    const text = lines.slice(start, end).join('\n');
    blocks.push({ language: lines[i].slice(3).trim(), text, start, end });
    i = end;
  }
  return blocks;
}

/** Writes a block to a file of its own, inside the project so that it can import core. */
export function fileOf(name: string, block: Block): string {
  const folder = join(ROOT, 'tests/artefacts/snippets');
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `${name}.ts`);
  writeFileSync(file, block.text);
  return file;
}

/** What the TypeScript compiler has against a file, under the settings of the tests. */
export function complaintsOf(file: string): string[] {
  const config = ts.readConfigFile(join(ROOT, 'tsconfig.json'), (path) => ts.sys.readFile(path))
    .config as unknown;
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, ROOT);
  const program = ts.createProgram([file], options);
  return ts
    .getPreEmitDiagnostics(program, program.getSourceFile(file))
    .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' '));
}

/** Runs a module and returns what it printed. */
export async function outputOf(file: string): Promise<string> {
  const printed: string[] = [];
  const log = vi.spyOn(console, 'log').mockImplementation((...parts: unknown[]) => {
    printed.push(parts.map(String).join(' '));
  });
  try {
    await import(/* @vite-ignore */ `${pathToFileURL(file).href}?at=${Date.now()}`);
  } finally {
    log.mockRestore();
  }
  return printed.join('\n');
}

/** Puts other text into a block of a page. */
export function rewrite(page: string, block: Block, text: string): void {
  const lines = textOf(page).split('\n');
  lines.splice(block.start, block.end - block.start, ...text.split('\n'));
  writeFileSync(join(ROOT, page), lines.join('\n'));
}

/** Stands for lines that are left out of an excerpt. */
const LEFT_OUT = '...';

/** The pieces of a printed text that a page shows, between its marks for what it leaves out. */
export function piecesOf(shown: readonly string[]): string[][] {
  const pieces: string[][] = [[]];
  for (const line of shown) {
    if (line === LEFT_OUT) pieces.push([]);
    else pieces.at(-1)!.push(line);
  }
  return pieces;
}

/**
 * The same excerpt of a later print: each piece begins at the line that begins alike, after the
 * piece before it, and is as long as it was. A page that shows nothing yet gets the whole.
 */
export function excerptOf(printed: readonly string[], shown: readonly string[]): string[] {
  if (shown.length === 0) return [...printed];
  let from = 0;
  return piecesOf(shown)
    .map((piece) => {
      if (piece.length === 0) return '';
      const alike = (a: string, b: string): boolean => a.slice(0, 12) === b.slice(0, 12);
      const at = printed.findIndex((line, i) => i >= from && alike(line, piece[0]));
      if (at < 0) throw new Error(`nothing printed begins like: ${piece[0]}`);
      from = at + piece.length;
      return printed.slice(at, from).join('\n');
    })
    .join(`\n${LEFT_OUT}\n`)
    .replace(/^\n/, '')
    .split('\n');
}
