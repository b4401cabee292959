import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const selectorNotInDetent: FaultDefinition = {
  kind: 'selector-not-in-detent',
  title: 'Selector short of its detent',
  group: 'valves and lines',
  meaning: 'Lever or linkage stops short, so the spool uncovers its ports in part or not at all.',
  shows:
    'Slow both ways, or the gear stops on its way with a lever that looks selected; a valve that idles in neutral lets the pump run on at no pressure. A fresh, full selection may cure it for once. Here the linkage stops short every time.',
  confirm:
    'Disconnect the linkage and move the valve itself to its stop: the gear goes. Measure rod and lever.',
  remedy: 'Rig the linkage so that the valve, not the lever, meets its stop first.',
  caution:
    'A lock may be half released while the lever says locked: look at the locks, not at the lever. Do not move the valve by hand with anyone near a leg. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'selection cured by a fresh one: a home builders’ public archive; lock half released after a lever out of its notch: NTSB report CEN10IA030',
  prior: 'uncommon',
  priorWhy: 'Linkages lengthen with wear; a lever is set down in haste.',
  befalls: ['selector-valve', 'open-centre-selector'],
  worst: 'nine tenths of the shift missing: beyond the overlap, so every port stays shut',
  slows: 'up',
  change: (p, severity) => ({
    // A valve that would not come past its own neutral is refused.
    stopShort: Math.max(
      number(p, 'stopShort'),
      severity * Math.min(0.9, 0.98 - Math.abs(number(p, 'rigging'))),
    ),
  }),
};
