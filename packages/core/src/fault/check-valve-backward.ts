import type { FaultDefinition } from '../define/index.js';

export const checkValveBackward: FaultDefinition = {
  kind: 'check-valve-backward',
  title: 'Check valve fitted the wrong way round',
  group: 'valves and lines',
  meaning:
    'After work on its line the arrow points the wrong way. All or nothing, whatever the severity.',
  shows:
    'From that job on, everything the valve feeds fails to finish, all legs alike; the supply works against its limit.',
  confirm: 'Follow the arrow on the body against the drawing.',
  remedy: 'Turn it round; look for what the pressure behind it has hurt.',
  caution:
    'Pressure stands where nobody looks for it: let it down before a fitting is opened. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NASA ASRS report 253327',
  prior: 'rare',
  priorWhy: 'Only after work on that line; threads usually fit both ways.',
  befalls: ['check-valve'],
  worst: 'reversed',
  slows: 'both',
  change: () => ({}),
  reconnect: ({ inlet, outlet, ...others }) => ({
    ...others,
    ...(outlet !== undefined && { inlet: outlet }),
    ...(inlet !== undefined && { outlet: inlet }),
  }),
};
