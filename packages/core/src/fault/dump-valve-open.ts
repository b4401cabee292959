import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const dumpValveOpen: FaultDefinition = {
  kind: 'dump-valve-open',
  title: 'Dump valve left open',
  group: 'emergency system',
  meaning: 'The valve has not been reset, or leaks: the up line is joined to the return.',
  shows: 'UP selected: no motion, three greens, the pump runs freely. DOWN is fine.',
  confirm: 'Look at its handle; feel or listen to the return.',
  remedy: 'Reset it, or reseat it.',
  caution:
    'Gas in a bottle is stored energy: a leg lets go at once and not slowly. Stand clear, vent the lines before a joint is opened, wear eye protection. Follow the aircraft’s approved data.',
  source: 'question-and-answer threads of owners: emergency selector not reset',
  prior: 'common',
  priorWhy: 'Forgotten after every emergency test.',
  befalls: ['dump-valve'],
  worst: 'fully open',
  slows: 'up',
  change: (p, severity) => ({ ajar: Math.max(number(p, 'ajar'), severity) }),
};
