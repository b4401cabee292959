/**
 * A pure function whose last result for each object is kept for as long as the object: one change of a
 * scenario leaves most of it the objects they were. Further arguments count by identity.
 */
export function kept<K extends object, A extends readonly unknown[], R>(
  work: (key: K, ...rest: A) => R,
): (key: K, ...rest: A) => R {
  const known = new WeakMap<K, { readonly rest: A; readonly result: R }>();
  return (key, ...rest) => {
    const before = known.get(key);
    if (before !== undefined && same(before.rest, rest)) return before.result;
    const result = work(key, ...rest);
    known.set(key, { rest, result });
    return result;
  };
}

function same(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((each, i) => Object.is(each, b[i]));
}
