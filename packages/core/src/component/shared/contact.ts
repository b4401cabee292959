/**
 * A switch's contact that may be stuck: parameter, constant and guard that devices with a contact
 * share. `k[0]` says what it is stuck at: 0 free, -1 at its first position, 1 at its second.
 */
import type { ChoiceParameter, GuardFrame, ModeDefinition } from '../../define/index.js';

/** Parameter for a contact with two positions, in the order of the device's modes. */
export function stuckParameter(first: string, second: string): ChoiceParameter {
  return {
    type: 'choice',
    title: 'stuck at',
    choices: ['none', first, second],
    default: 'none',
    why: 'free; a welded or seized contact, a broken or chafed wire stays as it is',
  };
}

/** The number for `k[0]`. */
export const stuckAt = (stuck: unknown, first: string, second: string): number =>
  stuck === second ? 1 : stuck === first ? -1 : 0;

/**
 * Two modes of a contact: `toSecond` and `toFirst` are above zero when a free contact goes there,
 * with the causes and what they read.
 */
export function contactModes(
  [first, second]: readonly [string, string],
  toSecond: readonly [when: (d: GuardFrame) => number, cause: string],
  toFirst: readonly [when: (d: GuardFrame) => number, cause: string],
  reads: readonly string[],
): Readonly<Record<string, ModeDefinition>> {
  return {
    [first]: {
      title: first,
      guards: [
        {
          to: second,
          when: (d) => (d.k[0] === 0 ? toSecond[0](d) : d.k[0]),
          cause: toSecond[1],
          reads,
        },
      ],
    },
    [second]: {
      title: second,
      active: true,
      guards: [
        {
          to: first,
          when: (d) => (d.k[0] === 0 ? toFirst[0](d) : -d.k[0]),
          cause: toFirst[1],
          reads,
        },
      ],
    },
  };
}
