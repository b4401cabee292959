import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { EditWork } from '../../packages/viz/src/model/edits.js';
import { heldOf } from '../../packages/viz/src/model/held.js';
import { decode } from '../../packages/viz/src/model/kept-text.js';
import { KeepWork } from '../../packages/viz/src/model/kept.js';
import type { Drawer } from '../../packages/viz/src/model/kept.js';
import type { Store } from '../../packages/viz/src/model/store.js';
import type { ParameterFacts } from '../../packages/viz/src/worker/parameters-message.js';
import { drop, keep, settled, Site } from './browser.js';
import { TEXT } from './demo.js';
import { cutOff, violations } from './faultless.js';
import { emptyStore } from './opened.js';

const FLOW: ParameterFacts = {
  path: 'components.ground-supply.flow',
  title: 'flow setting',
  why: '',
  kind: 'number',
  written: '4 gal/min',
};
const DEMO = { file: 'hedgelark/hedgelark.yaml', text: TEXT };

/** A browser's storage that any number of pages share. */
class Cabinet {
  readonly kept = new Map<string, string>();
  readonly open = new Set<string>();
  full = false;

  page(id: string): { store: Store; edit: EditWork; work: KeepWork } {
    const drawer: Drawer = {
      names: () => [...this.kept.keys()],
      get: (name) => this.kept.get(name) ?? null,
      put: (name, text) => {
        if (this.full) return 'it is full';
        this.kept.set(name, text);
        return '';
      },
      remove: (name) => void this.kept.delete(name),
      others: (own) => Promise.resolve(new Set([...this.open].filter((n) => n !== own))),
    };
    const store = emptyStore();
    const work = new KeepWork(store, drawer, [DEMO], id);
    this.open.add(`work.${id}`);
    store.open(DEMO);
    return { store, edit: new EditWork(store), work };
  }

  leave(id: string): void {
    this.open.delete(`work.${id}`);
  }
}

describe('work in progress', () => {
  it('has with it the run that is held, and what of it never came', async () => {
    const cabinet = new Cabinet();
    const first = cabinet.page('a');
    first.store.setFaults([{ fault: 'uplock-misrigged', on: 'left-uplock', severity: 1 }]);
    const { picture } = first.store.state;
    const held = heldOf(picture!);
    expect(held.timings.some((t) => Number.isNaN(t.total))).toBe(true);
    first.store.set({ held });
    first.store.setFaults([]);
    first.work.flush();
    cabinet.leave('a');

    const { store, work } = cabinet.page('b');
    await work.start();
    const [offer] = store.state.kept.offers;
    work.restore(offer);
    expect(store.state.held).toEqual(held);
    expect(store.state.faults).toEqual([]);
    // Anything else in its place is not taken.
    const text = cabinet.kept.get('work.b')!;
    expect(decode(text)).toBeDefined();
    for (const wrong of ['"order":[{}]', '"order":3'])
      expect(decode(text.replace(/"order":\[.*?\]/, wrong))).toBeUndefined();
  });

  it('is offered after the page was left, and comes back as it was', async () => {
    const cabinet = new Cabinet();
    const first = cabinet.page('a');
    first.edit.put(FLOW, '3 gal/min');
    first.store.setFaults([{ fault: 'free-air', on: 'fluid', severity: 0.5 }]);
    const reading = { on: 'left', event: 'up and locked', since: '', time: 9, error: 0.2 };
    first.store.set({ measured: [reading] });
    first.store.seek(5);
    first.work.flush();
    cabinet.leave('a');

    const { store, edit, work } = cabinet.page('b');
    await work.start();
    const [offer] = store.state.kept.offers;
    expect(store.state.kept.offers).toHaveLength(1);
    expect(offer?.title).toContain('Hedgelark');
    if (offer !== undefined) work.restore(offer);
    const { edits, faults, measured, time, picture, kept } = store.state;
    expect({ edits, faults, measured, time }).toEqual({
      edits: first.store.state.edits,
      faults: first.store.state.faults,
      measured: [reading],
      time: 5,
    });
    expect(picture?.timings).toEqual(first.store.state.picture?.timings);
    expect(kept.offers).toEqual([]);
    expect([...cabinet.kept.keys()]).toEqual(['work.b']);
    // Each change can still be taken back, the latest first, and be made again.
    edit.undo();
    expect(store.state.faults).toEqual([]);
    expect(store.state.edits).toEqual([{ path: FLOW.path, value: '3 gal/min' }]);
    edit.undo();
    expect(store.state.edits).toEqual([]);
    edit.redo();
    expect(store.state.edits).toEqual([{ path: FLOW.path, value: '3 gal/min' }]);
  });

  it('is not offered once it was saved, taken back or discarded', async () => {
    const cabinet = new Cabinet();
    const { store, edit } = cabinet.page('a');
    expect(cabinet.kept.size).toBe(0);
    edit.put(FLOW, '3 gal/min');
    expect(cabinet.kept.size).toBe(1);
    edit.saved(store.state.edits, 'hedgelark.yaml');
    expect(cabinet.kept.size).toBe(0);
    edit.put(FLOW, '3.5 gal/min');
    edit.undo();
    edit.undo();
    expect(cabinet.kept.size).toBe(0);
    edit.redo();
    cabinet.leave('a');
    const next = cabinet.page('b');
    await next.work.start();
    const [offer] = next.store.state.kept.offers;
    if (offer !== undefined) next.work.discard(offer);
    expect(cabinet.kept.size).toBe(0);
  });

  it('of a page that is still open is left alone', async () => {
    const cabinet = new Cabinet();
    const one = cabinet.page('a');
    one.edit.put(FLOW, '3 gal/min');
    const two = cabinet.page('b');
    await two.work.start();
    expect(two.store.state.kept.offers).toEqual([]);
    two.edit.put(FLOW, '5 gal/min');
    expect([...cabinet.kept.keys()]).toEqual(['work.a', 'work.b']);
    expect(cabinet.kept.get('work.a')).toContain('3 gal/min');
  });

  it('stays on offer when another file is opened', () => {
    const { store, edit, work } = new Cabinet().page('a');
    edit.put(FLOW, '3 gal/min');
    store.open({ file: 'other.yaml', text: TEXT });
    expect(store.state.edits).toEqual([]);
    const [offer] = store.state.kept.offers;
    expect(offer?.kept.edits).toEqual([{ path: FLOW.path, value: '3 gal/min' }]);
    if (offer !== undefined) work.restore(offer);
    expect(store.state.edits).toEqual([{ path: FLOW.path, value: '3 gal/min' }]);
    expect(store.state.source?.file).toBe(DEMO.file);
  });

  it.each([
    ['no JSON', '{'],
    ['another version', '{"version":2}'],
    ['a list', '[]'],
    ['a wrong shape', '{"version":1,"file":"a","edits":[{"path":3}]}'],
    ['nothing', ''],
  ])('that is %s is told and put aside', async (_, text) => {
    const cabinet = new Cabinet();
    cabinet.kept.set('work.old', text);
    const { store, work } = cabinet.page('a');
    await work.start();
    expect(store.state.picture).toBeDefined();
    expect(store.state.kept).toMatchObject({ offers: [] });
    expect(store.state.kept.trouble).toContain('put aside');
    expect([...cabinet.kept]).toEqual([['aside.old', text]]);
  });

  it('with a step that is none is put aside, without steps it is offered', async () => {
    const cabinet = new Cabinet();
    const { edit } = cabinet.page('a');
    edit.put(FLOW, '3 gal/min');
    cabinet.leave('a');
    const { past, ...former } = JSON.parse(cabinet.kept.get('work.a') ?? '') as { past: object[] };
    expect(past).toHaveLength(1);
    for (const broken of [{ kind: 'figures' }, { before: 'none' }, { what: 3 }])
      cabinet.kept.set(
        `work.${Object.keys(broken)[0]}`,
        JSON.stringify({ ...former, past: [{ ...past[0], ...broken }] }),
      );
    cabinet.kept.set('work.a', JSON.stringify(former));
    const { store, work } = cabinet.page('b');
    await work.start();
    expect(store.state.kept.offers.map((o) => o.name)).toEqual(['work.a']);
    expect([...cabinet.kept.keys()].filter((k) => k.startsWith('aside.'))).toHaveLength(3);
  });

  it('that the browser cannot keep is told', () => {
    const cabinet = new Cabinet();
    const { store, edit } = cabinet.page('a');
    cabinet.full = true;
    edit.put(FLOW, '3 gal/min');
    expect(store.state.kept.trouble).toBe('it is full');
    expect(store.state.edits).toHaveLength(1);
  });
});

describe('the page', () => {
  let site: Site;
  beforeAll(async () => {
    site = await Site.open();
  });
  afterAll(() => site.close());

  const times = (page: Page): Promise<string[]> =>
    page.locator('ww-times tr.total td').allTextContents();

  it('offers after a reload what was changed, saves it as a file, and forgives hostile text', async () => {
    const { page, said } = await site.visit();
    await page.getByRole('tab', { name: /Parameters/ }).click();
    await page.getByRole('searchbox', { name: 'Find a figure' }).fill('ground supply');
    const field = page.locator(`[id="${FLOW.path.replaceAll('.', '_')}"]`);
    await field.fill('"><img src=x onerror=alert(1)>');
    await field.press('Enter');
    await page.locator(`[data-path="${FLOW.path}"] [role=alert]`).waitFor();
    expect(await page.locator('ww-parameters img').count()).toBe(0);
    await field.fill('3');
    await field.press('Enter');
    await settled(page);
    const before = await times(page);

    // Without a picker of its own the browser saves among its downloads.
    await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
    await page.reload();
    await page.locator('ww-bay table').waitFor();
    await settled(page);
    const offer = page.getByRole('region', { name: 'Kept work' });
    await offer.waitFor();
    expect(await offer.textContent()).toContain('1 changed figure');
    expect(await violations(page)).toEqual([]);
    for (const [width, height] of [
      [1280, 800],
      [820, 1180],
      [390, 844],
    ] as const) {
      await page.setViewportSize({ width, height });
      // The drawings follow the window a moment later.
      await expect.poll(() => cutOff(page)).toEqual([]);
      await keep(page, `kept-offer-${width}`);
    }
    await page.setViewportSize({ width: 1280, height: 800 });
    await page.getByRole('button', { name: /^Restore/ }).click();
    await settled(page);
    expect(await times(page)).toEqual(before);
    await offer.waitFor({ state: 'detached' });

    await page.evaluate(() =>
      Object.defineProperty(window, 'showSaveFilePicker', { value: undefined }),
    );
    const coming = page.waitForEvent('download');
    await page.keyboard.press('Control+s');
    const stream = await (await coming).createReadStream();
    const parts: Buffer[] = [];
    for await (const part of stream) parts.push(part as Buffer);
    const text = Buffer.concat(parts).toString();
    expect(text).toBe(TEXT.replace('    flow: 4 gal/min', '    flow: 3 gal/min'));
    await drop(page, ['saved.yaml', text]);
    expect(await times(page)).toEqual(before);
    expect(said).toEqual([]);
  });
});
