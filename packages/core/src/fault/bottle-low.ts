import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const bottleLow: FaultDefinition = {
  kind: 'bottle-low',
  title: 'Bottle low',
  group: 'emergency system',
  meaning: 'Less gas than the table asks for: leaked, or charged warm and read hot.',
  shows: 'Normal swings are fine; a blow-down is slow or incomplete everywhere.',
  confirm: 'Gauge and temperature against the table.',
  remedy: 'Find the leak, charge by the table, read again when cool.',
  caution:
    'Gas in a bottle is stored energy: a leg lets go at once and not slowly. Stand clear, vent the lines before a joint is opened, wear eye protection. Follow the aircraft’s approved data.',
  source: 'common practice, no source',
  prior: 'common',
  priorWhy: 'Read without its temperature more often than not.',
  befalls: ['gas-bottle'],
  worst: 'one tenth of the charge',
  change: (p, severity) => ({ charge: number(p, 'charge') * (1 - 0.9 * severity) }),
};
