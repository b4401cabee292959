/**
 * A small gear, written as a scenario file and read as one: a stand, a relief valve, a selector
 * whose neutral lets both lines go, one leg of 70 kg with restrictor, jack, uplock and downlock,
 * and whatever a test adds. Figures are invented.
 */
import { readScenario, simulate } from '@wheelwell/core';
import type { FaultEntry, Run, Scenario } from '@wheelwell/core';

type Fields = Readonly<Record<string, unknown>>;

export interface OneLegOptions {
  /** Devices beside or in place of the usual ones. */
  readonly components?: Readonly<Record<string, Fields>>;
  /** Mechanisms beside the leg. */
  readonly mechanisms?: Readonly<Record<string, Fields>>;
  /** Fields of the leg, and of the jack, beside or in place of the usual ones. */
  readonly leg?: Fields;
  readonly jack?: Fields;
  readonly fluid?: Fields;
  readonly unit?: Fields;
  readonly limits?: Fields;
  readonly leave?: readonly string[];
  /** Lever and time; the usual: up at 0.5 s, down at 8 s. */
  readonly steps?: readonly Fields[];
  readonly duration?: string;
}

export const lever = (at: string, value: string): Fields => ({
  at,
  device: 'selector',
  input: 'lever',
  value,
});

export const pivots = {
  rod: {
    to: 'leg',
    pivots: { fixed: '500 mm', moving: '200 mm', 'at-low': '40 deg', sense: 'opening' },
  },
};

/** @throws Error with the issues, where the file has any. */
export function oneLeg(own: OneLegOptions = {}): Scenario {
  const components: Record<string, Fields> = {
    tank: {
      is: 'reservoir',
      ports: { outlet: 'tank', return: 'tank' },
      capacity: '8 L',
      level: '6 L',
    },
    stand: {
      is: 'ground-supply',
      ports: { inlet: 'tank', outlet: 'pressure' },
      flow: '120 cm^3/s',
      pressure: '10 MPa',
      on: true,
    },
    relief: {
      is: 'relief-valve',
      ports: { inlet: 'pressure', outlet: 'tank' },
      crack: '11 MPa',
      full: '12 MPa',
      flow: '300 cm^3/s',
    },
    selector: {
      is: 'selector-valve',
      ports: { pressure: 'pressure', return: 'tank', up: 'up-line', down: 'down-line' },
      bore: '6 mm',
      centre: 'lines-to-return',
    },
    restrictor: {
      is: 'one-way-restrictor',
      ports: { inlet: 'up-line', outlet: 'lift' },
      bore: '1.8 mm',
    },
    jack: {
      is: 'double-acting-actuator',
      ports: { head: 'lift', 'head-chamber': 'lift', rod: 'down-line', 'rod-chamber': 'down-line' },
      links: pivots,
      bore: '44.5 mm',
      'rod-diameter': '22.2 mm',
      stroke: '278 mm',
      ...own.jack,
    },
    uplock: {
      is: 'uplock',
      ports: { release: 'down-line' },
      links: { leg: { to: 'leg' } },
      at: '90 deg',
      release: '1.8 MPa',
    },
    downlock: {
      is: 'downlock',
      ports: { release: 'up-line' },
      links: { leg: { to: 'leg' } },
      release: '0.3 MPa',
    },
    ...own.components,
  };
  for (const name of own.leave ?? []) delete components[name];
  const file = {
    wheelwell: 1,
    title: 'one leg',
    note: 'invented for tests',
    fluid: { kind: 'mineral-red', temperature: '20 degC', 'free-air': '0.5 %', ...own.fluid },
    components,
    mechanisms: {
      leg: {
        is: 'leg',
        travel: '90 deg',
        retract: 'inboard',
        mass: '70 kg',
        cog: '550 mm',
        inertia: '26 kg m^2',
        length: '900 mm',
        friction: '25 N m',
        'tyre-radius': '300 mm',
        'tyre-width': '150 mm',
        'pivot-right': '1 m',
        damping: '60 N m s/rad',
        ...own.leg,
      },
      ...own.mechanisms,
    },
    nodes: {
      pressure: { volume: '300 cm^3' },
      'up-line': { volume: '80 cm^3' },
      'down-line': { volume: '80 cm^3' },
    },
    units: {
      right: {
        side: 'right',
        leg: 'leg',
        actuators: ['jack'],
        ...(components.uplock && { uplock: 'uplock' }),
        ...(components.downlock && { downlock: 'downlock' }),
        ...own.unit,
      },
    },
    limits: own.limits ?? {},
    cards: {
      swing: {
        title: 'up and down',
        duration: own.duration ?? '15 s',
        steps: own.steps ?? [lever('0.5 s', 'up'), lever('8 s', 'down')],
      },
    },
  };
  // JSON is YAML too.
  const { scenario, issues } = readScenario(JSON.stringify(file), { file: 'one-leg' });
  if (scenario === undefined || issues.length > 0)
    throw new Error(issues.map((i) => `${i.path}: ${i.message} ${i.hint}`).join('\n'));
  return scenario;
}

export function play(scenario: Scenario, ...faults: readonly FaultEntry[]): Run {
  const run = simulate(scenario, { faults });
  if (run.outcome.kind !== 'done') throw new Error(`the run ended ${run.outcome.kind}`);
  return run;
}

export const fault = (name: string, on: string, severity = 1): FaultEntry => ({
  fault: name,
  on,
  severity,
});

/** First time after `from` at which a device or mechanism comes to a mode or motion, s; NaN when it never does. */
export const when = (run: Run, device: string, to: string, from = 0): number =>
  run.log.find((e) => e.device === device && e.to === to && e.t >= from)?.t ?? NaN;

/** Value of a channel at a time, s. */
export function at(run: Run, channel: string, t: number): number {
  const { t: times, v } = run.series(channel)!;
  const i = times.findIndex((x) => x >= t);
  return v[i < 0 ? v.length - 1 : i];
}

/** Largest value of a channel between two times, s. */
export function peak(run: Run, channel: string, from: number, to: number): number {
  const { t, v } = run.series(channel)!;
  let most = -Infinity;
  t.forEach((x, i) => {
    if (x >= from && x <= to) most = Math.max(most, v[i]);
  });
  return most;
}

/** First time after `from` at which a rising (or, with `falling`, a falling) channel passes a value, s. */
export function passes(
  run: Run,
  channel: string,
  value: number,
  from = 0,
  falling = false,
): number {
  const { t, v } = run.series(channel)!;
  const i = t.findIndex((x, k) => x >= from && (falling ? v[k] <= value : v[k] >= value));
  return i < 0 ? NaN : t[i];
}

/** Mean of a channel over time, between two times, s. */
export function mean(run: Run, channel: string, from: number, to: number): number {
  const { t, v } = run.series(channel)!;
  let [area, time] = [0, 0];
  for (let i = 1; i < t.length; i++) {
    if (t[i - 1] < from || t[i] > to) continue;
    area += 0.5 * (v[i] + v[i - 1]) * (t[i] - t[i - 1]);
    time += t[i] - t[i - 1];
  }
  return area / time;
}

/** Same log, times to the last bit. */
export const story = (run: Run): string =>
  JSON.stringify(run.log.map((e) => [e.t, e.device, e.to]));
