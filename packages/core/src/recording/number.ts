const FIGURE = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d{1,3})?$/;
/** How loggers write that there is nothing. */
const NOTHING = /^(?:|-+|nan|n\/?a|null|none|#n\/a)$/i;

/**
 * A cell's number; NaN for a gap; undefined when it is neither. `comma`: commas do not part the
 * cells, so one may stand for the decimal point.
 */
export function numberOf(cell: string | undefined, comma: boolean): number | undefined {
  if (cell === undefined || NOTHING.test(cell)) return NaN;
  const plain = comma ? cell.replace(',', '.') : cell;
  return FIGURE.test(plain) ? Number(plain) : undefined;
}
