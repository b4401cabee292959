/** Path of a Chromium-family browser on this machine; undefined when there is none. */
export function findBrowser(): string | undefined;
/** What to tell a person whose machine has none. */
export const MISSING: string;
