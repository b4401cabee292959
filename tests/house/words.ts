/** What no file of the project may say. Put together here, so that this file does not hold what it forbids. */
export const FORBIDDEN: readonly string[] = [
  ['registry', 'npmjs'].join('.'),
  ['registry', 'yarnpkg'].join('.'),
  ['deb', 'debian', 'org'].join('.'),
  ['', 'work', ''].join('/') + 'main',
  ['', 'work', ''].join('/') + 'shared',
  ['', 'work', '.library'].join('/'),
  ['..', 'shared', ''].join('/'),
  ['DESIGN', 'md'].join('.'),
  ['', 'tmp', 'brief'].join('/'),
];

/** The forbidden words in a text. */
export function forbiddenIn(text: string): string[] {
  return FORBIDDEN.filter((word) => text.includes(word));
}
