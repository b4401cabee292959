import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const packSpoolOffStop: FaultDefinition = {
  kind: 'pack-spool-off-stop',
  title: 'Shuttle spool of the power pack off its stop',
  group: 'valves and lines',
  meaning:
    'The spool hangs away from where its springs should bring it: it shuts the down side in and leaves the up side open to the tank.',
  shows:
    'Pressure stays on the idle down side after DOWN, and the next UP does nothing, or the pump runs and the up gauge stays low. Opening the lowering (dump) valve for a moment lets the pressure out.',
  confirm: 'Gauges in both lines with the pack at rest: one should not stand under pressure.',
  remedy: 'Overhaul the pack; look for what the spool hangs on.',
  caution:
    'Letting trapped pressure out can move a leg: pins in, nobody near. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'a home builders’ public archive',
  prior: 'rare',
  priorWhy: 'Dirt or a burr on the spool.',
  befalls: ['power-pack'],
  worst: 'stuck six tenths of its travel towards the down side',
  slows: 'up',
  change: (p, severity) => ({
    spoolTravel: number(p, 'spoolTravel') * (1 - severity),
    spoolRest: number(p, 'spoolRest') - severity * Math.max(0, number(p, 'spoolRest') + 0.6),
  }),
};
