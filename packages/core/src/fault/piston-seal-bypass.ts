import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const pistonSealBypass: FaultDefinition = {
  kind: 'piston-seal-bypass',
  title: 'Piston seal by-pass',
  group: 'actuators, locks, structure',
  meaning: 'Oil passes the piston seal from the pressure side to the return side.',
  shows:
    'That leg or door comes last going up and sags when the supply stops before it is locked; coming down hardly changes. More strokes by hand pump, more flow at stall, worse when warm.',
  confirm:
    'At the end of the stroke open the far port: oil keeps coming. Or count hand pump strokes.',
  remedy: 'Reseal the actuator, look for a scored bore, and bleed.',
  caution:
    'Never crack a fitting under pressure except where the procedure says so; oil from a small opening goes through skin. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NAVEDTRA 14329 (internal leakage); signs: common practice, no source',
  prior: 'common',
  priorWhy: 'Rings roll, wear and harden; the usual end of an actuator’s life.',
  befalls: ['double-acting-actuator', 'locking-actuator', 'single-acting-actuator'],
  worst: '1 US gal/min at 1000 psi, oil of 12 mPa s',
  slows: 'up',
  change: (p, severity) => ({
    bypass: add(number(p, 'bypass'), severity * GALLON_AT_1000_PSI),
  }),
};
