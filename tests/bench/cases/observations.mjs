/** Reading and writing an observation sheet: ten thousand swings are far more than anybody times. */
export default ({ core, measure }) => {
  const time = (at) => ({ at, error: 0.2 });
  const swing = (i) => ({
    direction: i % 2 === 0 ? 'up' : 'down',
    conditions: {},
    times: {
      left: { moving: time(1.2), locked: time(7.1 + (i % 7) / 10) },
      right: { moving: time(1.2), locked: time(7.3) },
      gear: { total: time(8.4) },
    },
    order: [],
    gauges: {},
    remarks: {},
    recordings: [],
    note: '',
  });
  const sheet = (rows) => ({
    ...{ aircraft: 'A', scenario: '', card: '', date: '', by: '', note: '' },
    ...{ readingError: 0.2, conditions: {} },
    swings: Array.from({ length: rows }, (_, i) => swing(i)),
  });
  return [10, 10_000].flatMap((rows) => {
    const text = core.writeObservations(sheet(rows));
    const often = rows > 100 ? { runs: 5, warm: 1 } : {};
    return [
      {
        name: `read ${rows} rows`,
        bytes: text.length,
        ...(rows > 100 && { target: { median: 5000 } }),
        ...measure(() => core.readObservations(text), often),
      },
      {
        name: `write ${rows} rows`,
        bytes: text.length,
        ...measure(() => core.writeObservations(sheet(rows)), often),
      },
    ];
  });
};
