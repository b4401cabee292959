import type { FaultDefinition } from '../define/index.js';

export const blowDownCableBroken: FaultDefinition = {
  kind: 'blow-down-cable-broken',
  title: 'Blow-down cable broken',
  group: 'emergency system',
  meaning: 'The cable or line that works the valve at the bottle has parted or is unhooked.',
  shows: 'The handle comes, nothing discharges.',
  confirm: 'Pull test with the bottle valve made safe.',
  remedy: 'Replace and rig the cable; wire and seal the handle.',
  caution:
    'Gas in a bottle is stored energy: a leg lets go at once and not slowly. Stand clear, vent the lines before a joint is opened, wear eye protection. Follow the aircraft’s approved data.',
  source: 'common practice, no source',
  prior: 'rare',
  priorWhy: 'A cable that is never pulled rusts unseen.',
  befalls: ['blow-down-valve'],
  worst: 'no discharge at all',
  change: (p, severity) => ({ linked: severity > 0 ? false : p.linked }),
};
