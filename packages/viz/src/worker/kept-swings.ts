/**
 * The swings that diagnoses have played, kept in the browser from one visit to the next, so that a sheet
 * that is looked at again, or has grown by a check, is explained at once.
 */
import type { Signature, SignatureMemory } from '@wheelwell/core';

const SHELF = 'wheelwell-swings';
/** Of so many scenarios, those asked of last; more swings than these of one are begun anew: some 30 MB. */
const MOST = 6;
const FULL = 10_000;
/** So many are written at a time: whoever asks meanwhile waits for no more than these to be put in words, some 30 ms. */
const BATCH = 200;

export interface KeptSwings {
  readonly memory: SignatureMemory;
  /**
   * Writes what has come to it, for as long as it is told to go on; the rest is written the next time. Where nothing
   * can be kept (a private window, a full disk) nothing is.
   */
  readonly keep: (goOn?: () => boolean) => Promise<void>;
}

type Batch = readonly (readonly [string, Signature])[];

/** @param scenario as written, with its changes */
export async function keptSwings(scenario: string): Promise<KeptSwings> {
  const memory = new Map<string, Signature>();
  try {
    const place = await placeOf(scenario);
    const shelf = await caches.open(SHELF);
    const own = (await shelf.keys()).filter(({ url }) => url.startsWith(`${place}/`));
    const batches = await Promise.all(own.map((at) => batchAt(shelf, at)));
    if (batches.reduce((sum, batch) => sum + batch.length, 0) < FULL)
      for (const batch of batches) for (const [key, signature] of batch) memory.set(key, signature);
    else await Promise.all(own.map((at) => shelf.delete(at)));
    let known = memory.size;
    let next = own.length;
    const keep = async (goOn = () => true): Promise<void> => {
      if (memory.size === known) return;
      while (known < memory.size && goOn()) {
        const batch = [...memory].slice(known, known + BATCH);
        known += batch.length;
        await shelf.put(`${place}/${next++}`, new Response(JSON.stringify(batch, finite)));
        // What was asked meanwhile is heard first.
        await new Promise((resume) => setTimeout(resume, 0));
      }
      await letGo(shelf);
    };
    return { memory, keep: (goOn) => keep(goOn).catch(() => undefined) };
  } catch {
    return { memory, keep: () => Promise.resolve() };
  }
}

/** None where it is broken. */
async function batchAt(shelf: Cache, at: Request): Promise<Batch> {
  try {
    return ((await (await shelf.match(at))?.json()) ?? []) as Batch;
  } catch {
    return [];
  }
}

/** Of all but the scenarios written to last. */
async function letGo(shelf: Cache): Promise<void> {
  const all = await shelf.keys();
  const placeOfBatch = ({ url }: Request): string => url.slice(0, url.lastIndexOf('/'));
  const last = new Set([...new Set(all.map(placeOfBatch).reverse())].slice(0, MOST));
  await Promise.all(all.filter((at) => !last.has(placeOfBatch(at))).map((at) => shelf.delete(at)));
}

/** What is no number is what is not there. */
const finite = (_: string, value: unknown): unknown =>
  typeof value === 'number' && !Number.isFinite(value) ? undefined : value;

/** An address that nobody asks for, of this scenario and this build of the worker: another one plays other swings. */
async function placeOf(scenario: string): Promise<string> {
  // In a name of its own: what stands with it in one call the bundler takes for a file to bring along.
  const build = import.meta.url;
  const written = new TextEncoder().encode(`${build} ${scenario}`);
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', written));
  const name = Array.from(hash, (b) => b.toString(16).padStart(2, '0')).join('');
  return new URL(`swings/${name}`, build).href;
}
