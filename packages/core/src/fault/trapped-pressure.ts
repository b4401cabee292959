import type { FaultDefinition } from '../define/index.js';
import { number } from './grade.js';

export const trappedPressure: FaultDefinition = {
  kind: 'trapped-pressure',
  title: 'Oil trapped: a way home that does not open',
  group: 'valves and lines',
  meaning:
    'The way by which oil must leave is shut in the return direction: a restrictor plugged, the free return of a sequence valve or a lowering valve stuck. What it holds is locked by oil.',
  shows:
    'The part hangs, part-way or at its start, with nothing jammed; static pressure stays in that line, and a hand pump is solid. The other direction is healthy.',
  confirm:
    'Read the gauges of both lines at rest. With the part supported, letting that line down a little lets it move.',
  remedy: 'Clean or replace the valve; find why it stuck.',
  caution:
    'Cracking that line drops the leg at once: support or pin it first, stand out of its arc, catch the oil. Follow the aircraft’s approved data; legs and doors move with lethal force, so keep clear and agree a stop word before the next swing.',
  source: 'NTSB report ERA09IA338 (gear freed by opening a line); a home builders’ public archive',
  prior: 'uncommon',
  priorWhy: 'One of the small ways in a valve that is seldom looked at.',
  befalls: [
    'one-way-restrictor',
    'sequence-valve',
    'pressure-sequence-valve',
    'manual-lowering-valve',
  ],
  worst: 'shut: what is left is a bore of 0.1 mm, or a leak',
  slows: 'down',
  change: (p, severity): Record<string, number> => {
    if (Object.hasOwn(p, 'freeStuckShut'))
      return { freeStuckShut: Math.max(number(p, 'freeStuckShut'), severity) };
    if (Object.hasOwn(p, 'blocked')) return { blocked: Math.max(number(p, 'blocked'), severity) };
    const bore = number(p, 'bore');
    return { bore: bore + severity * (Math.min(bore, 1e-4) - bore) };
  },
};
