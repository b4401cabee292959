/** An entry of a catalogue by name; never something JavaScript objects have of themselves. */
export function lookUp<T>(catalogue: Readonly<Record<string, T>>, name: unknown): T | undefined {
  return typeof name === 'string' && Object.hasOwn(catalogue, name) ? catalogue[name] : undefined;
}
