/**
 * Packs the built page: beside every file stands its gzip, made as small as the format allows, which
 * `npm start` sends, and any server that looks for it (nginx: gzip_static).
 */
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { extname, join, resolve, sep } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';

type Packer = (content: Uint8Array) => Promise<Uint8Array>;

/** More rounds find a few bytes only. */
const ROUNDS = 5;

const KINDS: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
};

export function pack(): Plugin {
  return {
    name: 'wheelwell:pack',
    apply: (_, { command, isPreview }) => command === 'build' || isPreview === true,
    async writeBundle({ dir = '' }) {
      const packer = await findPacker((message) => this.warn(message));
      for (const entry of readdirSync(dir, { recursive: true, withFileTypes: true })) {
        if (!entry.isFile() || KINDS[extname(entry.name)] === undefined) continue;
        const path = join(entry.parentPath, entry.name);
        writeFileSync(`${path}.gz`, await packer(readFileSync(path)));
      }
    },
    configurePreviewServer({ config, middlewares }) {
      const root = resolve(config.root, config.build.outDir);
      middlewares.use((request, response, next) => {
        if (!send(root, config.preview.headers, request, response)) next();
      });
    },
  };
}

/** Zopfli where it is installed; else what Node has, some four per cent larger. */
async function findPacker(warn: (message: string) => void): Promise<Packer> {
  const name = '@gfx/zopfli';
  try {
    const { gzipAsync } = (await import(name)) as {
      gzipAsync: (content: Uint8Array, options: { numiterations: number }) => Promise<Uint8Array>;
    };
    return (content) => gzipAsync(content, { numiterations: ROUNDS });
  } catch {
    warn(`${name} is not installed (npm ci): the page is packed less tightly`);
    return (content) => Promise.resolve(gzipSync(content, { level: 9 }));
  }
}

/** Sends the packed copy of a file to who takes it; false where there is none. */
function send(
  root: string,
  headers: object | undefined,
  { url = '/', method, headers: asked }: IncomingMessage,
  response: ServerResponse,
): boolean {
  if (method !== 'GET' || !/\bgzip\b/.test(String(asked['accept-encoding']))) return false;
  const path = decoded(url.replace(/[?#].*/, '').replace(/\/$/, '/index.html'));
  const file = path === undefined ? root : join(root, path);
  const kind = KINDS[extname(file)];
  const packed = `${file}.gz`;
  const inside = file.startsWith(root + sep);
  if (!inside || kind === undefined || !statSync(packed, { throwIfNoEntry: false })?.isFile())
    return false;
  for (const [name, value] of Object.entries(headers ?? {}))
    response.setHeader(name, value as string);
  response.setHeader('Content-Type', kind);
  response.setHeader('Content-Encoding', 'gzip');
  response.setHeader('Vary', 'Accept-Encoding');
  // Names carry a hash but for the page and its service worker: always asked for anew, as before.
  response.setHeader('Cache-Control', 'no-cache');
  response.end(readFileSync(packed));
  return true;
}

function decoded(path: string): string | undefined {
  try {
    return decodeURIComponent(path);
  } catch {
    return undefined;
  }
}
