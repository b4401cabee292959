import type { Run } from '../define/index.js';
import { time } from './figure.js';
import { columns, wrap } from './layout.js';
import { settle } from './settled.js';

/** Widest row of events. */
const WIDTH = 120;
/** Narrowest column of causes. */
const LEAST_ROOM = 24;

/** The event log as a table; unless `whole`, without what nobody could see. */
export function eventTable(run: Run, whole: boolean): readonly string[] {
  const { start, changes, least, left } = settle(run, whole);
  const heads = [
    { title: '#', align: 'right' },
    { title: 'time s', align: 'right' },
    { title: 'device' },
    { title: 'from -> to' },
    { title: 'cause' },
  ] as const;
  const events = changes.map(({ entry, from, to }) => [
    String(entry.index),
    time(entry.t, 3),
    entry.device,
    from === '' ? to : `${from} -> ${to}`,
  ]);
  const taken = Math.max(...columns(heads.slice(0, -1), events).map((line) => line.length));
  const room = Math.max(LEAST_ROOM, WIDTH - taken - 4);
  const rows = events.flatMap((event, i) => {
    const { entry, by } = changes[i];
    const [first = '', ...rest] = wrap(
      by < 0 ? entry.cause : `${entry.cause} (from #${by})`,
      room,
      '',
    );
    // The rest of a long cause goes under its beginning.
    return [[...event, first], ...rest.map((line) => ['', '', '', '', line])];
  });
  const standing = [...start].map(([state, who]) => `${state}: ${who.join(', ')}`).join('; ');
  return [
    'Events',
    ...(standing === '' ? [] : wrap(`At the start ${standing}.`, 100, '  ')),
    ...columns(heads, rows).map((line) => `  ${line}`),
    ...(left > 0 ? [`  Left out: ${left} changes back and forth within ${least} s.`] : []),
  ];
}
