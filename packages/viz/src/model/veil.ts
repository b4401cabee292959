/** A run as it may be seen while a question about it is open: what is to come is not in it at all. */
import type { LogEntry, Picture } from '../worker/message.js';

const HIDDEN = 'that is for you to find out';

/** Cut at a time, s: nothing later is told, drawn or played. */
export function cutAt(picture: Picture, stop: number): Picture {
  const past = (t: number): number => (t <= stop + 1e-9 ? t : NaN);
  return {
    ...picture,
    channels: [],
    log: picture.log.filter((e) => e.t <= stop + 1e-9),
    // A flag judges its whole span.
    flags: picture.flags.filter((f) => f.to <= stop),
    timings: picture.timings
      .filter((t) => t.start <= stop)
      .map((t) => {
        const [locked, doors] = [past(t.locked), past(t.doors)];
        const total = Number.isNaN(locked + doors) ? NaN : t.total;
        return { ...t, moving: past(t.moving), locked, doors, total };
      }),
    outcome: {
      kind: 'done',
      time: Math.min(stop, picture.outcome.time),
      where: [],
      why: '',
      hint: '',
    },
  };
}

/** With what a bystander sees, and no more: legs, doors and locks; no faults, no flags, no reasons. */
export function bystander(picture: Picture): Picture {
  const locks = picture.units.flatMap((u) => [u.uplock, u.downlock]);
  return {
    ...picture,
    channels: [],
    faults: [],
    flags: [],
    timings: [],
    log: picture.log
      .filter((e) => e.kind !== 'note' && (e.kind !== 'mode' || locks.includes(e.device)))
      .map((e, index): LogEntry => ({ ...e, index, by: -1, cause: HIDDEN })),
  };
}
