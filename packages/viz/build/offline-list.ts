/** Tells the service worker which files the built page consists of. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

/** Its name has no hash: browsers ask for it under the same name for ever. */
export const OFFLINE = 'offline.js';

export function offlineList(publicFolder: string): Plugin {
  return {
    name: 'wheelwell:offline-list',
    apply: 'build',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const worker = bundle[OFFLINE];
        if (worker?.type !== 'chunk') return this.error(`${OFFLINE} is not built`);
        const fixed = readdirSync(publicFolder);
        const made = Object.values(bundle).filter(
          (f) => f !== worker && !f.fileName.endsWith('.map'),
        );
        const pages = made.flatMap((f) =>
          f.type === 'asset' && f.fileName.endsWith('.html') ? [f.source] : [],
        );
        // Servers are at liberty to know a folder's page by the folder's name alone.
        const files = [
          ...made.map((f) => f.fileName.replace(/^index\.html$/, './')),
          ...fixed,
        ].sort();
        const hash = createHash('sha256').update(files.join('\n'));
        for (const content of [
          ...pages,
          ...fixed.map((name) => readFileSync(join(publicFolder, name))),
        ])
          hash.update(content);
        worker.code = worker.code
          .replaceAll('__FILES__', JSON.stringify(files))
          .replaceAll('__VERSION__', JSON.stringify(hash.digest('hex').slice(0, 16)));
      },
    },
  };
}
