import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const thermalContraction: FaultDefinition = {
  kind: 'thermal-contraction',
  title: 'Trapped oil has cooled',
  group: 'fluid and environment',
  meaning:
    'Filled and shut in warm, then cold-soaked: the oil has shrunk and no longer fills what is shut off.',
  shows:
    'Doors that oil alone holds shut droop, without any loss of oil; one to three strokes or a touch of pressure bring them home. Never in summer.',
  confirm: 'The same wait at one temperature: no droop. Then it is no leak.',
  remedy: 'Nothing to put right; follow the procedure for cold weather.',
  caution:
    'A drooping door can be caught by the slipstream or by the leg. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'an owners’ public forum thread on gear doors that droop in the cold; shrinking: expansion of the oil (see the oil’s data)',
  prior: 'common',
  priorWhy: 'Every cold night after a warm hangar, where doors have no lock.',
  befalls: ['fluid'],
  worst: 'cooled by 40 K since it was shut in',

  change: (p, severity) => ({
    warmedBy: Math.min(number(p, 'warmedBy'), Math.max(-80, number(p, 'warmedBy') - 40 * severity)),
  }),
};
