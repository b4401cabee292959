import type { FaultDefinition } from '../define/index.js';

export const shuttleStuckNormal: FaultDefinition = {
  kind: 'shuttle-stuck-normal',
  title: 'Shuttle stuck on its normal side',
  group: 'emergency system',
  meaning: 'The shuttle valve is seized on its normal seat, by water, corrosion or a swollen seal.',
  shows: 'Normal swings are fine. On a blow-down that leg does nothing while the others lock.',
  confirm: 'Emergency test; look whether the shuttle has shifted; strip it.',
  remedy: 'Strip, clean and reseal, or replace; find where water came in.',
  caution:
    'Gas in a bottle is stored energy: a leg lets go at once and not slowly. Stand clear, vent the lines before a joint is opened, wear eye protection. Follow the aircraft’s approved data.',
  source: 'field reports of a seized shuttle found with a low bottle',
  prior: 'uncommon',
  priorWhy: 'Never moved between two emergency tests.',
  befalls: ['shuttle-valve'],
  worst: 'does not shift at all',
  change: (_p, severity) => ({ stuck: severity > 0 ? 'normal' : 'none' }),
};
