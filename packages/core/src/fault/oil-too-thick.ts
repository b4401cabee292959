import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const oilTooThick: FaultDefinition = {
  kind: 'oil-too-thick',
  title: 'Too thick an oil of the right base',
  group: 'fluid and environment',
  meaning: 'An oil of the same base, but thicker, was filled in: workshop oil for instance.',
  shows:
    'As cold oil, but on warm days too: moving pressure up both ways on everything, slow where a limit is reached, and worse still in the cold.',
  confirm: 'Compare a sample with fresh oil: run both out of a small hole, or send it in.',
  remedy: 'Drain, flush, fill with the oil that the placard names; bleed.',
  caution:
    'What an oil does at -40 degrees is not seen in a hangar: the emergency extension may be too slow in flight. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'common practice, no source; grades: ASTM D341 worked example, 32 mm2/s at 40 degC, against some 14',
  prior: 'uncommon',
  priorWhy: 'Cans look alike, and it works on the day.',
  befalls: ['fluid'],
  worst: 'five times as thick',
  slows: 'both',
  change: (p, severity) => {
    const thickness = number(p, 'thickness');
    return { thickness: Math.max(thickness, Math.min(20, thickness * (1 + 4 * severity))) };
  },
};
