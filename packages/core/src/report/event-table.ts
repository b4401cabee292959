import type { Run } from '../define/index.js';
import { time } from './figure.js';
import { columns, wrap } from './layout.js';
import { settle } from './settled.js';

/** Widest row of events. */
const WIDTH = 120;
/** Narrowest column of causes. */
const LEAST_ROOM = 24;

/**
 * The event log as a table, each with the number of the event that brought it about; unless
 * `whole`, without what nobody could see.
 */
export function eventTable(run: Run, whole: boolean): readonly string[] {
  const { start, changes, least, left } = settle(run, whole);
  const heads = [
    { title: '#', align: 'right' },
    { title: 'time s', align: 'right' },
    { title: 'device' },
    { title: 'becomes' },
    { title: 'by', align: 'right' },
    { title: 'because' },
  ] as const;
  const events = changes.map(({ entry, to, by }) => [
    String(entry.index),
    time(entry.t, 3),
    entry.device,
    to,
    by < 0 ? '' : `#${by}`,
  ]);
  const taken = Math.max(...columns(heads.slice(0, -1), events).map((line) => line.length));
  const room = Math.max(LEAST_ROOM, WIDTH - taken - 4);
  const rows = events.flatMap((event, i) => {
    const [first = '', ...rest] = wrap(changes[i].entry.cause, room, '');
    // The rest of a long cause goes under its beginning.
    return [[...event, first], ...rest.map((line) => ['', '', '', '', '', line])];
  });
  const standing = [...start].map(([state, who]) => `${who.join(', ')}: ${state}`).join('; ');
  return [
    'Events',
    ...(standing === '' ? [] : wrap(`At the start: ${standing}.`, 100, '  ')),
    ...columns(heads, rows).map((line) => `  ${line}`),
    ...(left > 0 ? [`  Left out: ${left} changes back and forth within ${least} s.`] : []),
  ];
}
