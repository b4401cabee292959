/**
 * `node tests/bench/page/follow.mjs [scenario ...]`: from the change of a figure, or of a fault's severity,
 * to the frame that shows chart and bay of the run it leads to, at 1280 x 800, for every demo. Beside
 * the time on the clock stands the processor's time of all of the browser's processes, from the change
 * until flags and clearances are there, too: that depends less on what else the machine does. So does
 * the ratio of it all to the time the simulation itself takes. Nothing fails for being slow.
 */
import { openBrowser, serve } from './site.mjs';

/** Changes that count, and those before them that warm the page up. */
const EDITS = 24;
const WARM = 16;
/** ms. */
const TARGET = 100;

const chosen = process.argv.slice(2);
const aircraft =
  chosen.length > 0
    ? chosen
    : ['hedgelark/hedgelark.yaml', 'fenwren/fenwren.yaml', 'tarnswift/tarnswift.yaml'];
const browser = await openBrowser();
const server = await serve();
const { address } = server;
const whole = await browser.newBrowserCDPSession();

/** Processor's time of all processes of the browser so far, ms. */
async function processTime() {
  const { processInfo } = await whole.send('SystemInfo.getProcessInfo');
  return 1000 * processInfo.reduce((sum, p) => sum + p.cpuTime, 0);
}

/** Runs in the page: moves a slider, and tells the times until its run is drawn, judged, and drawn again. */
function follow({ view, slider, value }) {
  const { document, performance, requestAnimationFrame, MessageChannel, Event } = globalThis;
  const app = document.querySelector('ww-app');
  const inside = (name) => app.shadowRoot.querySelector(name);
  const input = inside(view).shadowRoot.querySelector(slider);
  return new Promise((done) => {
    const started = performance.now();
    const since = () => performance.now() - started;
    const former = app.store.state.picture.run;
    const times = {};
    /** After the frame that is due has been painted. */
    const painted = (then) =>
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = then;
        port2.postMessage(0);
      });
    const leave = app.store.watch(() => {
      const { picture, busy } = app.store.state;
      if (picture.run === former) return;
      if (times.came === undefined) {
        times.came = since();
        times.simulated = picture.elapsed;
        void Promise.all([inside('ww-bay').updateComplete, inside('ww-order-chart').updateComplete])
          .then(() => (times.drawn = since()))
          .then(() => painted(() => (times.painted = since())));
      }
      if (busy || !picture.judged) return;
      leave();
      painted(() => {
        times.judged = since();
        done(times);
      });
    });
    input.value = value;
    input.dispatchEvent(new Event('input', { bubbles: true, composed: true }));
  });
}

/** The oil's free air: a figure that every aircraft has and that every run feels. */
async function figure(page) {
  await page.getByRole('tab', { name: /^Parameters/ }).click();
  const row = page.locator('ww-parameters [data-path="fluid.free-air"]');
  await row.locator('input').first().focus();
  await row.locator('input[type=range]').waitFor();
  return (i) => ({ view: 'ww-parameters', slider: 'input[type=range]', value: String(20 + i) });
}

async function severity(page) {
  await page.getByRole('tab', { name: /^Faults/ }).click();
  await page.locator('ww-fault-drawer .add').click();
  await page.locator('ww-fault-drawer input[type=range]').waitFor();
  await page.locator('[data-busy]').waitFor({ state: 'detached' });
  return (i) => ({
    view: 'ww-fault-drawer',
    slider: 'input[type=range]',
    value: String(0.3 + i / 200),
  });
}

const rows = {};
const errors = [];
for (const file of aircraft) {
  for (const [name, prepare] of Object.entries({ figure, severity })) {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    page.on('pageerror', (e) => errors.push(e.message));
    await page.goto(address);
    await page.locator('ww-bay table').waitFor();
    await page.locator('[data-choose=aircraft]').selectOption(file);
    await page.waitForTimeout(1500);
    await page.locator('[data-busy]').waitFor({ state: 'detached' });
    const change = await prepare(page);
    const all = [];
    let spent = 0;
    for (let i = 0; i < WARM + EDITS; i++) {
      const before = await processTime();
      const times = await page.evaluate(follow, change(i));
      await page.waitForTimeout(60);
      if (i < WARM) continue;
      spent += (await processTime()) - before;
      all.push(times);
    }
    const at = (key, share) => {
      const sorted = all.map((t) => t[key]).sort((a, b) => a - b);
      return Math.round(sorted[Math.floor(share * (sorted.length - 1))]);
    };
    rows[`${file.split('/')[0]}, ${name}`] = {
      simulating: at('simulated', 0.5),
      'picture came': at('came', 0.5),
      'views made': at('drawn', 0.5),
      'painted, ms': at('painted', 0.5),
      '10 %': at('painted', 0.1),
      '90 %': at('painted', 0.9),
      target: `<= ${TARGET}`,
      met: at('painted', 0.5) <= TARGET,
      'judged too': at('judged', 0.5),
      'processor, ms': Math.round(spent / EDITS),
    };
    await page.close();
  }
}
console.table(rows);
if (errors.length > 0) console.log(errors);
await browser.close();
await server.close();
