/**
 * A problem in what the user wrote, as a value: collected, never thrown one at a time.
 */
export interface Issue {
  /** File name as given, or `<text>` when read from memory. */
  readonly file: string;
  /** 1-based place in the file; 0 when unknown. */
  readonly line: number;
  readonly column: number;
  /** Path in the file, e.g. `components.relief.crack`. */
  readonly path: string;
  /** One sentence: what is wrong. */
  readonly message: string;
  /** What was found there, shortened for display; may be empty. */
  readonly found: string;
  /** What is allowed there; may be empty. */
  readonly allowed: string;
  /** What to do, e.g. the nearest known name; may be empty. */
  readonly hint: string;
}

/** The one message template: `file:line:column: path: message, found …; allowed: … (hint)`. */
export function formatIssue(issue: Issue): string {
  const place = issue.line > 0 ? `${issue.file}:${issue.line}:${issue.column}` : issue.file;
  const path = issue.path === '' ? '' : ` ${issue.path}:`;
  const found = issue.found === '' ? '' : `, found ${issue.found}`;
  const allowed = issue.allowed === '' ? '' : `; allowed: ${issue.allowed}`;
  const hint = issue.hint === '' ? '' : ` (${issue.hint})`;
  return `${place}:${path} ${issue.message}${found}${allowed}${hint}`;
}
