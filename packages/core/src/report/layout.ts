/** A column of a plain text table. */
export interface Column {
  readonly title: string;
  readonly align?: 'left' | 'right';
}

/**
 * Lines of a table with columns as wide as their widest cell, two spaces apart; nothing trails
 * the last column. Cells are made plain first.
 */
export function columns(
  heads: readonly Column[],
  rows: readonly (readonly string[])[],
): readonly string[] {
  const cells = [heads.map((h) => h.title), ...rows].map((row) => row.map(plain));
  const widths = heads.map((_, i) => Math.max(...cells.map((row) => row[i].length)));
  return cells.map((row) =>
    row
      .map((cell, i) =>
        heads[i].align === 'right' ? cell.padStart(widths[i]) : cell.padEnd(widths[i]),
      )
      .join('  ')
      .trimEnd(),
  );
}

/** Text in lines of at most `width` characters, each after `indent`. */
export function wrap(text: string, width: number, indent: string): readonly string[] {
  const lines: string[] = [];
  let line = indent;
  for (const word of plain(text)
    .split(/\s+/)
    .filter((w) => w !== '')) {
    if (line.length > indent.length && line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent;
    }
    line += line.length > indent.length ? ` ${word}` : word;
  }
  return line.length > indent.length ? [...lines, line] : lines;
}

/** Titles and notes come from files of others: no control characters reach a terminal. */
export function plain(text: string): string {
  // eslint-disable-next-line no-control-regex -- exactly those are meant
  return text.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]+/g, ' ');
}
