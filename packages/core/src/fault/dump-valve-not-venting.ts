import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const dumpValveNotVenting: FaultDefinition = {
  kind: 'dump-valve-not-venting',
  title: 'Dump valve does not open',
  group: 'emergency system',
  meaning: 'The valve that lets the up side out is seized, misrigged or blocked.',
  shows:
    'Emergency lowering slow or stopped on all legs, up line stays under pressure. Normal swings are fine.',
  confirm: 'Read the up line during the emergency test; cracking it frees the legs: stand clear.',
  remedy: 'Rig, clean or replace.',
  caution:
    'Gas in a bottle is stored energy: a leg lets go at once and not slowly. Stand clear, vent the lines before a joint is opened, wear eye protection. Follow the aircraft’s approved data.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Moved only in emergency tests.',
  befalls: ['dump-valve'],
  worst: 'does not open at all',
  change: (p, severity) => ({ opens: number(p, 'opens') * (1 - severity) }),
};
