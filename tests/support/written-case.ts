/** Written cases of the trade: a sheet as published, what it was, and where the diagnosis has it. */
import {
  diagnose,
  expectedSwings,
  formatIssue,
  readObservations,
  simulate,
  type Cause,
  type Diagnosis,
  type ExpectedSwing,
  type Scenario,
} from '@wheelwell/core';
import { expect } from 'vitest';

/** What a case was, as `fault` or `fault on part`. */
export type Accepted = string;

export interface WrittenCase {
  readonly scenario: Scenario;
  /** The sheet after its first line. */
  readonly sheet: string;
  /** The cause that was found; any one of them is it. */
  readonly cause: readonly Accepted[];
  /** What may not be on top. */
  readonly wrong?: readonly Accepted[];
}

const memories = new WeakMap<Scenario, Map<string, Readonly<Record<string, number>>>>();

/** The diagnosis of a sheet, which must read without a complaint. Swings of one scenario are kept. */
export async function judge({ scenario, sheet }: WrittenCase): Promise<Diagnosis> {
  const text = `wheelwell-observations: 1\n${sheet}`;
  const read = readObservations(text, { file: 'case', scenario });
  const complaints = [...read.issues, ...read.contradictions].map(formatIssue);
  if (read.sheet === undefined || complaints.length > 0) throw new Error(complaints.join('\n'));
  const memory = memories.get(scenario) ?? new Map<string, Readonly<Record<string, number>>>();
  memories.set(scenario, memory);
  const found = await diagnose(scenario, read.sheet, { memory });
  expect(found.unused).toEqual([]);
  return found;
}

const text = (causes: readonly Cause[]): string =>
  causes.map((c) => `${c.fault} on ${c.on}`).join(' + ') || 'healthy';
const is = (c: Cause, accepted: Accepted): boolean =>
  accepted.includes(' on ') ? accepted === text([c]) : accepted === c.fault;

/** The ranking in words, for whoever has to see why a case fails. */
export function ranking({ groups, unknown }: Diagnosis): string {
  const lines = groups.slice(0, 5).map(({ probability, members }) => {
    const few = members.slice(0, 8).map((m) => `${text(m.causes)} ${m.probability.toFixed(3)}`);
    return `${probability.toFixed(3)}: ${few.join('; ')}${members.length > 8 ? ' ...' : ''}`;
  });
  return [...lines, `unknown ${unknown.toFixed(3)}`].join('\n');
}

/** The cause is within the first three groups, and what would be wrong does not lead the first. */
export async function hold(one: WrittenCase): Promise<void> {
  const found = await judge(one);
  const first = found.groups.slice(0, 3).flatMap((g) => g.members.flatMap((m) => m.causes));
  const told = ranking(found);
  if (process.env.CASES !== undefined) console.log(told);
  expect(
    first.some((c) => one.cause.some((accepted) => is(c, accepted))),
    `${one.cause.join(' or ')} within the first three groups of\n${told}`,
  ).toBe(true);
  const lead = found.groups[0].members[0].causes;
  const wrong = (one.wrong ?? []).filter((w) => lead.some((c) => is(c, w)));
  expect(wrong, `leading\n${told}`).toEqual([]);
}

/** What the sound gear does on one of its cards, for 'as before' and 'a third more'. */
export function soundOf(scenario: Scenario, card: string): Readonly<Record<string, ExpectedSwing>> {
  const swings = expectedSwings(simulate(scenario, { card }));
  return Object.fromEntries(swings.map((s) => [s.direction, s]));
}

const PSI = 6894.757293168361;
/** A time and a pressure as they are noted. */
export const s = (time: number): string => `${time.toFixed(1)} s`;
export const psi = (pressure: number): string => `${Math.round(pressure / PSI)} psi`;
