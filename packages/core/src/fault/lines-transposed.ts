import type { FaultDefinition } from '../define/index.js';
import { crossed } from './ports.js';

export const linesTransposed: FaultDefinition = {
  kind: 'lines-transposed',
  title: 'Two lines transposed',
  group: 'valves and lines',
  meaning:
    'Two lines at one unit are joined the wrong way round: up and down at a selector or power pack, head and rod end at an actuator. All or nothing, whatever the severity.',
  shows:
    'One way nothing or the opposite happens, the other may look normal until a lock or a stop is met. On an actuator, that leg alone; on a selector, everything it serves.',
  confirm:
    'Follow each line to its port; crack nothing. Move one unit slowly by hand pump and feel which line gets firm.',
  remedy:
    'Swap them; mark both ends before lines come off. Then a full swing, the emergency system too: its lines may be crossed as well.',
  caution:
    'A lever that does the opposite kills: first swing after line work by hand pump, with the arcs clear and someone at the supply. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NTSB report NYC00IA150 (gear retraction lines reversed)',
  prior: 'rare',
  priorWhy: 'Only after line work; ports are often of one size.',
  befalls: [
    'selector-valve',
    'open-centre-selector',
    'solenoid-selector',
    'power-pack',
    'double-acting-actuator',
    'locking-actuator',
  ],
  worst: 'transposed',
  slows: 'both',
  change: () => ({}),
  reconnect: (ports) =>
    ports.up === undefined ? crossed(ports, 'head', 'rod') : crossed(ports, 'up', 'down'),
};
