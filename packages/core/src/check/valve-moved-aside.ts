import type { CheckDefinition } from '../define/index.js';

export const valveMovedAside: CheckDefinition = {
  kind: 'valve-moved-aside',
  title: 'Move the valve away from its linkage',
  how: 'With the sequence valve’s plunger out of reach of the linkage: does the leg go the whole way without a stop?',
  minutes: 10,
  tools: 'tools for the bracket',
  caution:
    'The door stays open, or moves unasked: clear of both. Legs and doors move with lethal force: jacks, area clear, stop word agreed.',
  source: 'builders’ archive of a kit aeroplane, 2005, in public excerpts',
  shows: ['plunger-load-high', 'plunger-rigged-early'],
  sure: 0.9,
};
