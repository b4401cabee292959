import type { FaultDefinition } from '../define/index.js';
import { add, number } from './grade.js';

export const downlockStiff: FaultDefinition = {
  kind: 'downlock-stiff',
  title: 'Downlock stiff from ice or old grease',
  group: 'actuators, locks, structure',
  meaning: 'Old grease or ice in the downlock: it drops in slowly, the colder the slower.',
  shows:
    'DOWN: the leg is home, the light comes late; much later in the cold, nearly normal in a warm hangar.',
  confirm: 'Swing it again warm; work the lock by hand.',
  remedy: 'Clean out the old grease, relubricate with what the approved data names; dry it.',
  caution:
    'Until it has dropped in, oil alone holds the leg: keep the pressure on and wait for the lock. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Seen after a wash or with the wrong grease, in winter.',
  befalls: ['downlock', 'over-centre-brace'],
  worst: 'half a second more, 10 s more on top at -20 degC',
  slows: 'down',
  hangsOn: 'temperature',
  change: (p, severity) => ({
    delay: add(number(p, 'delay'), 0.5 * severity, 30),
    coldDelay: add(number(p, 'coldDelay'), 10 * severity, 60),
  }),
};
