import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const downlockNotOverCentre: FaultDefinition = {
  kind: 'downlock-not-over-centre',
  title: 'Downlock not over centre',
  group: 'actuators, locks, structure',
  meaning:
    'The brace stops short of, or on, the straight line: its spring alone holds the leg, not its geometry.',
  shows: 'Nothing: times normal, lights green. Under side load it collapses.',
  confirm: 'Straightedge along the brace; push it at the knee by hand, with the ground lock in.',
  remedy: 'Rig the over-centre by the approved procedure, then lock the adjustment.',
  caution:
    'The commonest way a leg folds with every light green. Ground locks in before anyone measures. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'NTSB report WPR18LA022 (collapse, downlock not over centre); signs: common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Follows any change of brace, rod or stop.',
  befalls: ['downlock', 'over-centre-brace'],
  worst: 'over-centre short of straight: by 2 degrees, or by 4 mm at the knee of a brace',
  change: (p, severity) => ({
    // A brace tells its over-centre in metres at the knee, the plain downlock in radians.
    overCentre:
      'upper' in p
        ? Math.max(-0.02, number(p, 'overCentre') - 0.008 * severity)
        : Math.max(-0.1, number(p, 'overCentre') - 0.065 * severity),
  }),
  silent: true,
};
