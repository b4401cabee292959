import type { FaultDefinition } from '../define/index.js';
import { add, GALLON_AT_1000_PSI, number } from './grade.js';

export const checkValveLeak: FaultDefinition = {
  kind: 'check-valve-leak',
  title: 'Check valve leaks backward',
  group: 'valves and lines',
  meaning: 'The poppet does not seat: oil goes back through the valve.',
  shows:
    'Nothing while pumping; when the supply stops, pressure is lost and what oil alone held up or closed sags. A hand pump handle creeps.',
  confirm: 'Isolate the valve and watch the gauge with the supply off.',
  remedy: 'Reseat or replace; flush.',
  caution:
    'Stand clear of anything that only trapped oil holds. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'Function of the part: FAA-H-8083-31, landing gear chapter; signs and remedy: common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Dirt on the seat.',
  befalls: ['check-valve'],
  worst: '1 US gal/min at 1000 psi, oil of 12 mPa s',
  change: (p, severity) => ({
    leak: add(number(p, 'leak'), severity * GALLON_AT_1000_PSI),
  }),
};
