import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const bottleValveLeak: FaultDefinition = {
  kind: 'bottle-valve-leak',
  title: 'Bottle valve leaks down',
  group: 'emergency system',
  meaning: 'The seat of the blow-down valve is nicked: the charge creeps into the lines.',
  shows: 'Charge lost standing; gas pressure appears in the down line and resists UP.',
  confirm: 'Watch the gauge for 24 h; soap the outlet.',
  remedy: 'Reseat or replace.',
  caution:
    'Gas in a bottle is stored energy: a leg lets go at once and not slowly. Stand clear, vent the lines before a joint is opened, wear eye protection. Follow the aircraft’s approved data.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'A soft seat and a speck of dirt.',
  befalls: ['blow-down-valve'],
  worst: 'a hundredth of its area',
  change: (p, severity) => ({ ajar: Math.max(number(p, 'ajar'), 0.01 * severity) }),
};
