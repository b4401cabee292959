import type { FaultDefinition } from '../define/index.js';
import { bind, number } from './grade.js';

export const bentBrace: FaultDefinition = {
  kind: 'bent-brace',
  title: 'Bent brace or linkage',
  group: 'actuators, locks, structure',
  meaning: 'Brace, link or rod is bent and binds over one stretch of the travel.',
  shows:
    'The gauge rises over the same few degrees, up and down alike; that leg hesitates there while the others go on, and may catch up after.',
  confirm: 'Rub marks; disconnect and swing by hand: tight at one angle. Measure the part.',
  remedy: 'Replace the bent part, look for what bent it.',
  caution:
    'A bent strut has lost most of its strength against buckling. Never straighten it in place. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Follows towing beyond the stops, a hard landing, or jacking mistakes.',
  befalls: ['leg'],
  worst:
    'friction of the greatest weight moment over some degrees to either side of the tight spot',
  change: (p, severity) => bind(p, severity, number(p, 'mass') * 9.81 * number(p, 'cog'), 5000),
};
