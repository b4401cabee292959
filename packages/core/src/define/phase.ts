/** Phases of a gear unit, from down to up and back: the words of logs, rules and cards. */
export const PHASES = [
  'down and locked',
  'unlocking',
  'travelling up',
  'up not locked',
  'up and locked',
  'doors closing',
  'up and closed',
  'doors opening',
  'travelling down',
  'down not locked',
  'stopped',
] as const;

export type Phase = (typeof PHASES)[number];
