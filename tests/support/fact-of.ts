/** What a fact says of figures that stand under their names. */
import type { Fact } from '../../packages/core/src/analysis/diagnosis/fact.js';
import { Keys } from '../../packages/core/src/analysis/diagnosis/keys.js';

export function likelihoodOfFact(
  { seen }: Fact,
  figures: Readonly<Record<string, number>>,
): number {
  const keys = new Keys();
  return seen((key) => keys.reader(key))(keys.vector(figures));
}
