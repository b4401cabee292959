import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const shuttleCrossLeak: FaultDefinition = {
  kind: 'shuttle-cross-leak',
  title: 'Shuttle leaks across',
  group: 'emergency system',
  meaning: 'A scratched seat or seal lets oil into the gas line, and gas into the normal line.',
  shows:
    'Foam in the reservoir after a blow-down; in normal swings oil weeps into the vented gas line.',
  confirm: 'Open the vent of the gas line with pressure on, and watch it.',
  remedy: 'Reseal or replace.',
  caution:
    'Gas in a bottle is stored energy: a leg lets go at once and not slowly. Stand clear, vent the lines before a joint is opened, wear eye protection. Follow the aircraft’s approved data.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Seals age whether it moves or not.',
  befalls: ['shuttle-valve'],
  worst: '0.1 gal/min at 1000 psi',
  change: (p, severity) => ({ leak: add(number(p, 'leak'), 0.1 * severity * GALLON_AT_1000_PSI) }),
};
