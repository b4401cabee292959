/** Makes the plain picture of a run that is posted to the page. */
import { catalogues, FAULT_GROUPS, lightSwitches, tailored } from '@wheelwell/core';
import type { Flag, Parameters, Role, Run, Scenario, UnitEntry } from '@wheelwell/core';
import { approaches, arraysInApproaches, bayFacts, noApproaches } from './bay.js';
import { arraysIn, blowDownFacts } from './blow-down.js';
import { circuitFacts } from './circuit.js';
import { displayTable } from './display.js';
import type {
  AngleSamples,
  DeviceFacts,
  FaultFacts,
  OutlineSamples,
  Picture,
  RunRequest,
} from './message.js';
import { sampleOutline } from './outline.js';
import { figuresAt } from './parameters.js';
import { words } from './words.js';

const { components, faults, mechanisms } = catalogues;

/** By what they are looked for under, then by title. */
const CATALOGUE: readonly FaultFacts[] = FAULT_GROUPS.flatMap((group) =>
  Object.values(faults)
    .filter((f) => f.group === group)
    .map(faultFacts)
    .sort((a, b) => (a.title < b.title ? -1 : 1)),
);

const DISPLAY = { us: displayTable('us'), metric: displayTable('metric') };

/**
 * @param judged whether with its flags and clearances: working them out takes as long as simulating
 */
export function picture(
  id: number,
  scenario: Scenario,
  run: Run,
  elapsed: number,
  { condition, stood, edits = [] }: Pick<RunRequest, 'condition' | 'stood' | 'edits'>,
  judged: boolean,
): Picture {
  const blowDown = blowDownFacts(scenario, run, condition);
  return {
    run: id,
    channels: run.channels,
    ambient: run.scenario.ambient,
    file: scenario.file,
    title: scenario.title,
    note: scenario.note,
    card: run.cardName,
    // From the scenario as read: the faults of the run may be the user's.
    cards: Object.entries(scenario.cards).map(([name, card]) => ({
      name,
      title: card.title,
      note: card.note,
      expect: card.expect,
      faults: card.faults,
    })),
    faults: run.card.faults,
    catalogue: CATALOGUE,
    fluidFaults: befalling('fluid'),
    devices: deviceFacts(scenario),
    units: Object.entries(scenario.units).map(([name, u]) => ({
      name,
      side: u.side,
      leg: u.leg,
      doors: u.doors,
      uplock: u.uplock ?? '',
      downlock: u.downlock ?? '',
      others: [...new Set([...hangingOn(scenario, u), ...u.sequence, ...u.actuators])],
      lights: { up: lightSwitches(run, u, 'up'), down: lightSwitches(run, u, 'down') },
      ...(u.bay === undefined ? {} : { bay: u.bay }),
    })),
    limits: Object.fromEntries(
      Object.entries(scenario.limits).filter((e): e is [string, number] => e[1] !== undefined),
    ),
    duration: run.card.duration,
    tick: run.tick,
    ticks: run.ticks,
    outcome: run.outcome,
    log: run.log.map((e) => ({ ...e, cause: words(e.cause) })),
    flags: judged ? run.flags.map((f): Flag => ({ ...f, explanation: words(f.explanation) })) : [],
    judged,
    timings: run.timings,
    statistics: run.statistics,
    angles: angles(run),
    outlines: outlines(run.scenario),
    circuit: circuitFacts(run.scenario),
    bay: bayFacts(run.scenario),
    approaches: judged ? approaches(run) : noApproaches(),
    display: DISPLAY,
    ...(blowDown === undefined ? {} : { blowDown }),
    ...(stood && { stood }),
    edits,
    figures: figuresAt(
      scenario,
      edits.map((e) => e.path),
    ),
    elapsed,
  };
}

/** The buffers inside a picture to be transferred; what is kept for the next one is copied. */
export function arraysOf(made: Picture): Transferable[] {
  const arrays = [
    ...made.angles.map((c) => c.v),
    ...arraysInApproaches(made.approaches),
    ...arraysIn(made.blowDown),
  ];
  return arrays.map((a) => a.buffer);
}

/** What the present views draw, and nothing else: sampling every channel takes longer than the run. */
function angles(run: Run): AngleSamples[] {
  return Object.keys(run.scenario.mechanisms).flatMap((mechanism): AngleSamples[] => {
    const series = run.sampled(`${mechanism}.angle`);
    return series === undefined ? [] : [{ mechanism, v: Float32Array.from(series.v) }];
  });
}

function outlines(scenario: Scenario): OutlineSamples[] {
  return Object.entries(scenario.mechanisms).flatMap(([name, { is, parameters }]) => {
    const kind = mechanisms[is];
    return kind === undefined ? [] : [{ mechanism: name, ...sampleOutline(parameters, kind) }];
  });
}

const befall = new Map<string, readonly string[]>();

/** Faults that can befall a kind of device or mechanism, or the fluid. */
function befalling(kind: string): readonly string[] {
  const known = befall.get(kind);
  if (known !== undefined) return known;
  const found = Object.values(faults)
    .filter((f) => f.befalls.includes(kind))
    .map((f) => f.kind);
  befall.set(kind, found);
  return found;
}

function deviceFacts(scenario: Scenario): DeviceFacts[] {
  const levers = leversOf(scenario);
  const facts = (
    name: string,
    kind: string,
    note: string,
    title: string,
    role: Role,
    parameters: Parameters,
    lever: boolean,
  ): DeviceFacts => {
    const device = components[kind];
    const modes = device === undefined ? {} : (tailored(device, parameters).modes ?? {});
    return {
      name,
      title,
      role,
      note,
      active: Object.keys(modes).filter((m) => modes[m]?.active === true),
      lever,
      first: components[kind]?.initialMode?.(parameters) ?? Object.keys(modes)[0] ?? '',
      faults: befalling(kind),
    };
  };
  return [
    ...Object.entries(scenario.components).map(([name, e]) => {
      const kind = components[e.is];
      const role = kind?.role ?? 'other';
      const lever = levers.has(name);
      return facts(name, e.is, e.note, kind?.title ?? e.is, role, e.parameters, lever);
    }),
    ...Object.entries(scenario.mechanisms).map(([name, e]) => {
      const kind = mechanisms[e.is];
      const role = kind?.role ?? 'other';
      return facts(name, e.is, e.note, kind?.title ?? e.is, role, e.parameters, false);
    }),
  ];
}

/** Selectors without wires, and whatever else a card tells up and down by: a controller, a power pack. */
function leversOf({ components: all, cards }: Scenario): ReadonlySet<string> {
  const levers = new Set<string>();
  for (const [name, { is, signals }] of Object.entries(all))
    if (components[is]?.role === 'selector' && Object.keys(signals).length === 0) levers.add(name);
  for (const { device, input } of Object.values(cards).flatMap((card) => card.steps)) {
    const entry = all[device];
    const kind = entry && components[entry.is];
    if (kind === undefined || levers.has(device)) continue;
    const choices = tailored(kind, entry.parameters).inputs?.[input]?.choices ?? [];
    if (choices.includes('up') && choices.includes('down')) levers.add(device);
  }
  return levers;
}

/** What hangs on a unit's leg and doors alone: members they drive, door hooks, switches, chains. */
function hangingOn(scenario: Scenario, unit: UnitEntry): string[] {
  const own = new Set([unit.leg, ...unit.doors]);
  const driven = Object.entries(scenario.mechanisms).flatMap(([name, m]) =>
    m.driven !== undefined && own.has(m.driven.by) && !own.has(name) ? [name] : [],
  );
  driven.forEach((name) => own.add(name));
  const joined = Object.entries(scenario.components).flatMap(([name, c]) => {
    const links = Object.values(c.links);
    return links.length > 0 && links.every((l) => own.has(l.to)) ? [name] : [];
  });
  return [...driven, ...joined];
}

function faultFacts(f: FaultFacts): FaultFacts {
  const { kind, title, group, silent, meaning, shows, confirm, remedy, caution, worst } = f;
  return { kind, title, group, silent, meaning, shows, confirm, remedy, caution, worst };
}
