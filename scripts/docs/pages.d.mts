import type * as Core from '../../packages/core/src/index.js';
import type {
  DeviceDefinition,
  FaultDefinition,
  MechanismDefinition,
  RuleDefinition,
} from '../../packages/core/src/index.js';

type Kind = DeviceDefinition | MechanismDefinition;

/** YAML of examples: pieces as the pages show them, and complete scenarios around them. */
export interface Examples {
  piece(definition: Kind): string;
  card(fault: FaultDefinition): string;
  limits(rule: RuleDefinition): string | undefined;
  whole(definition: Kind): string;
  wholeWithFault(fault: FaultDefinition): string;
  wholeWithLimits(piece: string): string;
}

export function headComment(source: string): string | undefined;

export function cataloguePages(
  core: typeof Core,
  sources: {
    readonly read: (path: string) => string | undefined;
    readonly scenarios: readonly string[];
  },
): { readonly pages: ReadonlyMap<string, string>; readonly examples: Examples };
