import type { FaultDefinition } from '../define/index.js';
import { raised } from './grade.js';

export const reliefSetHigh: FaultDefinition = {
  kind: 'relief-set-high',
  title: 'Relief valve set high or stuck shut',
  group: 'supply',
  meaning: 'The relief valve opens above its setting: screwed up, the wrong spring, or stuck.',
  shows:
    'Times as ever; the pressure at the end of the stroke and at stall is high, with bangs, and in time blown seals. On a stand, the stand’s own limit acts first.',
  confirm:
    'Dead-head the system with a gauge, raising the pressure slowly and stopping at the approved limit.',
  remedy: 'Set it by the book, or replace it; inspect what was over-pressed.',
  caution:
    'Nothing guards the lines from the pump: raise pressure slowly and stop at the limit, whether or not the valve has opened. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Settings seldom wander up; they are screwed up to overcome a stall.',
  befalls: ['relief-valve'],
  worst: 'twice the setting',
  change: (p, severity) => raised(p, 1 + severity),
};
