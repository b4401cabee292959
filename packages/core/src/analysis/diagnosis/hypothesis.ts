import type { Catalogues, FaultDefinition, Scenario } from '../../define/index.js';
import { canBefall } from '../../scenario/index.js';
import { checks } from '../../check/index.js';
import type { ObservationSheet } from '../../observation/index.js';
import type { Cause, Hypothesis, SignatureJob } from './shapes.js';

/** How much likelier one is than another before anything was seen; the words stand in the catalogue. */
const WEIGHT: Readonly<Record<FaultDefinition['prior'], number>> = {
  common: 6,
  uncommon: 2,
  rare: 0.6,
};
/** A swing is timed at every annual, mostly of aircraft with nothing wrong; common practice, no source. */
const HEALTHY = 0.4;
/**
 * Each has its odds beside a healthy aircraft, but they do not come together by chance alone: who looks for a cause has
 * one mostly, and of those sheets one in ten has two (a choice; independent odds would make it four in ten).
 */
const BOTH = 0.15;
/** None of the catalogue: it cannot be whole. */
export const UNKNOWN = 0.01;

/**
 * The healthy aircraft first, then every fault wherever it can befall; one that no swing shows only where
 * somebody has looked for it.
 */
export function hypothesesOf(
  catalogues: Catalogues,
  scenario: Scenario,
  { looks = [] }: Pick<ObservationSheet, 'looks'>,
): readonly Hypothesis[] {
  const looked = new Set(looks.flatMap(({ check }) => checks[check]?.shows ?? []));
  const found = Object.values(catalogues.faults).flatMap((fault) =>
    fault.silent === true && !looked.has(fault.kind)
      ? []
      : canBefall(scenario, fault).map((on) => ({
          causes: [{ fault: fault.kind, on }],
          prior: WEIGHT[fault.prior],
          ...(fault.hangsOn !== undefined && { hangsOn: fault.hangsOn }),
        })),
  );
  const sum = found.reduce((total, h) => total + h.prior, 0);
  const rest = 1 - HEALTHY - UNKNOWN;
  return [
    { causes: [], prior: HEALTHY },
    ...found.map((h) => ({ ...h, prior: (h.prior / sum) * rest })),
  ];
}

/** How likely two faults at once are before anything was seen. */
export const priorOfBoth = (a: Hypothesis, b: Hypothesis): number =>
  (BOTH * a.prior * b.prior) / HEALTHY;

/** The same for the same causes in the same order. */
export const keyOf = (causes: readonly Cause[]): string =>
  causes.map((c) => `${c.fault} ${c.on}`).join('+');

/** What is wrong by a hypothesis, all its causes as bad as that. */
export const faultsOf = (
  { causes }: Pick<Hypothesis, 'causes'>,
  severity: number,
): SignatureJob['faults'] => causes.map((c) => ({ ...c, severity }));

/** The same, each as bad as it is. */
export const faultsAt = (
  causes: readonly Cause[],
  severities: readonly number[],
): SignatureJob['faults'] => causes.map((c, i) => ({ ...c, severity: severities[i] }));

/** The swing that shows a hypothesis. */
export const jobOf = (
  hypothesis: Pick<Hypothesis, 'causes'>,
  severity: number,
  setup: number,
): SignatureJob => ({ setup, faults: faultsOf(hypothesis, severity) });
