/** The field for a controller's state table. */
import type * as z from 'zod';
import type { StateTable } from '../define/parameter.js';
import { complain, field } from './field.js';

export function stateTableField(description: string): z.ZodType<StateTable> {
  return field(
    (value, context): StateTable =>
      complain(context, value, { problem: 'a state table belongs here', allowed: description }),
    { type: 'object', description },
  );
}
