import type { FaultDefinition } from '../define/index.js';
import { acrossBore, number } from './grade.js';
import { ownChamber } from './ports.js';

export const debrisLodged: FaultDefinition = {
  kind: 'debris-lodged',
  title: 'Debris in an orifice or an actuator’s port',
  group: 'valves and lines',
  meaning:
    'A chip, a piece of seal or sealant lies in the narrow way out of an actuator, in an orifice or in a lowering valve.',
  shows: 'One unit slow or stopped part-way, often in one direction only; odd cycles before it.',
  confirm: 'Sample the oil; swap parts left and right; strip what the slow side moves with.',
  remedy: 'Clean, find where it came from, flush upstream and downstream of it.',
  caution:
    'What hangs on debris comes free without warning: support it before anything is opened. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'New Zealand TAIC inquiry, 30 September 2010 (debris in a gear actuator’s orifice); signs: common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Filters stop most; what is broken off behind them they do not.',
  befalls: ['orifice', 'double-acting-actuator', 'locking-actuator', 'manual-lowering-valve'],
  worst:
    'next to nothing passes: an orifice a tenth of its bore; the way out of an actuator’s head end, or a lowering valve’s way from the up line, shut',
  slows: 'down',
  change: (p, severity): Record<string, number> => {
    if (Object.hasOwn(p, 'blockedHead'))
      return { blockedHead: Math.max(number(p, 'blockedHead'), acrossBore(severity)) };
    if (Object.hasOwn(p, 'blocked')) return { blocked: Math.max(number(p, 'blocked'), severity) };
    return {
      bore: Math.max(Math.min(number(p, 'bore'), 1e-4), number(p, 'bore') * (1 - 0.9 * severity)),
    };
  },
  reconnect: (ports) => ownChamber(ports, 'head'),
};
