/**
 * `node tests/bench/page/fps.mjs [aircraft]`: frames per second while a swing plays, bay and order
 * chart in sight, at 1280 x 800, in the browser that is on the machine and without its GPU. Frames are
 * counted by requestAnimationFrame over five seconds in which legs and doors move. Beside them stands
 * the processor's time that a frame costs the page's main thread and all of the browser's processes:
 * that hardly depends on what else the machine does. Nothing fails for being slow: the reader judges.
 */
import { openBrowser, serve } from './site.mjs';

/** Real time over which frames are counted, ms, and how often. */
const LENGTH = 5000;
const TIMES = 3;

const aircraft = process.argv[2] ?? 'hedgelark/hedgelark.yaml';
const browser = await openBrowser();
const server = await serve();
const { address } = server;

/** Gaps between the frames in the given time, ms. */
function count(length) {
  // Runs in the page.
  const { requestAnimationFrame } = globalThis;
  return new Promise((done) => {
    const gaps = [];
    let first;
    let last;
    const frame = (now) => {
      if (last !== undefined) gaps.push(now - last);
      first ??= now;
      last = now;
      if (now - first < length) requestAnimationFrame(frame);
      else done(gaps);
    };
    requestAnimationFrame(frame);
  });
}

const whole = await browser.newBrowserCDPSession();

/** Processor's time of all processes of the browser so far, s. */
async function processTimes() {
  const { processInfo } = await whole.send('SystemInfo.getProcessInfo');
  return processInfo.reduce((sum, p) => sum + p.cpuTime, 0);
}

async function once(page, cdp) {
  // From the moment the legs leave: a second after the lever.
  await page.keyboard.press('Home');
  await page.waitForTimeout(300);
  await page.keyboard.press(' ');
  await page.waitForTimeout(1200);
  const before = await cdp.send('Performance.getMetrics');
  const busy = await processTimes();
  const gaps = await page.evaluate(count, LENGTH);
  const after = await cdp.send('Performance.getMetrics');
  const busier = await processTimes();
  await page.keyboard.press(' ');
  const spent = (name) =>
    after.metrics.find((m) => m.name === name).value -
    before.metrics.find((m) => m.name === name).value;
  const sum = gaps.reduce((a, b) => a + b, 0);
  const sorted = [...gaps].sort((a, b) => a - b);
  const perFrame = (name) => Number(((1000 * spent(name)) / gaps.length).toFixed(2));
  return {
    'frames per second': Number(((1000 * gaps.length) / sum).toFixed(1)),
    'longest of 100 frames, ms': Number(sorted[Math.floor(0.99 * sorted.length)].toFixed(1)),
    'script, ms a frame': perFrame('ScriptDuration'),
    'style, ms': perFrame('RecalcStyleDuration'),
    'layout, ms': perFrame('LayoutDuration'),
    'main thread, ms': perFrame('TaskDuration'),
    'all processes, ms': Number(((1000 * (busier - busy)) / gaps.length).toFixed(1)),
  };
}

const rows = {};
for (const where of ['bay and chart', 'large']) {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(address);
  await page.locator('ww-bay table').waitFor();
  await page.locator('[data-choose=aircraft]').selectOption(aircraft);
  await page.waitForTimeout(500);
  await page.locator('[data-busy]').waitFor({ state: 'detached' });
  await page.locator('h1').click();
  if (where === 'large') await page.keyboard.press('l');
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Performance.enable', { timeDomain: 'threadTicks' });
  await once(page, cdp);
  for (let i = 1; i <= TIMES; i++) rows[`${where}, ${i}`] = await once(page, cdp);
  await page.close();
}
console.log(`${aircraft}, 1280 x 800`);
console.table(rows);
await browser.close();
await server.close();
