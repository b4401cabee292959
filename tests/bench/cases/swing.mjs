/**
 * Up at 0.1 s and down at 20 s, two sides on one supply, 40 s in all: the figure everything else
 * hangs on. Event error: worst event of the run against the fine method at 1e-7, and the worst
 * over neighbouring tolerances, since a single run's error is luck.
 */
const NEAR = [0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.4];
/** Relative tolerance of `normal`, which its neighbours are taken around. */
const NORMAL = 0.02;

export default ({ core, measure, gearUnits, eventError, scenario }) =>
  [
    ['two sides, made', gearUnits({ units: 2 }), 'swing'],
    ['demo, healthy', scenario('hedgelark'), 'healthy'],
  ].map(([name, swing, card]) => {
    const reference = core.simulate(swing, { card, tolerance: 'fine', relativeTolerance: 1e-7 });
    const run = core.simulate(swing, { card });
    const { states, steps, rejected, evaluations } = run.statistics;
    const errors = NEAR.map((share) =>
      eventError(core.simulate(swing, { card, relativeTolerance: NORMAL * share }), reference),
    );
    const worst = errors.reduce((a, b) => (b.worst > a.worst ? b : a));
    const time = measure(() => core.simulate(swing, { card }), { runs: 51, warm: 30 });
    return {
      name,
      ...time,
      states,
      steps,
      rejected,
      evaluations,
      'us per try': (1e3 * time.median) / (steps + rejected),
      'times real time': (1e3 * run.duration) / time.median,
      'error ms': 1e3 * eventError(run, reference).worst,
      'worst ms': 1e3 * worst.worst,
      at: worst.of,
      target: name.startsWith('two') ? { median: 5, 'worst ms': 1 } : { 'worst ms': 1 },
    };
  });
