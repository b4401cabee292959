import type { FaultDefinition } from '../define/index.js';
import { GALLON_AT_1000_PSI, number } from './grade.js';

export const selectorLeak: FaultDefinition = {
  kind: 'selector-leak',
  title: 'Selector valve leaks inside',
  group: 'valves and lines',
  meaning: 'Worn or scored lands let oil pass from pressure to return and to the idle line.',
  shows:
    'All services slower going up, down a little; much flow at stall; body warm, a hiss. In neutral, what only oil holds sags or creeps.',
  confirm: 'Cap the outlets: the leak remains.',
  remedy: 'Rebuild or replace; flush.',
  caution:
    'Parts may creep with the lever in neutral: locks and pins, not the valve, make it safe. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'Function of the part: FAA-H-8083-31, landing gear chapter; signs and remedy: common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Lands wear slowly unless the oil is dirty.',
  befalls: ['selector-valve', 'open-centre-selector', 'solenoid-selector'],
  worst: '2 US gal/min at 1000 psi over each shut land, oil of 12 mPa s',
  slows: 'up',
  change: (p, severity) => ({
    leak: Math.min(1e-10, number(p, 'leak') + 2 * severity * GALLON_AT_1000_PSI),
  }),
};
