/**
 * Diagnosis against cases it has not seen: a healthy aircraft within its tolerances (by another law and
 * other figures than the inference's own), in four of five one random fault above what can be noticed, and
 * what a mechanic would note, on several kinds of sheets. Told: how often the true cause, or a group it
 * cannot be told from, comes first and among the first three; how often healthy is called healthy; how far
 * stated probabilities are from what comes true; how many checks it then takes.
 *
 * Environment: AIRCRAFT=fenwren,... CASES=300 (for each) HALF=tuning or hold-out, ONLY=7,12 (numbers of
 * cases), LIST=1 (every case that went wrong), LOOP=0 (no checks), OUT=file (all results as JSON),
 * WRONG=1 (one entry of every sheet is wrong), BOTH=1 (two faults at once; found is who finds either).
 */
import { writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { MessageChannel } from 'node:worker_threads';
import Tinypool from 'tinypool';
import { halfOf, kindOf } from '../diagnosis/case.mjs';
import { buildKey } from '../diagnosis/kept.mjs';
import { calibration, confusion, grouped, missLine, rowsOf } from '../diagnosis/tally.mjs';

const { env } = process;
const AIRCRAFT = (env.AIRCRAFT ?? 'hedgelark,fenwren,tarnswift').split(',');
const CASES = Number(env.CASES ?? 40);
const ONLY = env.ONLY?.split(',').map(Number);
const THREADS = Math.min(2, cpus().length);

/** Numbers of the cases that are wanted, by the conditions they share. */
function wanted() {
  const all = ONLY ?? Array.from({ length: CASES }, (_, i) => i);
  const own = all.filter((i) => env.HALF === undefined || env.HALF === halfOf(i));
  return grouped(own, (i) => kindOf(i).situation);
}

export default async ({ scenarioText }) => {
  const pool = new Tinypool({
    filename: new URL('../diagnosis/thread.mjs', import.meta.url).href,
    minThreads: THREADS,
    maxThreads: THREADS,
  });
  const start = performance.now();
  const tasks = AIRCRAFT.flatMap((name) => {
    const { file, text } = scenarioText(name);
    const key = buildKey(text);
    return [...wanted()].map(async ([situation, cases]) => {
      const { port1, port2 } = new MessageChannel();
      port1.on('message', tell);
      port1.unref();
      const how = { loop: env.LOOP !== '0', wrong: env.WRONG === '1', both: env.BOTH === '1' };
      const job = { name, file, text, situation, cases, key, port: port2, ...how };
      return pool.run(job, { transferList: [port2] });
    });
  });
  const results = (await Promise.all(tasks)).flat().sort((a, b) => a.i - b.i);
  await pool.destroy();
  process.stderr.write('\n');
  if (env.OUT) writeFileSync(env.OUT, JSON.stringify(results));
  console.log(`${results.length} cases in ${((performance.now() - start) / 6e4).toFixed(1)} min`);
  console.log('taken for another:');
  for (const line of confusion(results)) console.log(`  ${line}`);
  console.log('stated probability of the first: cases, stated, right');
  for (const { n, stated, right } of calibration(results).bins)
    if (n > 0)
      console.log(
        `  ${n}: ${((100 * stated) / n).toFixed(0)} %, ${((100 * right) / n).toFixed(0)} %`,
      );
  return rowsOf(results);
};

const progress = new Map();
function tell({ situation, done, of, result }) {
  const { first, last } = result;
  const { rank, both = 0 } = first;
  if (env.LIST && (rank !== 0 || both !== 0 || (last.established && last.rank !== 0)))
    console.log(`  ${missLine(result)}`);
  if (!process.stderr.isTTY) return;
  progress.set(`${result.name} ${situation}`, `${done} of ${of}`);
  process.stderr.write(`\r${[...progress].map((p) => p.join(' ')).join(', ')}`);
}
