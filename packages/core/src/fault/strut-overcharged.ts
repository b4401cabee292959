import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const strutOvercharged: FaultDefinition = {
  kind: 'strut-overcharged',
  title: 'Shortening strut charged too high',
  group: 'actuators, locks, structure',
  meaning: 'Too much gas in a strut that its link has to shorten.',
  shows:
    'That leg stalls or comes last late in its travel; cable or link is overloaded, the wheel may miss its well.',
  confirm:
    'Measure gas pressure and strut length against the servicing chart, temperature included.',
  remedy: 'Service the strut by the chart.',
  caution:
    'Gas under pressure: regulated dry nitrogen, eye protection, never oxygen; never loosen a valve body under pressure. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NAVEDTRA 14315 (struts charged too high or too low, shrink mechanism)',
  prior: 'uncommon',
  priorWhy: 'Struts are pumped up to look right.',
  befalls: ['leg'],
  worst: 'gas at two and a half times its pressure',
  slows: 'up',
  change: (p, severity) => ({
    gasPressure: Math.min(20e6, number(p, 'gasPressure') * (1 + 1.5 * severity)),
  }),
};
