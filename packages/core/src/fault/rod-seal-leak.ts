import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const rodSealLeak: FaultDefinition = {
  kind: 'rod-seal-leak',
  title: 'Rod seal leak',
  group: 'actuators, locks, structure',
  meaning: 'Oil passes the rod seal to the outside.',
  shows: 'Wet rod and a falling reservoir level; times do not change until the reservoir runs low.',
  confirm: 'Wipe the rod dry, cycle, look again; use card or mirror.',
  remedy: 'Reseal; look at the rod for scores and at the wiper.',
  caution:
    'Never feel for a leak by hand: a jet at working pressure goes through skin and is a surgical emergency. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'US Army TM 5-2350-262 (leak classes); signs: common practice, no source',
  prior: 'common',
  priorWhy: 'A wet rod is the leak seen most often.',
  befalls: ['double-acting-actuator', 'locking-actuator'],
  worst: '100 cm3/min at 1000 psi, oil of 12 mPa s',
  change: (p, severity) => ({
    rodSealLeak: number(p, 'rodSealLeak') + severity * 2.4e-13,
  }),
};
