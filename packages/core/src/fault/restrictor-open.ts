import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const restrictorOpen: FaultDefinition = {
  kind: 'restrictor-open',
  title: 'One-way restrictor missing or too large',
  group: 'valves and lines',
  meaning: 'The restriction is drilled out, left out or of the wrong size.',
  shows:
    'Up normal; down fast, with a bang and a bounced lock. The leg outruns its supply and the oil behind it tears.',
  confirm: 'Measure the orifice, read the part number.',
  remedy: 'Fit the correct part; look for damage at stops, rods and braces.',
  caution:
    'A leg that comes down undamped breaks things: stop swinging until it is put right. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'Function of the part: FAA-H-8083-31, landing gear chapter; signs and remedy: common practice, no source',
  prior: 'rare',
  priorWhy: 'Only after the wrong part was fitted.',
  befalls: ['one-way-restrictor'],
  worst: 'bore as wide as the free direction',
  hangsOn: 'bounce',
  change: (p, severity) => ({
    bore: number(p, 'bore') + severity * Math.max(0, number(p, 'freeBore') - number(p, 'bore')),
  }),
};
