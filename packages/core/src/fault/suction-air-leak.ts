import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const suctionAirLeak: FaultDefinition = {
  kind: 'suction-air-leak',
  title: 'Suction line draws air',
  group: 'supply',
  meaning:
    'A joint or seal between tank and pump lets air in, since the pressure there is below that outside: it sucks and does not drip.',
  shows:
    'Foam, bubbles in the sight glass, a howl, a ragged gauge and slow everything that the pump moves; worse at high speed.',
  confirm:
    'Run through an outside suction hose and watch for bubbles; oil wiped over a joint stops the howl for a moment.',
  remedy: 'Replace line, hose or seal; bleed, cycle and look for bubbles again.',
  caution:
    'Foam that reaches jacks makes them spring: a leg may jump on air left behind. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'a maker’s service manual of a light twin (retraction slow, air in the fluid; bubbles watched for in the stand’s tank)',
  prior: 'uncommon',
  priorWhy: 'Suction joints show no drip, so they are found late.',
  befalls: ['engine-pump', 'compensated-pump'],
  worst: 'nine tenths of each turn is air',
  slows: 'up',
  change: (p, severity) => ({
    suctionAir: number(p, 'suctionAir') + Math.max(0, 0.9 - number(p, 'suctionAir')) * severity,
  }),
};
