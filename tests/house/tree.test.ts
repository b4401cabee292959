import { expect, it } from 'vitest';
import { filesIn, textOf } from './files.js';
import { forbiddenIn } from './words.js';

const files = filesIn('.').filter((path) => !/\.(png|ico|woff2|csv)$/.test(path));
const code = files.filter((path) => /\.(ts|mjs|js|css|html)$/.test(path));

it('sees the tree it judges', () => {
  expect(files).toContain('package.json');
  expect(files).toContain('packages/core/src/define/device.ts');
  expect(files.filter((path) => path.includes('node_modules/'))).toEqual([]);
});

it('has no code file above 400 lines', () => {
  const long = code
    .map((path) => ({ path, lines: textOf(path).split('\n').length - 1 }))
    .filter(({ lines }) => lines > 400)
    .map(({ path, lines }) => `${path}: ${lines}`);
  expect(long).toEqual([]);
});

it('names files in kebab-case, but for those whose name a tool or custom fixes', () => {
  const fixed = /^(README|DEVELOPERS|CHANGELOG|LICENSE)(\.md)?$/;
  const odd = files.filter((path) => {
    const name = path.slice(path.lastIndexOf('/') + 1);
    return !fixed.test(name) && !/^\.?[a-z0-9]+([-.][a-z0-9]+)*$/.test(name);
  });
  expect(odd).toEqual([]);
});

it('says nothing of registries or of the place where it was made', () => {
  const found = files.flatMap((path) =>
    forbiddenIn(textOf(path)).map((word) => `${path}: ${word}`),
  );
  expect(found).toEqual([]);
});

it('keeps no addresses of a registry in the lock file', () => {
  const lock = JSON.parse(textOf('package-lock.json')) as {
    packages: Record<string, { resolved?: string; integrity?: string; link?: boolean }>;
  };
  const addressed = Object.entries(lock.packages)
    .filter(([, { resolved }]) => resolved?.includes(':'))
    .map(([path]) => path);
  expect(addressed).toEqual([]);
  const unsealed = Object.entries(lock.packages)
    .filter(([path, { integrity }]) => path.includes('node_modules/') && !integrity)
    .filter(([, { link }]) => link !== true)
    .map(([path]) => path);
  expect(unsealed).toEqual([]);
  expect(textOf('.npmrc')).toMatch(/^omit-lockfile-registry-resolved=true$/m);
});
