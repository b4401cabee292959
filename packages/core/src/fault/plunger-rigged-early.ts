import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const plungerRiggedEarly: FaultDefinition = {
  kind: 'plunger-rigged-early',
  title: 'Sequence valve plunger rigged early',
  group: 'valves and lines',
  meaning:
    'The striker meets the plunger before the part that carries it has reached the end of its travel.',
  shows:
    'What the valve feeds starts too soon: a door comes up under the tyre, or a leg sets out against a door. The total time gets shorter, and a contact mark may be the only trace.',
  confirm:
    'Slow cycle by hand pump; watch at which point of the travel the plunger is touched, and measure what is left to go.',
  remedy:
    'Adjust or shim striker or plunger until the valve opens only with the part locked or at its stop; then swing slowly first.',
  caution:
    'Do the first cycle after any adjustment slowly, by hand pump, with somebody at the door: a door on a tyre bends both. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'US Army TM 1-1500-204-23-2 (plunger-operated sequence valves); FAA-H-8083-31 (sequence of gear and doors); signs: common practice, no source',
  prior: 'common',
  priorWhy: 'Strikers get bent, shimmed and re-adjusted at every door or leg change.',
  befalls: ['sequence-valve'],
  worst: '25 mm early at the plunger',
  change: (p, severity) => ({
    rigging: number(p, 'rigging') - 0.025 * severity,
  }),
};
