/** The project's own files, as the house tests see them: what is committed, not what is made. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));

const MADE = new Set([
  '.git',
  '.vite',
  'node_modules',
  'dist',
  'coverage',
  'docs/api',
  'docs/catalogue',
  'tests/artefacts',
]);

/** Paths of files under a folder, from the root, with forward slashes, sorted. */
export function filesIn(folder: string): string[] {
  const start = join(ROOT, folder);
  if (!existsSync(start)) return [];
  return readdirSync(start, { withFileTypes: true })
    .flatMap((entry) => {
      const path = relative(ROOT, join(start, entry.name)).split(sep).join('/');
      if (MADE.has(entry.name) || MADE.has(path)) return [];
      return entry.isDirectory() ? filesIn(path) : [path];
    })
    .sort();
}

export function textOf(path: string): string {
  return readFileSync(join(ROOT, path), 'utf8');
}

/** TypeScript sources of a package, without its tests (there are none beside the sources). */
export function sourcesOf(packageName: 'core' | 'viz'): string[] {
  return filesIn(`packages/${packageName}/src`).filter((path) => path.endsWith('.ts'));
}

/** `left-uplock` for `some/left-uplock.ts`. */
export function stem(path: string): string {
  return basename(path).replace(/\.[^.]+$/, '');
}
