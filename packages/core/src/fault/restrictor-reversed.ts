import type { FaultDefinition } from '../define/index.js';

export const restrictorReversed: FaultDefinition = {
  kind: 'restrictor-reversed',
  title: 'One-way restrictor fitted the wrong way round',
  group: 'valves and lines',
  meaning:
    'The arrow points the wrong way: restricted going up, free going down. All or nothing, whatever the severity.',
  shows:
    'Up with a high gauge, that leg last (slow once the supply’s limit is reached); down it slams.',
  confirm: 'Look at the arrow on the body.',
  remedy: 'Turn it round; look for damage from the slams.',
  caution:
    'A leg that comes down undamped breaks things: stop swinging until it is put right. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'Function of the part: FAA-H-8083-31, landing gear chapter; signs and remedy: common practice, no source',
  prior: 'rare',
  priorWhy: 'Only after work on that line; threads usually fit both ways.',
  befalls: ['one-way-restrictor'],
  worst: 'reversed',
  hangsOn: 'bounce',
  slows: 'up',
  change: (p, severity) => ({
    reversed: (p.reversed === true) !== severity > 0,
  }),
};
