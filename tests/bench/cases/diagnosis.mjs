/**
 * Diagnosis against cases it has not seen: a healthy aircraft within its tolerances (drawn here, by
 * another generator than the inference's one run per unknown), one random fault above what can be noticed,
 * and what a mechanic with a stopwatch would note. Told: how often the true cause, or a group it cannot
 * be told from, comes first and among the first three; how often healthy is called healthy; how far
 * stated probabilities are from what comes true. `CASES=300 npm run bench -- diagnosis` for the whole.
 */
const AIRCRAFT = (process.env.AIRCRAFT ?? 'hedgelark,fenwren,tarnswift').split(',');
const CASES = Number(process.env.CASES ?? 20);
/** One case in so many has no fault. */
const SOUND = 5;
/** A hand on a watch, s; a gauge, share. */
const HAND = 0.1;
const GAUGE = 0.02;

function generator(seed) {
  let a = seed >>> 0;
  const uniform = () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal, pick: (list) => list[Math.floor(uniform() * list.length)] };
}

/** Shares by which sound parts differ; other figures than the inference takes for granted. */
const TOLERANCES = {
  friction: 0.22,
  sealMoment: 0.15,
  flow: 0.04,
  displacement: 0.04,
  crack: 0.02,
  full: 0.02,
};

function within(scenario, random) {
  const scaled = (parts) =>
    Object.fromEntries(
      Object.entries(parts).map(([name, part]) => {
        const bore =
          part.is === 'one-way-restrictor' || part.is === 'orifice' ? { bore: 0.018 } : {};
        const parameters = { ...part.parameters };
        for (const [key, share] of Object.entries({ ...TOLERANCES, ...bore }))
          if (typeof parameters[key] === 'number')
            parameters[key] *= 1 + share * (2 * random.uniform() - 1);
        return [name, { ...part, parameters }];
      }),
    );
  const fluid = {
    ...scenario.fluid,
    temperature: scenario.fluid.temperature + 3 * (2 * random.uniform() - 1),
  };
  return {
    ...scenario,
    fluid,
    components: scaled(scenario.components),
    mechanisms: scaled(scenario.mechanisms),
  };
}

function noted(core, scenario, card, run, random) {
  const tenth = (t) => Math.max(0, Math.round(10 * (t + HAND * random.normal())) / 10);
  const withGauge = random.uniform() < 0.4;
  const swings = core.expectedSwings(run).map(({ direction, times, gauges }) => {
    const remarks = {};
    for (const unit of Object.keys(scenario.units)) {
      const t = times[unit] ?? {};
      if (t.moving === undefined) remarks[unit] = ['did not move'];
      else if (t.locked === undefined) remarks[unit] = ['stopped short'];
    }
    return {
      direction,
      conditions: {},
      order: [],
      recordings: [],
      note: '',
      remarks,
      times: Object.fromEntries(
        Object.entries(times)
          .filter(([unit]) => unit in scenario.units)
          .map(([unit, t]) => [
            unit,
            Object.fromEntries(
              ['moving', 'locked', 'total']
                .filter((e) => t[e] !== undefined)
                .map((e) => [e, { at: tenth(t[e]), error: 0.2 }]),
            ),
          ]),
      ),
      gauges: withGauge
        ? Object.fromEntries(
            Object.entries(gauges).map(([node, { moving, 'dead-head': dead }]) => [
              node,
              {
                ...(moving !== undefined && { moving: moving * (1 + GAUGE * random.normal()) }),
                ...(dead !== undefined && { 'dead-head': dead * (1 + GAUGE * random.normal()) }),
              },
            ]),
          )
        : {},
    };
  });
  return {
    aircraft: scenario.title,
    scenario: '',
    card,
    date: '',
    by: '',
    readingError: 0.2,
    conditions: {},
    swings,
    note: '',
  };
}

const flat = (core, run) =>
  core
    .expectedSwings(run)
    .flatMap((s) =>
      Object.entries(s.times).flatMap(([unit, t]) =>
        ['moving', 'locked', 'total'].map((e) => [`${s.direction} ${unit} ${e}`, t[e] ?? Infinity]),
      ),
    );

/** Whether a hand with a watch would notice: half a second or a tenth, whichever is more, or what never comes. */
function noticeable(core, healthy, run) {
  const before = new Map(flat(core, healthy));
  const after = flat(core, run);
  if (after.length !== before.size) return true;
  return after.some(([key, t]) => {
    const b = before.get(key) ?? Infinity;
    return (t === Infinity) !== (b === Infinity) || Math.abs(t - b) > Math.max(0.5, 0.1 * b);
  });
}

export default async ({ core, scenario: read }) => {
  const rows = [];
  for (const name of AIRCRAFT) {
    const scenario = read(name);
    const card = Object.keys(scenario.cards)[0];
    const random = generator(20310517 + name.length);
    const memory = new Map();
    const healthy = core.simulate(scenario, { card });
    const places = Object.values(core.catalogues.faults).flatMap((f) =>
      f.silent
        ? []
        : [
            ...Object.entries(scenario.components),
            ...Object.entries(scenario.mechanisms),
            ['fluid', { is: 'fluid' }],
          ]
            .filter(([, part]) => f.befalls.includes(part.is))
            .map(([on]) => ({ fault: f.kind, on })),
    );
    const tally = { first: 0, three: 0, faulty: 0, sound: 0, called: 0, noticed: 0, drawn: 0 };
    const bins = Array.from({ length: 10 }, () => ({ n: 0, p: 0, right: 0 }));
    const confused = new Map();
    const start = performance.now();
    for (let i = 0; i < CASES;) {
      const aircraft = within(scenario, random);
      const sound = i % SOUND === 0;
      const truth = sound
        ? undefined
        : { ...random.pick(places), severity: 0.25 + 0.75 * random.uniform() };
      const run = core.simulate(aircraft, { card, faults: truth ? [truth] : [] });
      if (truth !== undefined) {
        tally.drawn++;
        if (!noticeable(core, healthy, run)) continue;
      }
      i++;
      const sheet = noted(core, scenario, card, run, random);
      const { groups } = await core.diagnose(scenario, sheet, { memory });
      const holds = (g) =>
        g.members.some((m) =>
          truth === undefined
            ? m.causes.length === 0
            : m.causes.some((c) => c.fault === truth.fault && c.on === truth.on),
        );
      const rank = groups.findIndex(holds);
      if (sound) {
        tally.sound++;
        if (rank === 0) tally.called++;
      } else {
        tally.faulty++;
        if (rank === 0) tally.first++;
        if (rank >= 0 && rank < 3) tally.three++;
        if (rank !== 0) {
          const top =
            groups[0].members[0].causes.map((c) => `${c.fault} ${c.on}`).join('+') || 'healthy';
          const key = `${truth.fault} ${truth.on} (${truth.severity.toFixed(2)}) taken for ${top}, rank ${rank + 1}`;
          confused.set(key, (confused.get(key) ?? 0) + 1);
        }
      }
      const bin = bins[Math.min(9, Math.floor(10 * groups[0].probability))];
      bin.n++;
      bin.p += groups[0].probability;
      bin.right += Number(rank === 0);
    }
    const error = bins.reduce((sum, b) => sum + Math.abs(b.p - b.right), 0) / CASES;
    for (const [key, n] of confused) console.log(`  ${name}: ${n} x ${key}`);
    rows.push({
      name,
      cases: CASES,
      'first, %': (100 * tally.first) / tally.faulty,
      'first three, %': (100 * tally.three) / tally.faulty,
      'healthy called so, %': (100 * tally.called) / tally.sound,
      'calibration error': error,
      's per case': (performance.now() - start) / 1e3 / CASES,
    });
  }
  return rows;
};
