/** What a diagnosis keeps in the browser, on a shelf of the tests' own. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { keptSwings } from '../../packages/viz/src/worker/kept-swings.js';

/** As much of a browser's cache as is used. */
function shelf() {
  const texts = new Map<string, string>();
  const cache = {
    match: ({ url }: { url: string }) => {
      const text = texts.get(url);
      return Promise.resolve(text === undefined ? undefined : new Response(text));
    },
    put: async (place: string, response: Response) => {
      texts.delete(place);
      texts.set(place, await response.text());
    },
    keys: () => Promise.resolve([...texts.keys()].map((url) => ({ url }))),
    delete: ({ url }: { url: string }) => Promise.resolve(texts.delete(url)),
  };
  vi.stubGlobal('caches', { open: () => Promise.resolve(cache) });
  return texts;
}

afterEach(() => void vi.unstubAllGlobals());

/** Plays a swing of a scenario, as it were. */
async function play(scenario: string, name: string, signature = { 'up/left/total': 7.25 }) {
  const { memory, keep } = await keptSwings(scenario);
  memory.set(name, signature);
  await keep();
}

describe('the swings that a diagnosis has played', () => {
  it('are there the next time, those of the same scenario only', async () => {
    shelf();
    await play('one', 'swing');
    expect((await keptSwings('one')).memory.get('swing')).toEqual({ 'up/left/total': 7.25 });
    expect((await keptSwings('two')).memory.get('swing')).toBeUndefined();
  });

  it('are written only when there are more', async () => {
    const texts = shelf();
    await play('one', 'swing');
    texts.forEach((_, place) => texts.set(place, '[["swing",{}],["mark",{}]]'));
    const { keep } = await keptSwings('one');
    await keep();
    expect([...texts.values()][0]).toContain('mark');
  });

  it('are written a few at a time, until something else is asked, and the rest the next time', async () => {
    const texts = shelf();
    const { memory, keep } = await keptSwings('one');
    for (let i = 0; i < 1000; i++) memory.set(`swing ${i}`, { 'up/left/total': i });
    let asked = 0;
    await keep(() => ++asked < 3);
    expect(texts.size).toBe(2);
    const { memory: some } = await keptSwings('one');
    expect(some.size).toBeGreaterThan(100);
    expect(some.size).toBeLessThan(900);
    await keep();
    const { memory: all } = await keptSwings('one');
    expect(all.size).toBe(1000);
    expect(all.get('swing 999')).toEqual({ 'up/left/total': 999 });
  });

  it('are begun anew where they have become too many', async () => {
    const texts = shelf();
    const { memory, keep } = await keptSwings('one');
    for (let i = 0; i < 10_000; i++) memory.set(`swing ${i}`, {});
    await keep();
    expect((await keptSwings('one')).memory.size).toBe(0);
    expect(texts.size).toBe(0);
  });

  it('leave out what never came', async () => {
    shelf();
    await play('one', 'swing', { 'up/left/total': NaN });
    expect((await keptSwings('one')).memory.get('swing')).toEqual({});
  });

  it('are kept of the last few scenarios', async () => {
    const texts = shelf();
    for (let i = 0; i < 9; i++) await play(`aircraft ${i}`, 'swing');
    expect(texts.size).toBe(6);
    expect((await keptSwings('aircraft 0')).memory.get('swing')).toBeUndefined();
    expect((await keptSwings('aircraft 8')).memory.get('swing')).toBeDefined();
    // Written to again, it is among the last.
    await play('aircraft 3', 'another');
    for (let i = 10; i < 15; i++) await play(`aircraft ${i}`, 'swing');
    expect((await keptSwings('aircraft 3')).memory.size).toBe(2);
    expect((await keptSwings('aircraft 8')).memory.get('swing')).toBeUndefined();
  });

  it('are none where they are broken, or nothing can be kept', async () => {
    const texts = shelf();
    await play('one', 'swing');
    texts.forEach((_, place) => texts.set(place, '[["swing"'));
    const { memory, keep } = await keptSwings('one');
    expect(memory.get('swing')).toBeUndefined();
    memory.set('swing', {});
    await keep();
    expect((await keptSwings('one')).memory.get('swing')).toEqual({});
    vi.stubGlobal('caches', { open: () => Promise.reject(new Error('a private window')) });
    await play('one', 'swing');
    expect((await keptSwings('one')).memory.get('swing')).toBeUndefined();
  });
});
