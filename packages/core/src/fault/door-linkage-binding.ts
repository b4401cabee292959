import type { FaultDefinition } from '../define/index.js';
import { bind, number } from './grade.js';

export const doorLinkageBinding: FaultDefinition = {
  kind: 'door-linkage-binding',
  title: 'Door linkage bent or binding',
  group: 'actuators, locks, structure',
  meaning:
    'A bent rod or a stiff link between a leg and its door binds over one stretch of the travel.',
  shows:
    'The gauge rises over that stretch, both ways, the door bulges, and that leg comes last where the supply has little to spare; free again with the door disconnected.',
  confirm: 'Disconnect the door and swing again; work the linkage by hand.',
  remedy: 'Replace the bent rod, free and grease the links.',
  caution:
    'A disconnected door falls open: hold it first. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Rods get bent by hands, feet and towbars.',
  befalls: ['door', 'linked-member'],
  worst:
    'friction of twice its greatest weight moment plus 20 N m over some degrees to either side of the tight spot',
  change: (p, severity) =>
    bind(p, severity, 20 + 2 * number(p, 'mass') * 9.81 * number(p, 'cog'), 1000),
};
