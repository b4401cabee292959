import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const plungerLoadHigh: FaultDefinition = {
  kind: 'plunger-load-high',
  title: 'Sequence valve plunger too stiff for its linkage',
  group: 'valves and lines',
  meaning:
    'The plunger takes more force than the mechanism can give at the pressure of the moment: a strong spring, pressure on its stem, or a poor place on the linkage.',
  shows:
    'The first part stops short where it meets the valve, and moves on with a jump when pressure rises, for instance when the other legs are home; the second part then slams.',
  confirm:
    'Move the valve out of the way: the first part goes the whole way. Or help it by hand from outside its arc: all is smooth.',
  remedy: 'Fit the right valve, clean a sticky stem, or move it to where the linkage has leverage.',
  caution:
    'A part stopped short by a valve goes on without warning: never reach past it. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'a home builders’ public archive',
  prior: 'rare',
  priorWhy: 'A design or rigging fault, found in the first swings.',
  befalls: ['sequence-valve'],
  worst: '800 N more of spring, and pressure on 150 mm2 more of stem',
  change: (p, severity) => ({
    plungerForce: add(number(p, 'plungerForce'), 800 * severity, 5000),
    plungerArea: add(number(p, 'plungerArea'), 1.5e-4 * severity, 1e-3),
  }),
};
