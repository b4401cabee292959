/** A sheet with one entry wrong: a watch pressed at the wrong moment, a gauge misread, two moments told the other way round. */

/** A watch is off by so many seconds, s; a needle is read off by such a share of what it shows. */
const LATE = { from: 1, to: 3 };
const NEEDLE = { from: 0.2, to: 0.5 };

const between = ({ from, to }, random) =>
  (from + (to - from) * random.uniform()) * (random.chance(0.5) ? 1 : -1);

/** Every entry of a swing that can be wrong, as what makes it so. */
function entriesOf(swing) {
  const times = Object.values(swing.times).flatMap((of) =>
    Object.values(of).map((time) => (random) => {
      const off = between(LATE, random);
      // Nobody reads a watch below nought.
      time.at = Math.round(10 * (time.at + off < 0 ? time.at - off : time.at + off)) / 10;
    }),
  );
  const gauges = Object.values(swing.gauges).flatMap((of) =>
    Object.keys(of).map((moment) => (random) => {
      of[moment] *= 1 + between(NEEDLE, random);
    }),
  );
  const order = swing.order.slice(1).map((_, i) => () => {
    [swing.order[i], swing.order[i + 1]] = [swing.order[i + 1], swing.order[i]];
  });
  return [...times, ...gauges, ...order];
}

/** The same sheet with one entry wrong, whichever; one that has no entries stays as it is. */
export function misread(sheet, random) {
  const wrong = globalThis.structuredClone(sheet);
  const entries = wrong.swings.flatMap(entriesOf);
  if (entries.length > 0) random.pick(entries)(random);
  return wrong;
}
