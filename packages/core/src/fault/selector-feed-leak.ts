import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const selectorFeedLeak: FaultDefinition = {
  kind: 'selector-feed-leak',
  title: 'Selector feeds the up line in neutral',
  group: 'valves and lines',
  meaning:
    'Pressure leaks past a land or seat into the up line with the lever in neutral, faster than the line can lose it.',
  shows:
    'The idle up line shows pressure; a lock that it releases lets go and the leg or door creeps up by itself while the supply runs. Nothing with the supply off.',
  confirm:
    'A gauge in the up line, lever in neutral, supply on: it climbs. It stops when the pressure port is capped.',
  remedy: 'Rebuild or replace the selector; flush.',
  caution:
    'A leg can leave its downlock without anyone touching the lever: ground lock pins in, nobody near, before the supply is switched on. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'rare',
  priorWhy: 'Takes a scored land on one side and a tight one on the other.',
  befalls: ['selector-valve', 'open-centre-selector', 'solenoid-selector'],
  worst: '1 US gal/min at 1000 psi from pressure to the up line, oil of 12 mPa s',
  change: (p, severity) => ({
    leakFeedUp: add(number(p, 'leakFeedUp'), severity * GALLON_AT_1000_PSI, 1e-10),
  }),
};
