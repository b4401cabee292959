import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const oilTooThin: FaultDefinition = {
  kind: 'oil-too-thin',
  title: 'Too thin an oil of the right base',
  group: 'fluid and environment',
  meaning: 'A thinner oil, or one whose thickener has been sheared down.',
  shows:
    'Every leak is larger: more strokes, more flow at stall, quicker sag, worse warm. Restrictors of the orifice kind hardly notice, lines even gain.',
  confirm: 'Compare a sample with fresh oil; leaks that were inside limits are now outside.',
  remedy: 'Drain, flush, fill with the oil that the placard names; bleed.',
  caution:
    'Thin oil carries bearings and pumps badly: look for wear before trusting the new oil. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'rare',
  priorWhy: 'Thin oils are dear; old ones shear down slowly.',
  befalls: ['fluid'],
  worst: 'a quarter as thick',

  change: (p, severity) => {
    const thickness = number(p, 'thickness');
    return { thickness: Math.min(thickness, Math.max(0.05, thickness / (1 + 3 * severity))) };
  },
};
