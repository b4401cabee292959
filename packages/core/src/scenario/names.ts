/** `free-air` -> `freeAir`: how a key of the file is called in the definitions. */
export function camel(name: string): string {
  return name.replace(/-([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
}

/** `freeAir` -> `free-air`. */
export function kebab(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

/** The name in the definitions that a word of the file means; undefined when none does. */
export function findName(
  names: Readonly<Record<string, unknown>>,
  written: string,
): string | undefined {
  if (!NAME.test(written)) return undefined;
  if (Object.hasOwn(names, camel(written))) return camel(written);
  // What a state table names stays as it is written there.
  return Object.hasOwn(names, written) ? written : undefined;
}

/** Names the author gives to devices, mechanisms, nodes, units, cards and rules. */
export const NAME = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;
export const NAME_ALLOWED =
  'small letters, digits and single hyphens, beginning with a letter, up to 60';
export const LONGEST_NAME = 60;

/** What faults that befall the oil are on. */
export const FLUID = 'fluid';

/** Written in place of a node: the port is capped. */
export const BLANKED = 'blanked';

/** The node a capped port ends in. */
export function blankedNode(device: string, port: string): string {
  return `${device}-${kebab(port)}-${BLANKED}`;
}
