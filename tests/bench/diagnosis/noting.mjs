/** What a mechanic notes of a swing, by the kind of sheet: no more than eyes, a watch and a gauge give. */

/** A hand on a watch, s; a gauge, share of its reading and Pa; the eye between two moments, s. */
const HAND = 0.1;
const GAUGE = 0.015;
const NEEDLE = 3e4;
const EYE = 0.12;
/** A difference of sides that is worth a word, s, and how often it gets it. */
const SIDES = 0.6;
const TOLD = 0.8;
/** How often jerks are noted where there are any, and where there are none. */
const JERKS = { with: 0.75, without: 0.02 };
/** A stop on the way that is seen, s. */
const STAND = 0.3;
/** Moments closer than this are one press of the watch, s. */
const ONE = 0.05;
/** A leg that only settles in its lock does not move to the eye, rad. */
const STIRS = 0.03;
/** A door that stands less open than this share of its travel is seen to be stuck. */
const OPEN = 0.85;

/** Kinds of sheet: which moments are timed, and what else is noted. */
export const STYLES = {
  watch: { times: ['moving', 'locked', 'total'] },
  gauges: { times: ['moving', 'locked', 'total'], gauges: true },
  remarks: { times: ['locked', 'total'], remarks: true },
  order: { times: ['total'], order: true },
};

/** First movement each way, with all that this style would note, exact. */
export function expectedOf(core, style, run, directions) {
  const seen = new Set();
  return core
    .expectedSwings(run)
    .flatMap(({ direction, start, times, strayed, gauges }, i, all) => {
      if (seen.has(direction) || (directions && !directions.includes(direction))) return [];
      seen.add(direction);
      const next = all[i + 1]?.start ?? Infinity;
      const stirred = stirredOf(run, start, next);
      return [
        {
          direction,
          units: Object.keys(run.scenario.units).filter((unit) => times[unit] !== undefined),
          stirred,
          times: timesOf(style, run, times, stirred),
          gauges: style.gauges ? gaugesOf(gauges, stirred.length > 0) : {},
          order: style.order ? momentsOf(times) : {},
          span: { start, next },
          jerks: style.remarks ? jerksOf(run, direction, start, next) : {},
          strayed: Object.fromEntries(Object.keys(strayed).map((unit) => [unit, 1])),
          dark: darkOf(times),
          all: times,
        },
      ];
    });
}

/** Units that are home without their light, those that have none among them. */
const darkOf = (times) =>
  Object.fromEntries(
    Object.entries(times)
      .filter(([, t]) => t.total !== undefined && t.light === undefined)
      .map(([unit]) => [unit, 1]),
  );

/** Units whose leg moved between two moments. */
function stirredOf(run, from, to) {
  return Object.entries(run.scenario.units)
    .filter(([, { leg }]) => {
      const { t, v } = run.series(`${leg}.angle`);
      const seen = v.filter((_, i) => t[i] >= from && t[i] < to);
      return Math.max(...seen) - Math.min(...seen) > STIRS;
    })
    .map(([unit]) => unit);
}

function timesOf({ times: wanted }, run, times, stirred) {
  const out = {};
  for (const unit of stirred) {
    const t = times[unit] ?? {};
    for (const event of wanted) if (t[event] !== undefined) out[`${unit} ${event}`] = t[event];
  }
  return out;
}

/** Where no leg moves nobody reads a gauge while it moves. */
const gaugesOf = (gauges, moves) =>
  Object.fromEntries(
    Object.entries(gauges).flatMap(([node, readings]) =>
      (moves ? ['moving', 'dead-head'] : ['dead-head']).flatMap((moment) =>
        readings[moment] === undefined ? [] : [[`${node} ${moment}`, readings[moment]]],
      ),
    ),
  );

const momentsOf = (times) =>
  Object.fromEntries(
    Object.entries(times).flatMap(([unit, t]) =>
      ['opened', 'locked', 'doors'].flatMap((event) => {
        // Doors that are home with their leg, or whose leg never came, are no moment of their own.
        const none = event === 'doors' && !(t.doors - t.locked > ONE);
        return t[event] === undefined || none ? [] : [[`${unit} ${event}`, t[event]]];
      }),
    ),
  );

/** Units that stood still for a while on their way, and went on. */
function jerksOf(run, direction, start, next) {
  const to = direction === 'up' ? 'rising' : 'falling';
  return Object.fromEntries(
    Object.entries(run.scenario.units).flatMap(([unit, { leg }]) => {
      const turns = run.log.filter(
        (e) => e.kind === 'motion' && e.device === leg && e.t >= start && e.t < next,
      );
      const set = (e) => e.to === to;
      const first = turns.findIndex(set);
      const stood = turns.some((e, i) => i > first && set(e) && e.t - turns[i - 1].t > STAND);
      return first >= 0 && stood ? [[unit, 1]] : [];
    }),
  );
}

/** The rows of a sheet for a run, read by hand and eye. */
export function noted(core, style, run, random, { conditions, directions, book }) {
  const due = core.expectedSwings(book);
  const tenth = (t) => Math.max(0, Math.round(10 * (t + HAND * random.normal())) / 10);
  return expectedOf(core, style, run, directions).map((swing) => {
    const times = {};
    for (const [key, t] of Object.entries(swing.times)) {
      const [unit, event] = key.split(' ');
      const locked = swing.times[`${unit} locked`];
      if (event === 'total' && Math.abs(t - locked) < ONE) continue;
      (times[unit] ??= {})[event] = { at: tenth(t), error: 0.2 };
    }
    // A light that is on with no lock made is looked at twice.
    for (const unit of swing.units) {
      const { light, locked } = swing.all[unit];
      if (light !== undefined && locked === undefined)
        (times[unit] ??= {}).light = { at: tenth(light), error: 0.2 };
    }
    const gauges = {};
    for (const [key, p] of Object.entries(swing.gauges)) {
      const [node, moment] = key.split(' ');
      (gauges[node] ??= {})[moment] = p * (1 + GAUGE * random.normal()) + NEEDLE * random.normal();
    }
    const order = Object.entries(swing.order)
      .map(([key, t]) => ({ key, t: t + EYE * random.normal() }))
      .sort((a, b) => a.t - b.t)
      .map(({ key }) => ({ unit: key.split(' ')[0], event: key.split(' ')[1] }));
    return {
      direction: swing.direction,
      conditions: conditions ?? {},
      times,
      gauges,
      order: order.length > 1 ? order : [],
      remarks: remarksOf(style, run, swing, random),
      never: [...neverOf(run, swing), ...shutOf(run, swing, due), ...lightless(swing, due)],
      recordings: [],
      note: '',
    };
  });
}

/** Doors that did not come home behind a leg that did. */
const neverOf = (run, { units, all }) =>
  units
    .filter((u) => run.scenario.units[u].doors.length > 0)
    .filter((u) => all[u].locked !== undefined && all[u].total === undefined)
    .map((unit) => ({ unit, event: 'doors' }));

/** Lights that a sound gear has and that stayed dark with everything of their unit home. */
const lightless = ({ direction, dark }, due) => {
  const expected = due.find((s) => s.direction === direction)?.times ?? {};
  return Object.keys(dark)
    .filter((unit) => expected[unit]?.light !== undefined)
    .map((unit) => ({ unit, event: 'light' }));
};

/** Doors that were to open for their leg and stood visibly short of it. */
function shutOf(run, { direction, units, all, span }, due) {
  const expected = due.find((s) => s.direction === direction)?.times ?? {};
  const { mechanisms } = run.scenario;
  const widest = (door) => {
    const { t, v } = run.series(`${door}.angle`);
    return Math.max(...v.filter((_, i) => t[i] >= span.start && t[i] < span.next));
  };
  return units
    .filter((unit) => expected[unit]?.opened !== undefined && all[unit].opened === undefined)
    .filter((unit) =>
      run.scenario.units[unit].doors.some(
        (door) => widest(door) < OPEN * mechanisms[door].parameters.travel,
      ),
    )
    .map((unit) => ({ unit, event: 'opened' }));
}

function remarksOf(style, run, { units, all, jerks, stirred, strayed }, random) {
  const remarks = {};
  const say = (unit, word) => (remarks[unit] ??= []).push(word);
  for (const unit of units) {
    if (!stirred.includes(unit)) say(unit, 'did not move');
    else if (all[unit].locked === undefined) say(unit, 'stopped short');
    if (unit in strayed) say(unit, 'doors came open again');
    if (!style.remarks) continue;
    if (random.chance(unit in jerks ? JERKS.with : JERKS.without)) say(unit, 'moved by jerks');
    if (run.scenario.units[unit].side !== 'left') continue;
    const right = units.find((u) => run.scenario.units[u].side === 'right');
    const later = (all[unit].total ?? Infinity) - (all[right]?.total ?? Infinity);
    if (Math.abs(later) > SIDES && random.chance(TOLD))
      say(unit, `${later > 0 ? 'slower' : 'faster'} than the other side`);
  }
  return remarks;
}

/** A sheet of these rows. */
export const sheetOf = (scenario, card, conditions, swings) => ({
  ...{ aircraft: scenario.title, scenario: '', card, date: '', by: '', note: '' },
  ...{ readingError: 0.2, conditions, swings, looks: [] },
});
