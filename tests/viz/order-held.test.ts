import { describe, expect, it } from 'vitest';
import { answer } from '../../packages/viz/src/worker/answer.js';
import type { FaultEntry, Picture } from '../../packages/viz/src/worker/message.js';
import { orderOf, sentenceOfOrder } from '../../packages/viz/src/model/order.js';
import type { Arrival } from '../../packages/viz/src/model/order.js';
import { TEXT } from './demo.js';

function made(...faults: FaultEntry[]): Picture {
  const { reply } = answer({ id: 2, file: 'hedgelark.yaml', text: TEXT, faults });
  if (reply.kind !== 'picture') throw new Error(JSON.stringify(reply));
  return reply.picture;
}

const at = (t: number, device: string, to: string, movement = 'up'): Arrival => ({
  movement,
  device,
  to,
  t,
});
const HELD = [
  at(5, 'left-leg', 'at up'),
  at(6, 'left-door', 'at closed'),
  at(7, 'tail-leg', 'at up'),
];

describe('the order of a run beside that of one that is held', () => {
  it('is the same, be it slower or faster, until two change places', () => {
    const slower = HELD.map((a) => ({ ...a, t: 1.5 * a.t }));
    expect(sentenceOfOrder(slower, HELD)).toBe('Order: the same.');
    const early = [at(4.2, 'left-door', 'at closed'), at(5, 'left-leg', 'at up'), HELD[2]];
    expect(sentenceOfOrder(early, HELD)).toBe(
      'Another order: going up, left door closed 0.80\u00a0s before left leg up; it was 1.00\u00a0s after it.',
    );
  });

  it('counts two that come together, now and then, as one time', () => {
    const near = [at(5, 'left-leg', 'at up'), at(5.05, 'right-leg', 'at up')];
    const round = [at(5, 'right-leg', 'at up'), at(5.1, 'left-leg', 'at up')];
    expect(sentenceOfOrder(round, near)).toBe('Order: the same.');
    const clear = [at(5, 'right-leg', 'at up'), at(5.3, 'left-leg', 'at up')];
    expect(sentenceOfOrder(clear, near)).toContain('right leg up 0.30\u00a0s before left leg up');
  });

  it('tells what does not come any more, and says nothing of movements that only one of them has', () => {
    expect(sentenceOfOrder(HELD.slice(0, 2), HELD)).toBe('Not any more: going up, tail leg up.');
    expect(sentenceOfOrder(HELD.slice(0, 1), HELD)).toContain('left door closed, and 1 more');
    const lowered = [at(9, 'left-leg', 'at down', 'down')];
    expect(sentenceOfOrder([...HELD, ...lowered], HELD)).toBe('Order: the same.');
    expect(sentenceOfOrder(lowered, HELD)).toBe('');
  });

  it('is that of the log: each part once a movement, when it comes to stay', () => {
    const picture = made();
    const order = orderOf(picture);
    const names = order.map((a) => `${a.movement} ${a.device} ${a.to}`);
    expect(new Set(names).size).toBe(names.length);
    // Up: locked, then the door; down: the door open, then the lock let go, then locked down.
    for (const side of ['left', 'right']) {
      const place = (what: string): number => names.indexOf(what.replace('SIDE', side));
      const chain = [
        'up SIDE-uplock engaged',
        'up SIDE-door at closed',
        'down SIDE-uplock open',
        'down SIDE-leg at down',
      ].map(place);
      expect(chain).toEqual([...chain].sort((a, b) => a - b));
      expect(chain).not.toContain(-1);
      // A door that bounces on its stop is there when it stays.
      const door = order[place('down SIDE-door at open')];
      const log = picture.log.filter((e) => e.device === `${side}-door` && e.to === 'at open');
      expect(door?.t).toBe(log.at(-1)?.t);
      expect(log.length).toBeGreaterThan(2);
    }
    const early = made({ fault: 'plunger-rigged-early', on: 'left-door-close-valve', severity: 1 });
    expect(sentenceOfOrder(orderOf(picture), order)).toBe('Order: the same.');
    expect(sentenceOfOrder(orderOf(early), order)).toMatch(
      /^(Another order|Not any more): going up, left door/,
    );
  });
});
