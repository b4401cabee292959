/** How much a visitor loads: everything the built page consists of, compressed as a server does. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { Site } from './browser.js';

const PLACE = fileURLToPath(new URL('../artefacts/page/some/place', import.meta.url));
/**
 * Bytes. The aim is 350 kB: three seconds at 1 Mbit/s, what a hangar's edge of a network gives (common
 * practice, no source). All views together are at 391 kB today; this keeps them from growing further.
 */
const MOST = 395_000;

let site: Site;

beforeAll(async () => {
  site = await Site.open();
});
afterAll(() => site.close());

it('the whole page, demos and all, is 395 kB or less compressed', () => {
  const files = readdirSync(PLACE, { recursive: true, withFileTypes: true }).filter((f) =>
    f.isFile(),
  );
  const sizes = files.map((f) => gzipSync(readFileSync(join(f.parentPath, f.name))).byteLength);
  expect(files.length).toBeGreaterThan(3);
  expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThanOrEqual(MOST);
});
