import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const strutNotExtended: FaultDefinition = {
  kind: 'strut-not-extended',
  title: 'Strut not fully extended',
  group: 'actuators, locks, structure',
  meaning: 'Low on gas or oil, or sticking: the strut does not come out all the way on jacks.',
  shows:
    'The squat switch does not say air and the lever stays locked; or the wheel comes up further in than its well is cut for.',
  confirm: 'Measure the strut’s length on jacks against the servicing chart.',
  remedy: 'Service the strut by the chart; if it sticks, strip it.',
  caution:
    'Gas under pressure: regulated dry nitrogen, eye protection, never oxygen; never loosen a valve body under pressure. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'NTSB report NYC06FA128 (strut low on fluid, lever locked, nose leg wedged); Civil Aeronautics Board report, 1941',
  prior: 'common',
  priorWhy: 'Struts lose gas, and are serviced by looks.',
  befalls: ['leg', 'squat-switch'],
  worst: '60 mm short (of a short leg a tenth of its length)',
  change: (p, severity): Record<string, number> =>
    'makesAt' in p
      ? { strutExtension: Math.max(0, number(p, 'strutExtension') - 0.06 * severity) }
      : {
          stuckShort: add(
            number(p, 'stuckShort'),
            severity * Math.min(0.06, 0.1 * number(p, 'length')),
            0.5,
          ),
        },
};
