/**
 * Position switch (microswitch, limit switch): a mechanism makes it when its angle passes the
 * point it is rigged to, and it opens again a little before that point (its differential travel).
 * Its rigging is its own: it tells where the switch is made, not whether a lock is home.
 *
 * Made beyond at + rigged on the side named (above or below), open again `gap` before that.
 */
import type { DeviceDefinition, GuardFrame } from '../define/index.js';
import { contactModes, stuckAt, stuckParameter } from './shared/contact.js';
import { number } from './shared/parameters.js';

const SENSE = 1;
const MAKES = 2;
const GAP = 3;

/** How far beyond its making point the mechanism is, rad. */
const beyond = (d: GuardFrame): number => d.k[SENSE] * d.travel(0) - d.k[MAKES];

export const positionSwitch: DeviceDefinition = {
  kind: 'position-switch',
  title: 'Position switch',
  summary:
    'Tells by wire that a leg or door has passed an angle. Use a plunger-operated sequence valve where oil, not current, is sequenced.',
  source: 'common practice, no source: snap-action switch with differential travel',
  role: 'switch',
  parameters: {
    at: {
      title: 'angle at which it makes, rigged right',
      quantity: 'angle',
      range: [-0.5, 3.5],
      why: 'no default: a degree or so before the end of travel it tells of, or rubber and wear keep it from making',
    },
    side: {
      type: 'choice',
      title: 'side of that angle on which it is made',
      choices: ['above', 'below'],
      default: 'above',
      why: 'above: leg up or door open, as their mechanisms count',
    },
    gap: {
      title: 'way back before it opens again',
      quantity: 'angle',
      range: [1e-4, 0.5],
      default: 0.01,
      why: 'about half a degree: a millimetre of lever on an arm of some 100 mm; common practice, no source',
    },
    rigged: {
      title: 'rigging offset, positive makes late',
      quantity: 'angle',
      range: [-1, 1],
      default: 0,
      why: 'rigged right',
    },
    stuck: stuckParameter('open', 'made'),
  },
  ports: {},
  links: { mechanism: { title: 'mechanism it watches', shape: 'plain' } },
  signals: {
    made: { title: 'made', value: (d) => d.mode },
    open: { title: 'open (its normally closed contact)', value: (d) => 1 - d.mode },
  },
  modes: contactModes(
    ['open', 'made'],
    [beyond, 'the mechanism makes the switch'],
    [(d) => -d.k[GAP] - beyond(d), 'the mechanism lets the switch open'],
    ['mechanism'],
  ),
  initialMode: (p) => (p.stuck === 'made' ? 'made' : 'open'),
  prepare: (p) => {
    const sense = p.side === 'below' ? -1 : 1;
    return Float64Array.of(
      stuckAt(p.stuck, 'open', 'made'),
      sense,
      sense * number(p, 'at') + number(p, 'rigged'),
      number(p, 'gap'),
    );
  },
  symbol: { name: 'position-switch', size: [4, 4], ports: {} },
};
