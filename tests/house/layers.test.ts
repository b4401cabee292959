import { describe, expect, it } from 'vitest';
import { filesIn, sourcesOf } from './files.js';
import { importsOf } from './imports.js';

/**
 * Rooms by layer, lowest first. A room may import itself and rooms of lower layers. `door` is
 * the package's index.ts. DEVELOPERS.md explains the order.
 */
const LAYERS = {
  core: [
    ['define', 'solver'],
    ['quantity'],
    ['medium'],
    ['component', 'mechanism', 'fault', 'monitor', 'check'],
    ['scenario', 'recording'],
    ['network', 'observation'],
    ['machine'],
    ['analysis'],
    ['report'],
    ['lesson'],
    ['bound'],
    ['door'],
    ['cli'],
  ],
  viz: [['worker', 'drawing'], ['model'], ['view'], ['app', 'door']],
} as const;

/** Packages from the registry that only some rooms of core may use, so that they stay replaceable. */
const RESERVED: Readonly<Record<string, readonly string[]>> = {
  mathjs: ['quantity', 'scenario'],
  yaml: ['scenario', 'observation', 'lesson', 'cli'],
  // Its small build: the other is 18 kB more in the page.
  'zod/mini': ['scenario', 'observation', 'lesson'],
  commander: ['cli'],
  'env-paths': ['cli'],
  tinypool: ['cli'],
};

type Package = keyof typeof LAYERS;

function roomOf(name: Package, path: string): string {
  const rest = path.slice(`packages/${name}/src/`.length);
  return rest.includes('/') ? rest.slice(0, rest.indexOf('/')) : 'door';
}

function layerOf(name: Package, room: string): number {
  return LAYERS[name].findIndex((rooms) => (rooms as readonly string[]).includes(room));
}

describe.each(['core', 'viz'] as const)('packages/%s', (name) => {
  const sources = sourcesOf(name);

  it('keeps every source in a known room', () => {
    expect(sources.filter((file) => layerOf(name, roomOf(name, file)) < 0)).toEqual([]);
  });

  it('imports only from its own room or a lower layer', () => {
    const wrong = sources.flatMap((file) => {
      const room = roomOf(name, file);
      return importsOf(file)
        .filter(({ path }) => path !== undefined)
        .filter(({ path }) => {
          if (!path!.startsWith(`packages/${name}/src/`)) return true;
          const target = roomOf(name, path!);
          return target !== room && layerOf(name, target) >= layerOf(name, room);
        })
        .map(({ specifier, line }) => `${file}:${line} imports ${specifier}`);
    });
    expect(wrong).toEqual([]);
  });

  it('names the file it imports in full, as browsers and Node ask for', () => {
    const existing = new Set(filesIn(`packages/${name}/src`));
    const wrong = sources.flatMap((file) =>
      importsOf(file)
        .filter(({ path }) => path !== undefined && !existing.has(path))
        .map(({ specifier, line }) => `${file}:${line} imports ${specifier}`),
    );
    expect(wrong).toEqual([]);
  });
});

describe('what core and page take from outside', () => {
  it('core uses Node only in its command line, so that it runs in a browser', () => {
    const wrong = sourcesOf('core')
      .filter((file) => roomOf('core', file) !== 'cli')
      .flatMap((file) =>
        importsOf(file)
          .filter(({ specifier }) => specifier.startsWith('node:'))
          .map(({ specifier, line }) => `${file}:${line} imports ${specifier}`),
      );
    expect(wrong).toEqual([]);
  });

  it('core keeps each library in the rooms it is meant for', () => {
    const wrong = sourcesOf('core').flatMap((file) =>
      importsOf(file)
        .filter(({ path, specifier }) => {
          if (path !== undefined || specifier.startsWith('node:')) return false;
          return !(RESERVED[specifier] ?? []).includes(roomOf('core', file));
        })
        .map(({ specifier, line }) => `${file}:${line} imports ${specifier}`),
    );
    expect(wrong).toEqual([]);
  });

  it('the page imports core by its public door only', () => {
    const wrong = sourcesOf('viz').flatMap((file) =>
      importsOf(file)
        .filter(({ specifier }) => specifier.startsWith('@wheelwell/core/'))
        .map(({ specifier, line }) => `${file}:${line} imports ${specifier}`),
    );
    expect(wrong).toEqual([]);
  });
});
