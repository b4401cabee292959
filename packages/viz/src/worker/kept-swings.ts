/**
 * The swings that diagnoses have played, kept in the browser from one visit to the next, so that a sheet
 * that is looked at again, or has grown by a check, is explained at once.
 */
import type { Signature, SignatureMemory } from '@wheelwell/core';

const SHELF = 'wheelwell-swings';
/** Of so many scenarios, those asked of last; more swings than these of one are begun anew: some 30 MB. */
const MOST = 6;
const FULL = 10_000;

export interface KeptSwings {
  readonly memory: SignatureMemory;
  /** Writes what has come to it. Where nothing can be kept (a private window, a full disk) nothing is. */
  readonly keep: () => Promise<void>;
}

/** @param scenario as written, with its changes */
export async function keptSwings(scenario: string): Promise<KeptSwings> {
  const memory = new Map<string, Signature>();
  try {
    const place = await placeOf(scenario);
    const shelf = await caches.open(SHELF);
    const found = await shelf.match(place);
    const all = ((await found?.json()) ?? []) as readonly (readonly [string, Signature])[];
    if (all.length < FULL) for (const [key, signature] of all) memory.set(key, signature);
    let known = memory.size;
    return {
      memory,
      keep: async () => {
        if (memory.size === known) return;
        known = memory.size;
        try {
          await shelf.put(place, new Response(JSON.stringify([...memory], finite)));
          const places = await shelf.keys();
          await Promise.all(places.slice(0, -MOST).map((old) => shelf.delete(old)));
        } catch {
          return;
        }
      },
    };
  } catch {
    return { memory, keep: () => Promise.resolve() };
  }
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
