import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const hoseSwollen: FaultDefinition = {
  kind: 'hose-swollen',
  title: 'Hose soft with age',
  group: 'valves and lines',
  meaning:
    'Cover and braid have given: the hose swells with pressure and takes oil that should have moved something.',
  shows:
    'Soft, slow build of pressure, more hand pump strokes; outside it may be swollen, cracked or wet.',
  confirm:
    'Watch and feel for swelling from a distance as pressure is built slowly; read the date on the band.',
  remedy: 'Replace it; hoses have an age limit in the approved data.',
  caution:
    'A hose that swells is near to bursting: no hands on it under pressure, eye protection on. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NTSB report ERA17LA287 (age limit of rubber parts)',
  prior: 'uncommon',
  priorWhy: 'Hoses are kept beyond their date.',
  befalls: ['hose'],
  worst: 'ten times as soft as it was',
  slows: 'up',
  change: (p, severity) => ({
    softening: add(number(p, 'softening'), 9 * severity * number(p, 'softening'), 50),
  }),
};
