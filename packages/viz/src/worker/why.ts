/** What a caught error says: code may throw anything. */
export const whyOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);
