import type { CheckDefinition } from '../define/index.js';

export const wetLook: CheckDefinition = {
  kind: 'wet-look',
  title: 'Look for oil',
  how: 'Wipe everything dry, swing, and go along lines, hoses, fittings and rods with card and mirror.',
  minutes: 12,
  tools: 'rag, card, mirror, lamp',
  caution:
    'A pinhole’s jet goes through skin: card and mirror, never a hand. Pressure off and bled to zero before a joint is opened; never feel for a leak by hand.',
  source: 'common practice, no source',
  shows: ['line-pinhole', 'fitting-leak', 'rod-seal-leak', 'pump-joint-leak', 'hose-swollen'],
  sure: 0.9,
};
