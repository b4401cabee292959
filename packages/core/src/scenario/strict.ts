import * as z from 'zod/mini';

/** An object that refuses unknown keys; their zod message carries the keys allowed instead. */
export function strict<T extends z.core.$ZodShape>(
  shape: T,
  alsoAllowed: readonly string[] = [],
): z.ZodMiniObject<T, z.core.$strict> {
  const keys = [...Object.keys(shape), ...alsoAllowed].join(',');
  return z.strictObject(shape, {
    error: (issue) => (issue.code === 'unrecognized_keys' ? keys : undefined),
  });
}
