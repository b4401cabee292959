import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const returnFilterLoaded: FaultDefinition = {
  kind: 'return-filter-loaded',
  title: 'Return filter loaded',
  group: 'supply',
  meaning:
    'The element in the return line is blocked by what it caught, so everything has to push its oil home.',
  shows:
    'Moving pressure is up both ways on everything, and the idle line never falls to zero while oil moves; slower once a supply’s limit is reached, doors may drift. At rest it reads zero.',
  confirm:
    'A gauge in the return line ahead of the filter while something moves; look at its indicator.',
  remedy: 'Change the element; look at what is in it, and find where that came from.',
  caution:
    'Back pressure on the idle side can hold a lock or a pressure switch where nobody expects it. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source:
    'back pressure that holds a pressure switch open: a home builders’ public archive; the rest common practice, no source',
  prior: 'uncommon',
  priorWhy: 'Return elements are changed with the pressure elements or forgotten with them.',
  befalls: ['filter'],
  worst: 'next to nothing passes the element; what does goes round by its by-pass',
  slows: 'both',
  change: (p, severity) => ({ loading: 1 - (1 - number(p, 'loading')) * (1 - severity) }),
};
