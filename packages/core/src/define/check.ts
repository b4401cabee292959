import type { Role } from './device.js';

/** What a check changes for a swing; SI as on an observation sheet. */
export interface CheckConditions {
  /** Times what the supply gives, or the oil's temperature goes up by, K. */
  readonly flowShare?: number;
  readonly warmer?: number;
  readonly doors?: 'disconnected';
}

/** What a mechanic can do to tell causes apart: another swing, or a look at one part. */
export interface CheckDefinition {
  /** Name on sheets, kebab-case, equal to the file's name. */
  readonly kind: string;
  readonly title: string;
  /** How it is done, in general words; the aircraft's approved data rules. */
  readonly how: string;
  /** Time it takes with what else it needs, min. */
  readonly minutes: number;
  readonly tools: string;
  readonly caution: string;
  /** Where the check is from. */
  readonly source: string;
  /** A swing under other conditions; its times go on the sheet like those of any other. */
  readonly swing?: CheckConditions;
  /** Kinds of fault that a look at the part they have befallen shows. */
  readonly shows?: readonly string[];
  /** Role that something of the aircraft must have for the check to be made at all. */
  readonly needs?: Role;
  /** What it shows is heard, felt or seen of the whole gear, wherever the cause sits. */
  readonly anywhere?: boolean;
  /** How often it shows what is there; 0.95 when absent. */
  readonly sure?: number;
  /** How often the same is found with nothing of the kind about; 0.03 when absent. */
  readonly besides?: number;
}
