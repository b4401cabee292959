/**
 * Pressure switch: opens above one pressure and closes again below a lower one. It stops a pump's
 * motor once the gear is home, or tells that a system has pressure.
 */
import type { DeviceDefinition } from '../define/index.js';
import { contactModes, stuckAt, stuckParameter } from './shared/contact.js';
import { mustExceed, number } from './shared/parameters.js';

const OPENS = 1;
const CLOSES = 2;

export const pressureSwitch: DeviceDefinition = {
  kind: 'pressure-switch',
  title: 'Pressure switch',
  summary: 'Opens a contact above one pressure and closes it again below a lower one.',
  source: 'common practice, no source: snap-action contact with two settings',
  role: 'switch',
  parameters: {
    opens: {
      title: 'opens above',
      quantity: 'gauge-pressure',
      range: [1e5, 4e7],
      why: 'no default: it belongs to the system it watches',
    },
    closes: {
      title: 'closes again below',
      quantity: 'gauge-pressure',
      range: [5e4, 3.9e7],
      why: 'no default: a fifth or so below the opening pressure, or the pump would stutter; common practice, no source',
    },
    stuck: stuckParameter('closed', 'open'),
  },
  ports: { pressure: { title: 'pressure', volume: 1e-6 } },
  signals: {
    closed: { title: 'closed', value: (d) => 1 - d.mode },
    open: { title: 'open', value: (d) => d.mode },
  },
  modes: contactModes(
    ['closed', 'open'],
    [(d) => d.pressure(0) - d.k[OPENS], 'pressure above the opening setting'],
    [(d) => d.k[CLOSES] - d.pressure(0), 'pressure below the closing setting'],
    ['pressure'],
  ),
  initialMode: (p) => (p.stuck === 'open' ? 'open' : 'closed'),
  check: (p) => mustExceed(p, 'opens', 'closes', 'must be above the pressure at which it closes'),
  prepare: (p, s) =>
    Float64Array.of(
      stuckAt(p.stuck, 'closed', 'open'),
      s.ambient + number(p, 'opens'),
      s.ambient + number(p, 'closes'),
    ),
  symbol: { name: 'pressure-switch', size: [4, 4], ports: { pressure: [0, -2] } },
};
