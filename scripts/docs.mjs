/**
 * `npm run docs`: the reference of core's public door to docs/api, and a page for every device,
 * mechanism, fault, rule and oil to docs/catalogue. Both are made anew and ignored by git.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { cataloguePages } from './docs/pages.mjs';
import { buildCore, ROOT, runTool } from './setup.mjs';

buildCore();
const core = await import('@wheelwell/core');

const read = (path) => {
  const file = join(ROOT, 'packages/core/src', path);
  return existsSync(file) ? readFileSync(file, 'utf8') : undefined;
};
const scenarios = readdirSync(join(ROOT, 'scenarios'), { recursive: true })
  .filter((path) => path.endsWith('.yaml'))
  .sort()
  .map((path) => readFileSync(join(ROOT, 'scenarios', path), 'utf8'));

const { pages } = cataloguePages(core, { read, scenarios });
const folder = join(ROOT, 'docs/catalogue');
rmSync(folder, { recursive: true, force: true });
for (const [path, text] of pages) {
  const file = join(folder, path);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
}
console.log(`docs/catalogue: ${pages.size} pages`);

process.exitCode = runTool('typedoc/bin/typedoc', process.argv.slice(2));
