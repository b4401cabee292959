import type { CheckDefinition } from '../define/index.js';

export const riggingLookedAt: CheckDefinition = {
  kind: 'rigging-looked-at',
  title: 'Follow rods, lines and arrows',
  how: 'Selector to its detent, jack’s ends, lines to their ports, arrows on valves, against the drawing.',
  minutes: 15,
  tools: 'drawing, mirror, lamp',
  caution: 'Legs and doors move with lethal force: jacks, area clear, stop word agreed.',
  source: 'common practice, no source',
  shows: [
    'selector-not-in-detent',
    'selector-linkage-detached',
    'lines-transposed',
    'actuator-reversed',
    'actuator-bottoms-early',
    'actuator-check-left-out',
    'restrictor-reversed',
    'check-valve-backward',
    'quick-disconnect-half-mated',
    'pack-spool-off-stop',
    'blow-down-cable-broken',
  ],
};
