/**
 * `node tests/bench/page/diagnosis.mjs [aircraft ...]`: how long the diagnosis bench takes, in the browser
 * that is on the machine: from a sheet laid on the desk to the first ranking, to the whole one, and to the
 * checks with it; then again after a look has been noted. `cold` with workers that start for it, `chosen` when the
 * bench has been open for as long as it takes to choose a file, `ahead` when it has been for long enough for the
 * swings that any sheet needs; and the same sheet after a reload.
 * The sheet is made here by simulation, of the aircraft with a dry bearing. Nothing fails for being slow:
 * the reader judges. Environment: TIMES=1 (tries of each), HOW=ahead.
 */
import * as core from '@wheelwell/core';
import { scenario, scenarioText } from '../tools.mjs';
import { openBrowser, serve } from './site.mjs';

/** ms: from asking to the first ranking, and to the whole. */
const TARGET = { first: 1000, whole: 3000 };
const TIMES = Number(process.env.TIMES ?? 3);
/** Of which it is measured. */
const HOW = (process.env.HOW ?? 'cold,chosen,ahead').split(',');
const PATIENCE = { timeout: 300_000 };
const FAULT = 'dry-bearing';
/** To find a sheet in a dialog, ms. */
const CHOOSING = 5000;

const names = process.argv.slice(2);
if (names.length === 0) names.push('hedgelark', 'fenwren', 'tarnswift');
const browser = await openBrowser();
const server = await serve();
const { address } = server;

/** What a hand with a stopwatch would have noted of the aircraft with a fault. */
function sheetOf(name) {
  const aircraft = scenario(name);
  const card =
    Object.keys(aircraft.cards).find((c) => aircraft.cards[c].faults.length === 0) ?? 'healthy';
  const [on] = Object.values(aircraft.units).map((u) => u.leg);
  const run = core.simulate(aircraft, { card, faults: [{ fault: FAULT, on, severity: 0.6 }] });
  const swings = core.expectedSwings(run).map(({ direction, times }) => ({
    ...{ direction, conditions: {}, order: [], gauges: {}, remarks: {}, recordings: [], note: '' },
    times: Object.fromEntries(
      Object.entries(times).map(([unit, of]) => [
        unit,
        Object.fromEntries(
          Object.entries(of).map(([event, at]) => [
            event,
            { at: Math.round(at * 10) / 10, error: 0.2 },
          ]),
        ),
      ]),
    ),
  }));
  return core.writeObservations({
    ...{ aircraft: aircraft.title, scenario: '', card, date: '', by: '', note: '' },
    ...{ readingError: 0.2, conditions: {}, swings },
  });
}

/** Drops a file on the page. */
const drop = (page, name, text) =>
  page.evaluate(
    ([file, content]) => {
      // Runs in the page.
      const { DataTransfer, DragEvent, File, window, performance } = globalThis;
      const carried = new DataTransfer();
      carried.items.add(new File([content], file, { type: 'text/yaml' }));
      window.asked = performance.now();
      window.dispatchEvent(new DragEvent('drop', { dataTransfer: carried, cancelable: true }));
    },
    [name, text],
  );

/** Waits in the page itself for the first ranking, the whole and its checks, ms since it was asked. */
const watch = (page) =>
  page.evaluate(() => {
    // Runs in the page.
    const { document, performance, requestAnimationFrame, window } = globalThis;
    return new Promise((done) => {
      let first;
      let whole;
      const look = () => {
        const app = document.querySelector('ww-app');
        const { diagnosis } = app.store.state;
        const bench = app.shadowRoot.querySelector('ww-diagnosis')?.shadowRoot;
        const shown = bench?.querySelector('.ranking li') != null && diagnosis.share > 0;
        if (shown) first ??= performance.now() - window.asked;
        if (shown && diagnosis.whole) whole ??= performance.now() - window.asked;
        if (shown && !diagnosis.busy && (diagnosis.whole || diagnosis.failure !== ''))
          done({ first, whole, checks: performance.now() - window.asked });
        else requestAnimationFrame(look);
      };
      requestAnimationFrame(look);
    });
  });

/** Notes a look that found nothing, and waits again. */
async function again(page) {
  await page.evaluate(() => {
    // Runs in the page.
    const { document, performance, window } = globalThis;
    const { store, works } = document.querySelector('ww-app');
    const [line] = store.state.diagnosis.ranking.us.checks.filter((c) => c.conditions == null);
    window.asked = performance.now();
    works.diagnosis.look(line, false);
  });
  await page.waitForFunction(
    () => globalThis.document.querySelector('ww-app').store.state.diagnosis.busy,
  );
  return watch(page);
}

/** The page with this aircraft on show. */
async function openOn(page, name) {
  await page.goto(address);
  await page.locator('ww-bay table').waitFor(PATIENCE);
  await drop(page, `${name}/${name}.yaml`, scenarioText(name).text);
  await page.waitForTimeout(1500);
  await page.locator('[data-busy]').waitFor({ state: 'detached', ...PATIENCE });
}

/** Lays the sheet on the bench's desk, and waits. */
async function explained(page, sheet) {
  await page.evaluate(() =>
    globalThis.document.querySelector('ww-app').store.set({ bench: 'diagnosis' }),
  );
  await drop(page, 'seen.yaml', sheet);
  return watch(page);
}

const middle = (all) => Math.round([...all].sort((a, b) => a - b)[Math.floor(all.length / 2)]);
const rows = {};
for (const name of names) {
  const sheet = sheetOf(name);
  for (const how of HOW) {
    const found = { first: [], whole: [], checks: [], again: [], reloaded: [] };
    for (let i = 0; i < TIMES; i++) {
      const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
      const page = await context.newPage();
      await openOn(page, name);
      if (how !== 'cold')
        await page.getByRole('button', { name: 'Diagnosis', exact: true }).click();
      if (how === 'chosen') await page.waitForTimeout(CHOOSING);
      if (how === 'ahead')
        await page.waitForFunction(
          () => {
            const { diagnosis } = globalThis.document.querySelector('ww-app').store.state;
            return diagnosis.share >= 1 && !diagnosis.busy;
          },
          undefined,
          PATIENCE,
        );
      const { first, whole, checks } = await explained(page, sheet);
      found.first.push(first);
      found.whole.push(whole);
      found.checks.push(checks);
      found.again.push((await again(page)).whole);
      await openOn(page, name);
      found.reloaded.push((await explained(page, sheet)).whole);
      await context.close();
    }
    rows[`${name}, ${how}`] = {
      'first ranking, ms': middle(found.first),
      'whole, ms': middle(found.whole),
      'checks, ms': middle(found.checks),
      'again after a look, ms': middle(found.again),
      'whole after a reload, ms': middle(found.reloaded),
      target: `${TARGET.first} / ${TARGET.whole}`,
    };
  }
}
console.table(rows);
await browser.close();
await server.close();
