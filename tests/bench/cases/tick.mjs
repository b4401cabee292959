/** A tick of 1 ms against one of 20 ms: the run alone, and with every channel sampled at its ticks. */
export default ({ core, measure, gearUnits }) => {
  const swing = gearUnits({ units: 2 });
  const channel = 'u0-leg.angle';
  const work = {
    'run alone': (tick) => core.simulate(swing, { tick }),
    'with sampled traces': (tick) => core.simulate(swing, { tick }).sampled(channel),
  };
  return Object.entries(work).flatMap(([name, run]) => {
    const long = measure(() => run(0.02));
    const short = measure(() => run(0.001));
    return [
      { name: `${name}, 20 ms`, ...long },
      {
        name: `${name}, 1 ms`,
        ...short,
        ratio: short.median / long.median,
        target: { ratio: 1.5 },
      },
    ];
  });
};
