import type { FaultDefinition } from '../define/index.js';

export const selectorLinkageDetached: FaultDefinition = {
  kind: 'selector-linkage-detached',
  title: 'Selector linkage detached',
  group: 'valves and lines',
  meaning:
    'A rod or cable between lever and valve has come off: the valve stays where it was last. All or nothing, whatever the severity.',
  shows:
    'Whatever is selected, this group stays in its last selection: no motion, gauges as they were.',
  confirm: 'Watch the valve’s arm while someone moves the lever.',
  remedy: 'Reconnect, with the locking device the drawing asks for; look at the other joints.',
  caution:
    'Reconnecting selects: relieve pressure and pin the gear before the rod goes on. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NTSB report LAX90IA305',
  prior: 'rare',
  priorWhy: 'Only where a joint was left unlocked.',
  befalls: ['selector-valve', 'open-centre-selector'],
  worst: 'no connection',
  slows: 'both',
  change: (p, severity) => ({ linked: p.linked !== false && !(severity > 0) }),
};
