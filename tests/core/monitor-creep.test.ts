import { describe, expect, it } from 'vitest';
import type {
  Evidence,
  Flag,
  LogEntry,
  Role,
  Series,
} from '../../packages/core/src/define/index.js';
import { rules } from '../../packages/core/src/monitor/index.js';
import { swing, type Story } from '../support/evidence.js';

// Expected margins are arithmetic on the numbers stated in each story, no other source.
const judged = (rule: string, e: Evidence): readonly Flag[] => rules[rule].judge(e);
const DEG = Math.PI / 180;

/** The same evidence with another course of one channel. */
function course(
  e: Evidence,
  name: string,
  points: readonly (readonly [number, number])[],
): Evidence {
  const own: Series = {
    t: Float64Array.from(points, (p) => p[0]),
    v: Float64Array.from(points, (p) => p[1]),
  };
  return { ...e, series: (channel) => (channel === name ? own : e.series(channel)) };
}

const operator = (t: number, device: string, to: string): Omit<LogEntry, 'index'> => ({
  t,
  kind: 'operator',
  device,
  from: '',
  to,
  cause: 'operator',
  by: -1,
  speed: 0,
});

describe('uncommanded-motion', () => {
  // Up and locked at 6 s, sent down at 12 s; between 8 and 10 s the left leg gives by `sag`.
  const legSags = (sag: number, change: (s: Story) => void = () => undefined): readonly Flag[] =>
    judged(
      'uncommanded-motion',
      course(swing(change), 'left-leg.angle', [
        [0, 0],
        [1.5, 0],
        [6, 1.5],
        [8, 1.5],
        [10, 1.5 - sag],
        [12, 1.5 - sag],
        [13.7, 1.5 - sag],
        [18, 0],
        [25, 0],
      ]),
    );
  it('flags a leg that sags off its lock', () => {
    const [flag] = legSags(5 * DEG);
    expect(flag.devices).toEqual(['left-leg']);
    expect(flag.margin).toBeCloseTo((2 - 5) * DEG, 9);
    expect(flag.marginQuantity).toBe('angle');
    expect(flag.severity).toBe('fail');
    // Past 2 of 5 degrees after 2 / 5 of the two seconds; until the next selection.
    expect(flag.from).toBeCloseTo(8.8, 9);
    expect(flag.to).toBeCloseTo(12, 9);
  });
  it('notes what a leg gives within its play, and goes by the limit of the scenario', () => {
    expect(legSags(0.7 * DEG).map((f) => [f.severity, f.devices[0]])).toEqual([
      ['note', 'left-leg'],
    ]);
    expect(legSags(0.7 * DEG)[0].margin).toBeCloseTo(1.3 * DEG, 9);
    const [strict] = legSags(0.7 * DEG, (s) => (s.limits.creep = 0.5 * DEG));
    expect(strict.margin).toBeCloseTo(-0.2 * DEG, 9);
  });
  it('flags a door that opens by itself with the gear up, and one that drops before any selection', () => {
    const door = (points: readonly (readonly [number, number])[], change?: (s: Story) => void) =>
      judged('uncommanded-motion', course(swing(change), 'left-door.angle', points));
    const [opens] = door([
      [0, 1.5],
      [6.4, 1.5],
      [7.4, 0],
      [9, 0],
      [10, 0.1],
      [12.3, 0.1],
      [13.3, 1.5],
      [25, 1.5],
    ]);
    expect(opens.devices).toEqual(['left-door']);
    expect(opens.margin).toBeCloseTo(2 * DEG - 0.1, 9);
    // Nobody selects anything in this story, so that the other parts' moves are flagged too.
    const drops = judged(
      'uncommanded-motion',
      course(
        swing((s) => (s.leverUp = s.leverDown = null)),
        'right-leg.angle',
        [
          [0, 0],
          [5, 0.2],
          [25, 0.2],
        ],
      ),
    ).find((f) => f.devices[0] === 'right-leg');
    expect(drops?.margin).toBeCloseTo(2 * DEG - 0.2, 9);
    expect(drops?.severity).toBe('fail');
  });
  it('takes a supply shut off, or a lever put to neutral, for no selection', () => {
    for (const [device, to] of [
      ['pump', 'off'],
      ['selector', 'neutral'],
    ]) {
      const [flag] = legSags(5 * DEG, (s) => s.extraLog.push(operator(7.9, device, to)));
      expect(flag.margin).toBeCloseTo(-3 * DEG, 9);
    }
  });
  it('takes what the operator does to another valve for a command', () => {
    const flags = legSags(5 * DEG, (s) => s.extraLog.push(operator(7.9, 'up-pipe', 'open')));
    expect(flags.map((f) => f.severity)).toEqual(['note']);
  });
  it('cannot judge without angles, nor a leg that never locked', () => {
    expect(
      judged(
        'uncommanded-motion',
        swing((s) => (s.angles = false)),
      ),
    ).toEqual([]);
    const flags = legSags(5 * DEG, (s) => (s.left.uplockEngages = null));
    expect(flags.filter((f) => f.severity !== 'note')).toEqual([]);
  });
});

describe('doors-clash', () => {
  const lap = (words: readonly (readonly [number, string])[]): readonly Flag[] => {
    const e = swing((s) => {
      words.forEach(([t, to], i) =>
        s.extraLog.push({
          t,
          kind: 'mode',
          device: 'lap',
          from: i === 0 ? '' : words[i - 1][1],
          to,
          cause: 'the doors move',
          by: -1,
          speed: 0,
        }),
      );
    });
    const plain = e.scenario.components['left-door-valve'];
    const links = { under: { to: 'left-door' }, over: { to: 'right-door' } };
    const components = { ...e.scenario.components, lap: { ...plain, is: 'some-coupling', links } };
    const role = (name: string): Role | undefined => (name === 'lap' ? 'coupling' : e.role(name));
    return judged('doors-clash', { ...e, role, scenario: { ...e.scenario, components } });
  };
  it('flags edges that clashed, by the time they did', () => {
    const [flag] = lap([
      [0, 'clear'],
      [7, 'clashed'],
      [9.5, 'clear'],
    ]);
    expect(flag.margin).toBeCloseTo(-2.5, 12);
    expect([flag.from, flag.to]).toEqual([7, 9.5]);
    expect(flag.severity).toBe('fail');
    expect(flag.devices).toEqual(['lap', 'left-door', 'right-door']);
  });
  it('notes doors that met in their order', () => {
    const [flag] = lap([
      [0, 'clear'],
      [7, 'overlapped'],
    ]);
    expect(flag.margin).toBeCloseTo(25, 12);
    expect(flag.severity).toBe('note');
  });
  it('does not judge couplings of another kind', () => {
    expect(
      lap([
        [0, 'slack'],
        [7, 'taut'],
      ]),
    ).toEqual([]);
  });
});
