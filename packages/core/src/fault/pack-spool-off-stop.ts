import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const packSpoolOffStop: FaultDefinition = {
  kind: 'pack-spool-off-stop',
  title: 'Shuttle spool of the power pack off its stop',
  group: 'valves and lines',
  meaning:
    'The spool hangs in its middle, where it shuts both sides in, instead of going over with the pressure and letting the idle side down at rest.',
  shows:
    'With the gear up, DOWN does nothing but raise the down gauge: the lock valve is not pushed open. Afterwards pressure stays on that idle side. Opening the lowering (dump) valve for a moment lets it out, and the gear with it.',
  confirm:
    'Gauges in both lines with the pack at rest: neither should stand under pressure but the up line that holds the gear.',
  remedy: 'Overhaul the pack; look for what the spool hangs on.',
  caution:
    'Letting trapped pressure out can drop a leg: pin or support it first, nobody near. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'a home builders’ public archive',
  prior: 'rare',
  priorWhy: 'Dirt or a burr on the spool.',
  befalls: ['power-pack'],
  worst: 'stuck in its middle, both ways shut there',
  slows: 'down',
  // A tenth of its way still lets most of the surplus out: only a spool that hardly moves shuts a side in.
  change: (p, severity) => ({
    spoolTravel: number(p, 'spoolTravel') * (1 - severity) ** 3,
    spoolUnderlap: number(p, 'spoolUnderlap') * (1 - severity) ** 3,
  }),
};
