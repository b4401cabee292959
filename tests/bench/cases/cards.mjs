/** Every card of the demo, as a user runs it: the log, and with everything that is shown of it. */
export default ({ core, measure, scenario }) => {
  const demo = scenario('hedgelark');
  return Object.keys(demo.cards).map((card) => {
    const { statistics, duration } = core.simulate(demo, { card });
    const time = measure(() => core.simulate(demo, { card }));
    const shown = measure(
      () => {
        const run = core.simulate(demo, { card });
        return run.flags.length + (run.sampled(run.channels[0].name)?.t.length ?? 0);
      },
      { warm: 1 },
    );
    return {
      name: card,
      ...time,
      steps: statistics.steps,
      rejected: statistics.rejected,
      transitions: statistics.transitions,
      'us per try': (1e3 * time.median) / (statistics.steps + statistics.rejected),
      'times real time': (1e3 * duration) / time.median,
      'with flags and traces': shown.median,
    };
  });
};
