/**
 * What an emergency blow-down costs beside a normal swing of the same aircraft, a map of it, and
 * the search for the least charge, one core each. The ratio is of runs taken in turns.
 */
const AIRCRAFT = ['hedgelark', 'fenwren', 'tarnswift'];
const CELLS = 40;

const even = (a, b) => Array.from({ length: CELLS }, (_, i) => a + ((b - a) * i) / (CELLS - 1));
const middle = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];

export default async ({ core, scenario: read }) => {
  const rows = [];
  for (const name of AIRCRAFT) {
    const scenario = read(name);
    const card = core.blowDownCard(scenario);
    const normal = Object.keys(scenario.cards)[0];
    const time = (work) => {
      const start = performance.now();
      const result = work();
      return [performance.now() - start, result];
    };
    const swings = [];
    const blows = [];
    for (let i = 0; i < 25; i++) {
      swings.push(time(() => core.simulate(scenario, { card: normal }))[0]);
      blows.push(time(() => core.simulate(scenario, { card }))[0]);
    }
    const [least, { runs: tries }] = time(() => core.minimumCharge(scenario, { card }));
    const start = performance.now();
    const { charge } = core.chargeTable(scenario);
    const map = await core.blowDownMargin(
      scenario,
      { charge: even(0.1 * charge, 1.4 * charge), temperature: even(233, 323) },
      { card },
    );
    rows.push({
      name,
      'swing, ms': middle(swings),
      'blow-down, ms': middle(blows),
      ratio: middle(blows) / middle(swings),
      'least charge, s': least / 1e3,
      'its runs': tries,
      'map 40 x 40 on one core, s': (performance.now() - start) / 1e3,
      'runs of the map': map.runs,
      target: { ratio: 2, 'least charge, s': 1, 'map 40 x 40 on one core, s': 20 },
    });
  }
  return rows;
};
