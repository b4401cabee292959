/** Turns made-up evidence into a run, for reports and the command line. */
import type { Evidence, Run } from '../../packages/core/src/define/index.js';
import { judge, timings } from '../../packages/core/src/monitor/index.js';

export function runOf(e: Evidence): Run {
  return {
    scenario: e.scenario,
    card: e.card,
    duration: e.duration,
    outcome: e.outcome,
    log: e.log,
    channels: e.channels,
    series: (name) => e.series(name),
    sampled: (name) => e.series(name),
    role: (name) => e.role(name),
    outline: (name, angle) => e.outline(name, angle),
    cardName: Object.keys(e.scenario.cards)[0],
    tick: 0.005,
    ticks: 5001,
    tolerance: 'normal',
    statistics: {
      states: 20,
      steps: 1,
      rejected: 0,
      evaluations: 1,
      jacobians: 1,
      transitions: 1,
      restarts: 0,
    },
    timings: timings(e),
    look: (names) =>
      new Map(names.flatMap((n) => (e.series(n) ? [[n, e.series(n)!] as const] : []))),
    flags: judge(e),
    release: () => undefined,
  };
}
