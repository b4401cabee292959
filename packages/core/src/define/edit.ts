/** One change to a scenario file: the value at a path, as it would be written there. */
export interface Edit {
  /** Dotted path in the file, e.g. `components.left-jack.bore`, `limits.time-up`. */
  readonly path: string;
  /** On one line, with its unit: `42 mm`, `closed`, `[3 mm, 40 mm]`. */
  readonly value: string;
}
