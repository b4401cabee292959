import type { Evidence, Flag, RuleEntry } from '../../define/index.js';
import { judgeHolds } from './holds.js';
import { judgeLimit } from './limit.js';
import { judgeNever } from './never.js';
import { judgeOrder } from './order.js';
import { judgeTogether } from './together.js';
import { judgeWithin } from './within.js';

export { holds } from './holds.js';
export { limit, limitValue } from './limit.js';
export { never } from './never.js';
export { order } from './order.js';
export { together } from './together.js';
export { within } from './within.js';

/** How each kind of user rule is judged: evidence and rule in, flags with signed margins out. */
export const kinds: Readonly<
  Record<RuleEntry['kind'], (e: Evidence, rule: RuleEntry) => readonly Flag[]>
> = {
  order: judgeOrder,
  within: judgeWithin,
  together: judgeTogether,
  never: judgeNever,
  holds: judgeHolds,
  limit: judgeLimit,
};
