/** Ranks what explains a sheet: one worker believes, others play what it wants to know, over ports of their own. */
import {
  catalogues,
  checkConditions,
  checks,
  diagnose,
  diagnosisDocument,
  playAhead,
  signaturePlayer,
  taskSender,
} from '@wheelwell/core';
import type {
  Diagnosis,
  ObservationSheet,
  Scenario,
  SentTask,
  Signature,
  SignatureMemory,
  SignaturePool,
  SignatureTask,
} from '@wheelwell/core';
import type {
  DiagnosisJob,
  DiagnosisReply,
  DiagnosisRequest,
  Ranking,
} from './diagnosis-message.js';
import { keptSwings } from './kept-swings.js';
import type { KeptSwings } from './kept-swings.js';
import type { System } from './message.js';
import { isNoted } from './noted.js';
import { poolBehind } from './port-pool.js';
import { scenarioIn } from './reading.js';
import { whyOf } from './why.js';

type Tell = (reply: DiagnosisReply) => void;

/** Time to the first ranking and between two on the way, ms, and so many times as long as one takes. */
const FIRST = 500;
const PAUSE = 400;
const SPARING = 6;
/** So far on, what is remembered of former sheets among it, the first ranking does not wait. */
const FAR = 0.6;

/** Playing ahead takes minutes; so often what was played is written, should the page be left, ms. */
const OFTEN = 10_000;

/** So far on, the ranking stands and swings are played for the checks. */
const CHECKS = 0.95;

/** What is being ranked, and how many sheets were until then. */
let current = { aborted: true };
let sheets = 0;
/** What was played of the scenario that was ranked last. */
let known: (KeptSwings & { readonly scenario: string }) | undefined;

export async function explain(job: DiagnosisJob, tell: Tell): Promise<void> {
  if (job.kind === 'play-signatures') return player(job.port);
  current.aborted = true;
  if (job.kind === 'leave-diagnosis') return;
  const signal = { aborted: false };
  current = signal;
  const { request, ports } = job;
  try {
    const kept = await keptOf(request);
    // What was asked since has begun with what is known.
    if (signal.aborted) return;
    const own = job.kind === 'diagnose' ? ++sheets : sheets;
    // Who plays ahead leaves time for it.
    const goOn = (): boolean => own === sheets;
    const work = {
      request,
      signal,
      keep: () => void kept.keep(goOn),
      memory: kept.memory,
      pool: poolBehind<SignatureTask, Signature>(ports, taskSender),
    };
    if (job.kind === 'diagnose') await rank(work, tell);
    else await ahead(work, tell);
    work.keep();
  } catch (error) {
    tell(broken(request, error));
  }
}

/** What is asked, and what it is worked out with. */
interface Work {
  readonly request: DiagnosisRequest;
  readonly signal: { readonly aborted: boolean };
  /** Has what was played written, until another sheet is asked about: what is left then is written after that. */
  readonly keep: () => void;
  readonly memory: SignatureMemory;
  readonly pool: SignaturePool;
}

const broken = ({ id }: DiagnosisRequest, error: unknown): DiagnosisReply => ({
  id,
  kind: 'broken',
  message: whyOf(error),
});

/** The scenario read last: one and the same as long as it is asked about, for what is kept of it. */
let last: { readonly written: string; readonly scenario: Scenario } | undefined;

function scenarioOf({ scenario: source, read }: DiagnosisRequest): Scenario {
  const written = JSON.stringify(source);
  if (last?.written === written) return last.scenario;
  const scenario = read ?? scenarioIn(source);
  last = { written, scenario };
  return scenario;
}

async function keptOf({ scenario }: DiagnosisRequest): Promise<KeptSwings> {
  const written = JSON.stringify(scenario);
  if (known?.scenario !== written) known = { scenario: written, ...(await keptSwings(written)) };
  return known;
}

async function rank({ request, ...work }: Work, tell: Tell): Promise<void> {
  const { id, sheet, recordings } = request;
  const scenario = scenarioOf(request);
  let next = performance.now() + FIRST;
  let first = true;
  let whole = false;
  const ranked = (share: number, found: Diagnosis): void =>
    tell({ id, kind: 'ranked', share, whole, ranking: inWords(scenario, sheet, found) });
  const diagnosis = await diagnose(scenario, stretched(request), {
    ...work,
    recordings,
    onProgress: (share, sofar) => {
      const now = performance.now();
      const due = now >= next || (first && share >= FAR);
      if (work.signal.aborted || whole || !due) return;
      const found = sofar();
      // The healthy aircraft itself is still being played.
      if (found.groups.length === 0) return;
      ranked(share, found);
      first = false;
      const done = performance.now();
      next = done + Math.max(PAUSE, SPARING * (done - now));
    },
    onRanked: (found) => {
      if (work.signal.aborted) return;
      whole = true;
      ranked(CHECKS, found);
    },
  });
  if (work.signal.aborted) return;
  tell({ id, kind: 'whole', runs: diagnosis.runs, ranking: inWords(scenario, sheet, diagnosis) });
}

/** Of a sheet with nothing on it nothing is concluded; what it will want is played. */
async function ahead({ request, keep, ...work }: Work, tell: Tell): Promise<void> {
  const { id } = request;
  let next = 0;
  let keepNext = performance.now() + OFTEN;
  await playAhead(scenarioOf(request), stretched(request), {
    ...work,
    onProgress: (share) => {
      if (performance.now() < next) return;
      tell({ id, kind: 'played', share });
      const now = performance.now();
      next = now + PAUSE;
      if (now < keepNext) return;
      keepNext = now + OFTEN;
      keep();
    },
  });
  if (!work.signal.aborted) tell({ id, kind: 'played', share: 1 });
}

/** Plays swings for the one who ranks. */
function player(port: MessagePort): void {
  const play = signaturePlayer();
  port.onmessage = (e: MessageEvent<SentTask>) => port.postMessage(play(e.data));
}

/**
 * The sheet as it is played: rows that say nothing yet ask for no swing of their own, and every way of
 * the card is there, so that what was played still serves when the next way has been timed.
 */
function stretched({ sheet, ways }: DiagnosisRequest): ObservationSheet {
  const rows = sheet.swings.map((s) => (isNoted(s) ? s : { ...s, conditions: {} }));
  const conditions = rows.find(isNoted)?.conditions ?? {};
  const more = ways
    .filter((direction) => !rows.some((s) => s.direction === direction))
    .map((direction) => ({ ...EMPTY, direction, conditions }));
  return { ...sheet, swings: [...rows, ...more] };
}

const EMPTY = { times: {}, order: [], gauges: {}, remarks: {}, recordings: [], note: '' } as const;

function inWords(scenario: Scenario, sheet: ObservationSheet, diagnosis: Diagnosis): Ranking {
  const { title } = scenario;
  const { faults } = catalogues;
  const of = (system: System): Ranking[System] => {
    const document = diagnosisDocument({ title, faults, checks }, sheet, diagnosis, system);
    return {
      ...document,
      checks: document.checks.map((line) => {
        const conditions = checkConditions(scenario, sheet, line.check);
        return { ...line, ...(conditions && { conditions }) };
      }),
    };
  };
  return { us: of('us'), metric: of('metric') };
}
