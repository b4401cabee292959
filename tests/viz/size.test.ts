/** How much a visitor loads: everything the built page consists of, as `npm start` sends it. */
import { readdirSync, readFileSync } from 'node:fs';
import { get } from 'node:http';
import type { IncomingHttpHeaders } from 'node:http';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { preview } from 'vite';
import type { PreviewServer } from 'vite';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { build, PLACE, VIZ } from './browser.js';

/**
 * Bytes of all that is kept on the device. The first view is held to 350 kB by late.test.ts: three seconds
 * at 1 Mbit/s, what a hangar's edge of a network gives (common practice, no source). The benches, the
 * diagnosis and lessons, which come after it, are 82 kB, one of which came with stiff locks and legs that bounce,
 * half of one with a sheet to try for each demo, half of one with runs that are held and an order of play,
 * one with steps in what is squeezed in, which halve their number, two with two faults at once, looked for among
 * all pairs, and runs that are shown quickly first, and two and a half with the order of a run beside a held one's,
 * which is kept over a reload, with pictures of which only what is new is sent, and swings that are kept a few at a time.
 */
const MOST = 428_000;

let server: PreviewServer;
let address = '';

interface Sent {
  readonly headers: IncomingHttpHeaders;
  readonly body: Buffer;
}

/** As it comes over the line. */
function sent(path: string, accept = 'gzip, deflate, br'): Promise<Sent> {
  return new Promise((done, fail) => {
    get(`${address}${path}`, { headers: { 'accept-encoding': accept } }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () => done({ headers: response.headers, body: Buffer.concat(parts) }));
    }).on('error', fail);
  });
}

beforeAll(async () => {
  await build();
  server = await preview({
    root: VIZ,
    logLevel: 'warn',
    build: { outDir: PLACE },
    preview: { host: '127.0.0.1', port: 0 },
  });
  const at = server.httpServer.address();
  address = `http://127.0.0.1:${typeof at === 'object' && at !== null ? at.port : 0}/`;
});
afterAll(() => server.close());

const files = (): string[] =>
  readdirSync(PLACE, { recursive: true, withFileTypes: true })
    .filter((f) => f.isFile() && !f.name.endsWith('.gz'))
    .map((f) => join(f.parentPath, f.name).slice(PLACE.length + 1));

it(`the whole page, demos and all, is ${MOST / 1000} kB or less as it is sent`, async () => {
  let sum = 0;
  for (const file of files()) {
    const { headers, body } = await sent(file);
    expect(headers['content-encoding'], file).toBe('gzip');
    expect(gunzipSync(body).equals(readFileSync(join(PLACE, file))), file).toBe(true);
    sum += body.byteLength;
  }
  expect(files().length).toBeGreaterThan(3);
  expect(sum).toBeLessThanOrEqual(MOST);
});

it('is sent under the same policy, packed or not, and whole to who takes no packed files', async () => {
  const packed = await sent('');
  const plain = await sent('', 'identity');
  expect(plain.headers['content-encoding']).toBeUndefined();
  expect(plain.body.toString()).toBe(gunzipSync(packed.body).toString());
  const kind = ({ headers }: Sent): string => headers['content-type']?.split(';')[0] ?? '';
  expect(kind(packed)).toBe('text/html');
  expect(kind(plain)).toBe('text/html');
  const policy = packed.headers['content-security-policy'];
  expect(plain.headers['content-security-policy']).toBe(policy);
  expect(policy).toContain("default-src 'none'");
});

it.each(['../package.json', '..%2f..%2fpackage.json', '%', 'assets'])(
  'has nothing but the page to send for %s',
  async (path) => {
    const { headers, body } = await sent(path);
    const text = (headers['content-encoding'] === 'gzip' ? gunzipSync(body) : body).toString();
    expect(text).not.toContain('"workspaces"');
    expect(text).not.toContain('"dependencies"');
  },
);
