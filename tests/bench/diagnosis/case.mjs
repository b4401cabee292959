/** The cases of an aircraft: what kind of sheet each has, and what is wrong, all from its number. */
import { flowOf, noticeable, placesOf, swing, within } from './aircraft.mjs';
import { noted, sheetOf, STYLES } from './noting.mjs';
import { generator, seedOf } from './random.mjs';

/** One case in so many has no fault. */
const SOUND = 5;
/** Severities that are drawn, before what nobody would notice is left out. */
const LEAST = 0.1;
/** After so many draws that nobody would notice a case is given up. */
const DRAWS = 60;
const COLD = 263.15;
const WARM = 313.15;

/** Under what the aircraft stands: a few, so that what was played for one case serves others. */
export function situationsOf(core, scenario) {
  const flow = flowOf(core, scenario);
  return {
    nominal: {},
    cold: { temperature: COLD },
    other: flow === undefined ? { temperature: WARM } : { supplyFlow: flow / 2 },
    emergency: {},
  };
}

/** The cards of an emergency swing, the first that the aircraft has: by gas, by weight, by what is stored. */
const EMERGENCY = ['blow-down', 'free-fall', 'pump-lost'];

/** Kinds of sheets, each as often as it stands here. */
export const KINDS = [
  { name: 'watch', style: STYLES.watch, situation: 'nominal' },
  { name: 'gauges', style: STYLES.gauges, situation: 'nominal' },
  { name: 'remarks', style: STYLES.remarks, situation: 'nominal' },
  { name: 'order', style: STYLES.order, situation: 'nominal' },
  { name: 'watch, cold oil', style: STYLES.watch, situation: 'cold' },
  { name: 'gauges, cold oil', style: STYLES.gauges, situation: 'cold' },
  { name: 'gauges, other flow', style: STYLES.gauges, situation: 'other' },
  { name: 'emergency', style: STYLES.watch, situation: 'emergency' },
];

/** Of which half a case is: what is tuned is tuned on one, and tested on the other. */
export const halfOf = (i) => (Math.floor(i / (KINDS.length * SOUND)) % 2 ? 'hold-out' : 'tuning');

export const kindOf = (i) => KINDS[i % KINDS.length];

/** What is played of the true aircraft: one row of swings, or an emergency swing with it. */
function rowsOf(scenario, { situation }) {
  const first = Object.keys(scenario.cards)[0];
  if (situation !== 'emergency') return { card: first, rows: [{ card: first }] };
  const card = EMERGENCY.find((name) => name in scenario.cards);
  const gas = { card, directions: ['blow-down'] };
  // Only gas has a direction of its own, and goes on a sheet beside others.
  return card === EMERGENCY[0]
    ? { card: first, rows: [{ card: first }, gas] }
    : { card, rows: [{ card }] };
}

const books = new Map();

/** What the book says: the nominal aircraft with nothing wrong. */
function byTheBook(core, scenario, card, conditions) {
  const key = JSON.stringify([scenario.title, card, conditions]);
  if (!books.has(key))
    books.set(key, swing(core, { ...scenario, warmer: 0 }, scenario, card, conditions, []));
  return books.get(key);
}

/** Case `i` with its sheet, or undefined when no fault could be found that shows; with `both`, two that do, each by itself. */
export function caseOf(core, scenario, name, i, { both = false } = {}) {
  const kind = kindOf(i);
  const random = generator(seedOf(name, i));
  const conditions = situationsOf(core, scenario)[kind.situation];
  const { card, rows } = rowsOf(scenario, kind);
  const sound = Math.floor(i / KINDS.length) % SOUND === 0;
  const places = placesOf(core, scenario);
  const fault = () => ({
    ...random.pick(places),
    severity: LEAST + (1 - LEAST) * random.uniform(),
  });
  for (let draw = 0; draw < DRAWS; draw++) {
    const aircraft = within(scenario, random);
    const faults = sound ? [] : [fault(), ...(both ? [fault()] : [])];
    const [truth, second] = faults;
    if (second !== undefined && second.on === truth.on) continue;
    const play = (c, faults, of = conditions) => swing(core, aircraft, scenario, c, of, faults);
    // Against the book, and against the same aircraft before: not its tolerances must be what shows.
    const shows = (runs) =>
      rows.some(
        (row, k) =>
          noticeable(core, kind.style, byTheBook(core, scenario, row.card, conditions), runs[k]) &&
          noticeable(core, kind.style, play(row.card, []), runs[k]),
      );
    const played = (of) => rows.map((row) => play(row.card, of));
    const alone = faults.map((one) => played([one]));
    if (!alone.every(shows)) continue;
    const runs = alone.length === 1 ? alone[0] : played(faults);
    const swings = rows.flatMap((row, k) =>
      noted(core, kind.style, runs[k], random, {
        directions: row.directions,
        book: byTheBook(core, scenario, row.card, conditions),
      }),
    );
    const again = (changed) =>
      noted(core, kind.style, play(card, faults, { ...conditions, ...changed }), random, {
        conditions: changed,
        book: byTheBook(core, scenario, card, { ...conditions, ...changed }),
      });
    const sheet = sheetOf(scenario, card, conditions, swings);
    return { i, kind, truth, ...(second && { second }), sheet, conditions, random, again };
  }
  return undefined;
}
