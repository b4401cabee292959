import { describe, expect, it } from 'vitest';
import { readObservations } from '@wheelwell/core';

/** What is said of a swing, by the lines of its text. */
function said(...lines: string[]) {
  const text = `wheelwell-observations: 1\nswings:\n- direction: up\n${lines.map((l) => `  ${l}\n`).join('')}`;
  const { issues, contradictions } = readObservations(text);
  expect(issues).toEqual([]);
  return contradictions.map((c) => ({
    message: c.message,
    places: [`${c.line} ${c.path}`, `${c.other.line} ${c.other.path}`],
  }));
}

describe('entries that do not go together are pointed out, with both places', () => {
  it('locked before it moved', () => {
    const [found] = said('times:', '  left:', '    moving: 3 s', '    locked: 2 s');
    expect(found.message).toMatch(/left: locked at 2 s comes before moving at 3 s/);
    expect(found.places).toEqual(['7 swings.0.times.left.locked', '6 swings.0.times.left.moving']);
  });
  it('but not within what the readings may be off', () => {
    expect(said('times: { left: { moving: 3 s, locked: 2.7 s } }')).toEqual([]);
    expect(said('times: { left: { moving: 3 s, locked: 2.5 s } }')).toHaveLength(1);
    expect(said('times: { left: { moving: 3 s, locked: { at: 2.5 s, error: 0.4 s } } }')).toEqual(
      [],
    );
  });
  it('a unit that finished after the whole gear', () => {
    const found = said('times: { gear: { total: 7 s }, tail: { doors: 8 s } }');
    expect(found[0].message).toMatch(/whole gear is home at 7 s, tail doors only at 8 s/);
  });
  it('doors home before they were open, but not doors that were never open all the way', () => {
    const [found] = said('times: { nose: { opened: 5 s, doors: 3 s } }');
    expect(found.message).toMatch(/nose: doors at 3 s comes before opened at 5 s/);
    expect(said('never: [nose opened]', 'times: { nose: { locked: 5 s, doors: 7 s } }')).toEqual(
      [],
    );
    expect(said('never: [nose opened]', 'times: { nose: { opened: 5 s } }')).toHaveLength(1);
  });
  it('nothing of a light that stays dark with everything home, or is on with nothing locked', () => {
    const home = 'times: { left: { locked: 6 s, total: 7 s }, gear: { total: 7 s } }';
    expect(said('never: [left light]', home)).toEqual([]);
    expect(said('never: [left locked]', 'times: { left: { light: 6 s } }')).toEqual([]);
    expect(said('never: [left light]', 'times: { left: { light: 6 s } }')).toHaveLength(1);
  });
  it('an order against the times', () => {
    const [found, ...more] = said(
      'times: { left: { locked: 6 s }, right: { locked: 8 s } }',
      'order:',
      '- right locked',
      '- left locked',
    );
    expect(found.message).toMatch(
      /left locked comes after right locked in the order, but was timed 6 s against 8 s/,
    );
    expect(found.places).toEqual(['7 swings.0.order.1', '4 swings.0.times.left.locked']);
    expect(more).toEqual([]);
  });
  it('an order in which something stands twice', () => {
    expect(said('order: [left locked, right locked, left locked]')[0].places).toEqual([
      '4 swings.0.order.2',
      '4 swings.0.order.0',
    ]);
  });
  it('doors that came open again and were never home', () => {
    const remark = 'remarks: { left: doors came open again }';
    expect(said('never: [left doors]', remark)[0].message).toMatch(/left: its doors came open/);
    expect(said('never: [right doors]', remark)).toEqual([]);
    expect(said('times: { left: { doors: 7 s } }', remark)).toEqual([]);
  });
  it('a leg that did not move and was timed, or stands in the order', () => {
    expect(
      said(
        'remarks: { left: did not move }',
        'times: { left: { locked: 4 s } }',
        'order: [left moving]',
      ),
    ).toHaveLength(2);
    // Its doors may have moved, its lock may have let go.
    expect(
      said('remarks: { left: did not move }', 'times: { left: { doors: 4 s, unlocked: 1 s } }'),
    ).toEqual([]);
  });
  it('sides against each other and against the watch', () => {
    expect(
      said('remarks: { left: faster than the other side, right: faster than the other side }')[0]
        .message,
    ).toMatch(/both sides are noted as the faster one/);
    const times = 'times: { left: { locked: 8 s }, right: { locked: 6 s } }';
    expect(said(times, 'remarks: { left: faster than the other side }')[0].message).toMatch(
      /left is noted as the faster side, but was locked at 8 s, right at 6 s/,
    );
    expect(said(times, 'remarks: { left: slower than the other side }')).toEqual([]);
    expect(said(times, 'remarks: { right: slower than the other side }')).toHaveLength(1);
  });
  it('gauges: a peak below the rest, a dead-head pressure below the moving one', () => {
    expect(said('gauges: { pressure: { static: 1500 psi, peak: 1400 psi } }')).toHaveLength(1);
    expect(said('gauges: { pressure: { moving: 1500 psi, dead-head: 1400 psi } }')).toHaveLength(1);
    expect(
      said('gauges: { pressure: { static: 1500 psi, peak: 1490 psi, error: 10 psi } }'),
    ).toEqual([]);
  });
  it('doors that were timed and are noted as disconnected', () => {
    const found = said('conditions: { doors: disconnected }', 'times: { left: { doors: 8 s } }');
    expect(found[0].places).toEqual(['5 swings.0.times.left.doors', '4 swings.0.conditions.doors']);
  });
  it('a healthy swing has none', () => {
    expect(
      said(
        'times: { left: { unlocked: 1 s, moving: 1 s, locked: 7 s, doors: 8 s }, gear: { total: 8.1 s } }',
        'order: [left moving, left locked, left doors]',
        'remarks: { left: moved by jerks }',
        'gauges: { pressure: { static: 1500 psi, moving: 900 psi, dead-head: 1500 psi, peak: 1600 psi } }',
      ),
    ).toEqual([]);
  });
  it('beside a swing that could not be read, the places are still those of the file', () => {
    const { contradictions } = readObservations(
      'wheelwell-observations: 1\nswings:\n- direction: sideways\n- direction: up\n  times: { left: { moving: 3 s, locked: 1 s } }\n',
    );
    expect(contradictions[0]).toMatchObject({ line: 5, path: 'swings.1.times.left.locked' });
  });
  it('what never came and was timed, or stands in the order', () => {
    const found = said(
      'never: [left locked]',
      'times: { left: { locked: 4 s } }',
      'order: [right locked, left locked]',
    );
    expect(found.map((c) => c.places[0])).toEqual(['4 swings.0.never.0', '4 swings.0.never.0']);
    expect(found[1].message).toMatch(/stands in the order/);
  });
  it('what never came, and yet what can only come after it', () => {
    const [locked] = said('never: [left moving]', 'times: { left: { locked: 4 s } }');
    expect(locked.message).toMatch(/^left moving is noted as never, yet locked was timed/);
    const [home] = said('never: [left doors]', 'times: { gear: { total: 9 s } }');
    expect(home.message).toMatch(/^left doors is noted as never, yet the whole gear was home/);
    // Nobody has to see a lock let go.
    expect(said('never: [left unlocked]', 'times: { gear: { total: 9 s } }')).toEqual([]);
    expect(said('never: [left locked]', 'times: { left: { moving: 1 s } }')).toEqual([]);
  });
  it('more flow at dead-head than on the move, but not within what a meter is read to', () => {
    const flows = (moving: number, stalled: number) =>
      said(
        `supply: { stand: { moving-flow: ${moving} gal/min, dead-head-flow: ${stalled} gal/min } }`,
      );
    expect(flows(2, 3)[0].message).toMatch(/more flow at dead-head/);
    expect(flows(3, 3.1)).toEqual([]);
  });
  it('less at dead-head than on the move, on the driving line only', () => {
    const gauges = (drive: number) =>
      said(
        'gauges:',
        `  up: { moving: 600 psi, dead-head: ${drive} psi }`,
        '  down: { moving: 90 psi, dead-head: 0 psi }',
      );
    expect(gauges(1000)).toEqual([]);
    expect(gauges(500)).toHaveLength(1);
  });
});
