/** Makes the plain picture of a run that is posted to the page. */
import { catalogues, tailored } from '@wheelwell/core';
import type { Parameters, Role, Run, Scenario } from '@wheelwell/core';
import { displayTable } from './display.js';
import type { AngleSamples, DeviceFacts, FaultFacts, OutlineSamples, Picture } from './message.js';
import { sampleOutline } from './outline.js';

const { components, faults, mechanisms } = catalogues;

export function picture(scenario: Scenario, run: Run, elapsed: number): Picture {
  return {
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
    catalogue: Object.values(faults).map(faultFacts),
    fluidFaults: befalling('fluid'),
    devices: deviceFacts(scenario),
    units: Object.entries(scenario.units).map(([name, u]) => ({
      name,
      side: u.side,
      leg: u.leg,
      doors: u.doors,
      uplock: u.uplock ?? '',
      downlock: u.downlock ?? '',
      others: [...u.sequence, ...u.actuators],
    })),
    limits: Object.fromEntries(
      Object.entries(scenario.limits).filter((e): e is [string, number] => e[1] !== undefined),
    ),
    duration: run.card.duration,
    tick: run.tick,
    ticks: run.ticks,
    outcome: run.outcome,
    log: run.log,
    flags: run.flags,
    timings: run.timings,
    statistics: run.statistics,
    angles: angles(run),
    outlines: outlines(run.scenario),
    display: { us: displayTable('us'), metric: displayTable('metric') },
    elapsed,
  };
}

/** The buffers inside a picture, to be transferred instead of copied. */
export function arraysOf(made: Picture): Transferable[] {
  const arrays = [
    ...made.angles.map((c) => c.v),
    ...made.outlines.flatMap((o) => [o.line, o.edge, o.tyre]),
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
  const out: OutlineSamples[] = [];
  for (const [name, entry] of Object.entries(scenario.mechanisms)) {
    const kind = mechanisms[entry.is];
    if (kind !== undefined) out.push(sampleOutline(name, kind, entry.parameters));
  }
  return out;
}

/** Faults that can befall a kind of device or mechanism, or the fluid. */
function befalling(kind: string): string[] {
  return Object.values(faults)
    .filter((f) => f.befalls.includes(kind))
    .map((f) => f.kind);
}

function deviceFacts(scenario: Scenario): DeviceFacts[] {
  const facts = (
    name: string,
    kind: string,
    note: string,
    title: string,
    role: Role,
    parameters: Parameters,
  ): DeviceFacts => {
    const device = components[kind];
    const modes = device === undefined ? {} : (tailored(device, parameters).modes ?? {});
    return {
      name,
      title,
      role,
      note,
      active: Object.keys(modes).filter((m) => modes[m]?.active === true),
      first: components[kind]?.initialMode?.(parameters) ?? Object.keys(modes)[0] ?? '',
      faults: befalling(kind),
    };
  };
  return [
    ...Object.entries(scenario.components).map(([name, e]) => {
      const kind = components[e.is];
      return facts(name, e.is, e.note, kind?.title ?? e.is, kind?.role ?? 'other', e.parameters);
    }),
    ...Object.entries(scenario.mechanisms).map(([name, e]) => {
      const kind = mechanisms[e.is];
      return facts(name, e.is, e.note, kind?.title ?? e.is, kind?.role ?? 'other', e.parameters);
    }),
  ];
}

function faultFacts(f: FaultFacts): FaultFacts {
  const { kind, title, group, silent, meaning, shows, confirm, remedy, caution, worst } = f;
  return { kind, title, group, silent, meaning, shows, confirm, remedy, caution, worst };
}
