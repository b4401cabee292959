/**
 * Gear units on one supply that grows with them, so that every size takes the same time. Alike:
 * odd and even units differ, as left and right do. No two alike: every unit has its events at its
 * own instants, so restarts grow with the number of units too.
 */
const SIZES = [2, 4, 8, 16, 32];

/** Slope of log y against log x, least squares. */
function exponent(points) {
  const logs = points.map(([x, y]) => [Math.log(x), Math.log(y)]);
  const mean = (i) => logs.reduce((sum, p) => sum + p[i], 0) / logs.length;
  const [mx, my] = [mean(0), mean(1)];
  const over = logs.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0);
  return over / logs.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
}

export default ({ core, measure, gearUnits }) =>
  [
    ['alike', 0],
    ['no two alike', 0.001],
  ].flatMap(([kind, drift]) => {
    const rows = SIZES.map((units) => {
      const swing = gearUnits({ units, drift });
      const { states, steps, rejected } = core.simulate(swing).statistics;
      return {
        name: `${units} units, ${kind}`,
        ...measure(() => core.simulate(swing), { warm: 8 }),
        states,
        steps,
        rejected,
      };
    });
    const power = exponent(rows.map((row, i) => [SIZES[i], row.median]));
    const last = rows.at(-1);
    last.exponent = power;
    if (drift === 0) last.target = { median: 100, exponent: 1.1 };
    return rows;
  });
