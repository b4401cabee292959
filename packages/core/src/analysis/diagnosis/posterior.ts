/** Beliefs from evidence: over severity, over causes, and which of them cannot be told apart. */
import type { Evidences } from './entry.js';
import { UNKNOWN } from './hypothesis.js';
import { anywhere, logSum, type Likelihood } from './likelihood.js';
import { stretchesOf, type Drawn, type Foretold, type Profile } from './profile.js';
import type { FittedSeverity, Hypothesis } from './shapes.js';

/** A hypothesis with its evidence: log of prior times likelihood, summed up over severity. */
export interface Belief {
  readonly hypothesis: Hypothesis;
  readonly log: number;
  /** Of a pair: how bad the first of the two is; what follows is about the second. */
  readonly first?: FittedSeverity;
  readonly severity: number;
  /** The one severity that fits best. */
  readonly peak: number;
  /** What it costs that only so much of the severities fits: log of evidence over best likelihood. */
  readonly narrowness: number;
  readonly severityRange: readonly [number, number];
  /** What it foretells with the fitted severity, for each setup. */
  readonly foretold: Foretold;
  /** Foretold of an aircraft from the scatter of healthy ones: on the nominal one another thing happens. */
  readonly offNominal?: true;
  /** Foretold of oil by so many standard deviations colder than was noted. */
  readonly cold?: number;
  /** The same at other severities that are likely, too. */
  readonly at: (severity: number) => Foretold;
}

/** How bad each of its causes is. */
export const severitiesOf = ({
  hypothesis,
  first,
  severity,
  severityRange,
}: Belief): readonly FittedSeverity[] =>
  hypothesis.causes.length === 0
    ? []
    : [...(first === undefined ? [] : [first]), { at: severity, range: severityRange }];

/** Log of how likely it is before any swing: by itself, and by what looks have shown. */
export const before = (likelihood: Likelihood, { prior, causes }: Hypothesis): number =>
  Math.log(prior) + likelihood.ofLooks(causes);

/** What a hypothesis comes to. The healthy aircraft has no severity. */
export function believe(
  likelihood: Likelihood,
  profile: Profile,
  look: 'quick' | 'close' = 'quick',
): Belief {
  const { hypothesis } = profile;
  const prior = before(likelihood, hypothesis);
  if (hypothesis.causes.length === 0) {
    const foretold = profile.at(0);
    const belief: Belief = {
      hypothesis,
      log: prior + likelihood.of(foretold),
      severity: 0,
      peak: 0,
      narrowness: 0,
      severityRange: [0, 0],
      foretold,
      at: () => foretold,
    };
    return onDrawn(likelihood, belief, profile.drawn);
  }
  const stretches = stretchesOf(profile, look);
  const severities = stretches.map((s) => s.severity);
  const colds = profile.colds.map(({ by, share }) => {
    const under = severities.map((s) => likelihood.of(profile.at(s, by)));
    return { by, log: Math.log(share), under, most: Math.max(...under) };
  });
  const fits = severities.map((_, i) => logSum(colds.map(({ log, under }) => log + under[i])));
  const { by: cold } = colds.reduce((a, b) => (b.log + b.most > a.log + a.most ? b : a));
  const at = (severity: number): Foretold => profile.at(severity, cold);
  const logs = fits.map((log, i) => log + Math.log(stretches[i].share));
  const sum = logSum(logs);
  const most = Math.max(...fits);
  const weights = logs.map((x) => Math.exp(x - sum));
  const severity = weights.reduce((mean, w, i) => mean + w * severities[i], 0);
  const belief: Belief = {
    hypothesis,
    log: prior + sum,
    severity,
    peak: severities[fits.indexOf(most)],
    narrowness: sum - most,
    severityRange: [quantile(severities, weights, 0.05), quantile(severities, weights, 0.95)],
    foretold: at(severity),
    at,
    ...(cold !== 0 && { cold }),
  };
  return onDrawn(likelihood, belief, profile.drawn);
}

/**
 * The nominal aircraft, whose scatter is straight, or one that was drawn from the scatter, each as likely as the
 * other: where a small thing decides what happens, nothing is straight.
 */
function onDrawn(likelihood: Likelihood, belief: Belief, drawn: readonly Drawn[]): Belief {
  if (drawn.length === 0) return belief;
  const fits = drawn.map(({ foretold }) => likelihood.of(foretold));
  const most = Math.max(...fits);
  const prior = before(likelihood, belief.hypothesis);
  // They were played at few severities: how narrowly these fit is taken to be as on the nominal one. What bounces does
  // much the same at any.
  const narrowness = belief.hypothesis.hangsOn === 'bounce' ? 0 : belief.narrowness;
  const log = prior + logSum(fits) - Math.log(drawn.length) + narrowness;
  const both = { ...belief, log: logSum([belief.log, log]) - Math.log(2) };
  const { severity, foretold } = drawn[fits.indexOf(most)];
  return log > belief.log
    ? { ...both, severity, foretold, at: () => foretold, offNominal: true }
    : both;
}

function quantile(
  severities: readonly number[],
  weights: readonly number[],
  share: number,
): number {
  let sum = 0;
  for (let i = 0; i < weights.length; i++) {
    sum += weights[i];
    if (sum >= share) return severities[i];
  }
  return severities[severities.length - 1];
}

/** How far from healthy something nobody knows may bring a figure: share of it, and s or Pa beside. */
const WIDE = { share: 0.4, time: 0.7, gauge: 1.5e6, flow: 6e-5, strokes: 6 } as const;

/**
 * Log of prior times likelihood of a cause that is not in the catalogue: figures about the healthy ones, or as likely
 * any at all, so that it is never worse than a known cause under which what was noted cannot come.
 */
export function unknownCause(evidences: Evidences, healthy: readonly number[]): number {
  let [about, any] = [0, 0];
  for (const [i, f] of evidences.figures.entries()) {
    const middle = Number.isNaN(healthy[i]) ? f.value : healthy[i];
    const width = WIDE.share * Math.abs(middle) + WIDE[f.kind];
    const z = (f.value - middle) / width;
    about += -0.5 * z * z - Math.log(width * Math.sqrt(2 * Math.PI));
    any += anywhere(f);
  }
  let log = Math.log(UNKNOWN) + logSum([about, any]) - Math.log(2);
  log += evidences.facts.length * Math.log(0.5);
  return evidences.looks.reduce((sum, look) => sum + Math.log(look.seen([])), log);
}

/**
 * Closer than this, in squared standard deviations of what was read, two causes are one to the reader: of
 * two that stand 2 x 1.28 apart the errors of reading make the wrong one fit better once in ten (normal
 * distribution, 0.9 quantile).
 */
const TOGETHER = (2 * 1.2816) ** 2;
/** Less likely than this, as a share of all that is known, is not shown: where nothing fits, what is nearest is. */
const TRACE = 1e-4;

/** Beliefs that these observations cannot tell apart, with the likeliest of each first. */
export function groupsOf(
  likelihood: Likelihood,
  beliefs: readonly (Belief & { readonly probability: number })[],
): (Belief & { readonly probability: number })[][] {
  const known = beliefs.reduce((sum, b) => sum + b.probability, 0);
  const open = beliefs.filter((b) => b.probability > TRACE * known);
  open.sort((a, b) => b.probability - a.probability);
  const groups: (typeof open)[] = [];
  for (const b of open) {
    const away = groups.map(([leader]) => apart(likelihood, leader, b));
    const least = Math.min(...away);
    if (least < TOGETHER) groups[away.indexOf(least)].push(b);
    else groups.push([b]);
  }
  return groups.sort((a, b) => total(b) - total(a));
}

const total = (group: readonly { readonly probability: number }[]): number =>
  group.reduce((sum, b) => sum + b.probability, 0);

/** Squared distance of the nearest that another comes to a leader, at the severities it may have. */
function apart(likelihood: Likelihood, leader: Belief, other: Belief): number {
  const [low, high] = other.severityRange;
  const looks = likelihood.looksApart(leader.hypothesis.causes, other.hypothesis.causes);
  const severities = [other.severity, other.peak, low, high];
  const leads = [leader.foretold, leader.at(leader.peak)];
  return (
    looks +
    Math.min(
      ...leads.flatMap((lead) => severities.map((s) => likelihood.distance(lead, other.at(s)))),
    )
  );
}
