/** What a diagnosis keeps in the browser, on a shelf of the tests' own. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { keptSwings } from '../../packages/viz/src/worker/kept-swings.js';

/** As much of a browser's cache as is used. */
function shelf() {
  const texts = new Map<string, string>();
  const cache = {
    match: (place: string) => {
      const text = texts.get(place);
      return Promise.resolve(text === undefined ? undefined : new Response(text));
    },
    put: async (place: string, response: Response) => {
      texts.delete(place);
      texts.set(place, await response.text());
    },
    keys: () => Promise.resolve([...texts.keys()]),
    delete: (place: string) => Promise.resolve(texts.delete(place)),
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
  });

  it('are none where they are broken, or nothing can be kept', async () => {
    const texts = shelf();
    await play('one', 'swing');
    texts.forEach((_, place) => texts.set(place, '[["swing"'));
    expect((await keptSwings('one')).memory.get('swing')).toBeUndefined();
    vi.stubGlobal('caches', { open: () => Promise.reject(new Error('a private window')) });
    await play('one', 'swing');
    expect((await keptSwings('one')).memory.get('swing')).toBeUndefined();
  });
});
