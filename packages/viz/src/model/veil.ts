/** A run as it may be seen while a question about it is open: what is to come is not in it at all. */
import { GAP_SIZE } from '../worker/bay-message.js';
import type { Approaches, ClearanceFacts } from '../worker/bay-message.js';
import type { LogEntry, Picture } from '../worker/message.js';

const HIDDEN = 'that is for you to find out';

/** Of no run that channels could be asked for. */
const veiled = (picture: Picture): Picture => {
  const { blowDown, ...rest } = picture;
  const { run, ...facts } = blowDown ?? {};
  const bottle = run === undefined ? blowDown : (facts as typeof blowDown);
  return {
    ...rest,
    ...(bottle && { blowDown: bottle }),
    run: -Math.abs(picture.run),
    channels: [],
  };
};

/** Clearances as they were until a time. */
function approachesUntil(all: Approaches, stop: number): Approaches {
  const looks = all.looks.filter((t) => t <= stop);
  return { looks, clearances: all.clearances.flatMap((c) => nearestOf(c, looks)) };
}

function nearestOf(c: ClearanceFacts, looks: Float64Array): ClearanceFacts[] {
  const gaps = c.gaps.slice(0, looks.length * GAP_SIZE);
  let at = -1;
  looks.forEach((_, i) => {
    const distance = gaps[i * GAP_SIZE] ?? NaN;
    if (distance < (at < 0 ? Infinity : (gaps[at * GAP_SIZE] ?? NaN))) at = i;
  });
  if (at < 0) return [];
  const [distance = NaN, y1 = NaN, z1 = NaN, y2 = NaN, z2 = NaN] = gaps.slice(at * GAP_SIZE);
  const gap = { distance, from: [y1, z1], to: [y2, z2] } as const;
  return [{ ...c, gaps, least: { t: looks[at] ?? NaN, gap } }];
}

/** Cut at a time, s: nothing later is told, drawn or played. */
export function cutAt(picture: Picture, stop: number): Picture {
  const past = (t: number): number => (t <= stop + 1e-9 ? t : NaN);
  return {
    ...veiled(picture),
    approaches: approachesUntil(picture.approaches, stop),
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
    ...veiled(picture),
    // Where plungers and clearances are is what the checks are for.
    bay: { ...picture.bay, plungers: [] },
    approaches: { ...picture.approaches, clearances: [] },
    circuit: { ...picture.circuit, parts: [], nodes: [] },
    faults: [],
    flags: [],
    timings: [],
    log: picture.log
      .filter((e) => e.kind !== 'note' && (e.kind !== 'mode' || locks.includes(e.device)))
      .map((e, index): LogEntry => ({ ...e, index, by: -1, cause: HIDDEN })),
  };
}
