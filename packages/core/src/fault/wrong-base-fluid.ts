import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const wrongBaseFluid: FaultDefinition = {
  kind: 'wrong-base-fluid',
  title: 'Seals ruined by oil of the wrong base',
  group: 'fluid and environment',
  meaning:
    'Oil of another base has swollen and softened the seals of this actuator; it befalls each actuator that the oil has reached.',
  shows:
    'Within days the actuator sticks: it starts at a higher pressure and moves late. Then the softened seals let go: by-pass inside, later wet outside.',
  confirm: 'Colour and smell of a sample, then a laboratory; every rubber part is suspect.',
  remedy:
    'Strip everything, renew every rubber part and hose, flush with what the approved data names. Topping up does not cure it.',
  caution:
    'A mixed system is unsafe from the first day, whatever the times say. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'US Army course AL0907 (fluids and their seals); course of it: common practice, no source',
  prior: 'rare',
  priorWhy: 'Needs the wrong can; colour usually warns.',
  befalls: ['double-acting-actuator', 'single-acting-actuator', 'locking-actuator'],
  worst:
    'twenty times the seal friction and 0.15 of the pressure force more; by-pass, from half severity on, up to 1 US gal/min at 1000 psi',
  slows: 'up',
  change: (p, severity) => ({
    seals: add(number(p, 'seals'), 19 * severity * number(p, 'seals'), 5000),
    pressureFriction: add(number(p, 'pressureFriction'), 0.15 * severity, 0.5),
    bypass: add(number(p, 'bypass'), Math.max(0, 2 * severity - 1) * GALLON_AT_1000_PSI),
  }),
};
