import type { Evidence, Flag } from './run.js';

/** A built-in rule: reads evidence, returns flags with signed margins. One file each. */
export interface RuleDefinition {
  /** Name, kebab-case, equal to the file's name. */
  readonly name: string;
  readonly title: string;
  /** What it asks for, in the trade's words, and where the default limit comes from. */
  readonly summary: string;
  readonly source: string;
  readonly kind: 'order' | 'within' | 'together' | 'never' | 'holds' | 'limit';
  /** Names of the limits (scenario `limits`) it uses. */
  readonly limits: readonly string[];
  readonly judge: (e: Evidence) => readonly Flag[];
}
