import type { FaultDefinition } from '../define/index.js';
import { acrossBore, number } from './grade.js';
import { ownChamber } from './ports.js';

export const actuatorCheckLeftOut: FaultDefinition = {
  kind: 'actuator-check-left-out',
  title: 'Check inside an actuator left out or put in the wrong way',
  group: 'valves and lines',
  meaning:
    'After a reseal the small check at the rod end is missing or turned: oil comes in there freely and goes out badly or not at all.',
  shows:
    'UP (where the jack extends to raise): slow, odd order, or a stop part-way with the gauge at its limit and the rod end’s pressure above it; the other way is normal.',
  confirm: 'A gauge at the rod end while it stands still. Then strip it.',
  remedy: 'Reassemble by the drawing; prove it on the bench, both ways, before it is fitted.',
  caution:
    'Pressure in the shut-in end is higher than the supply’s: let it down before a line is opened, and stand clear. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'a repair shop’s published article on check valves in gear actuators (2017)',
  prior: 'rare',
  priorWhy: 'Only after a reseal.',
  befalls: ['double-acting-actuator', 'locking-actuator'],
  worst: 'the way out of the rod chamber shut',
  slows: 'up',
  change: (p, severity) => ({
    blockedRod: Math.max(number(p, 'blockedRod'), acrossBore(severity)),
  }),
  reconnect: (ports) => ownChamber(ports, 'rod'),
};
