import type { Card, Guard, LogEntry, Parameters, Scenario } from '../define/index.js';
import type { InstanceFrame, Network } from '../network/index.js';
import type { JumpResult, Problem } from '../solver/index.js';
import { Operator } from './card.js';
import { Causes } from './cause.js';
import { Log } from './log.js';
import { AT_HIGH, AT_LOW, FALLING, HELD, Motion, RISING } from './motion.js';
import { Phases, type PhaseFacts } from './phase.js';

/**
 * The state machine, as the solver sees it. A step of the machine, in pseudocode
 * (x- before, x+ after):
 *
 *   integrate to the first of: a guard above zero, a break (operator, timer), the end
 *   at that instant, repeat at most PASSES times:
 *     evaluate the network at x-                       failure: not finite -> diverged
 *     collect, in declared order, per device the first guard or timer that is due,
 *       per coordinate the motion change that is due   all read the same x-
 *     none due: leave
 *     perform them all: modes, states on entry, bounds, speeds; log each with its cause
 *   more than PASSES: report chatter, with the devices that switched last
 *   derive phases, log the changes; let the operator see the new entries
 *   tell the solver that the right-hand side jumped
 */
const PASSES = 50;
/** More transitions of one device than this within CHATTER_SPAN seconds is chatter. */
const CHATTER_COUNT = 80;
const CHATTER_SPAN = 0.02;

interface ModeTable {
  readonly names: readonly string[];
  readonly guards: readonly (readonly Guard[])[];
}

/** Everything discrete at an instant; recorded whenever it changes. */
export interface Epoch {
  readonly t: number;
  readonly modes: Int32Array;
  readonly entered: Float64Array;
  readonly motion: Int8Array;
  readonly inputs: Float64Array;
}

/** A reason the machine cannot go on. */
export interface MachineFailure {
  readonly kind: 'chatter' | 'diverged';
  readonly where: readonly string[];
}

export class Machine implements Problem {
  readonly size: number;
  readonly pattern: Problem['pattern'];
  readonly scale: Float64Array;
  readonly fast: Uint8Array;
  readonly log = new Log();
  readonly epochs: Epoch[] = [];
  failure: MachineFailure | undefined;
  transitions = 0;

  private readonly motion: Motion;
  private readonly operator: Operator;
  private readonly causes: Causes;
  private readonly phases: Phases;
  private readonly tables: readonly ModeTable[];
  private readonly guarded: readonly InstanceFrame[];
  private readonly timers: Float64Array;
  private readonly scratch: Float64Array;
  private readonly ownStates: readonly Float64Array[];
  private readonly index = new Map<string, number>();
  private readonly windowStart: Float64Array;
  private readonly windowCount: Int32Array;
  private readonly motionCauses: readonly (readonly string[])[];
  private started = false;

  constructor(
    private readonly network: Network,
    scenario: Scenario,
    card: Card,
  ) {
    this.size = network.size;
    this.pattern = network.pattern;
    this.scale = network.scale;
    this.fast = network.fast;
    this.motion = new Motion(network);
    this.operator = new Operator(card);
    this.causes = new Causes(network.plan);
    this.phases = new Phases(scenario);
    this.tables = network.frames.map((f) => {
      const modes = Object.entries(f.definition.modes ?? { working: { title: 'working' } });
      return {
        names: modes.map(([name]) => name),
        guards: modes.map(([, m]) => m.guards ?? []),
      };
    });
    this.guarded = network.frames.filter((_, i) => this.tables[i].guards.some((g) => g.length > 0));
    this.timers = new Float64Array(network.frames.length).fill(Infinity);
    this.scratch = new Float64Array(network.size);
    this.ownStates = network.wiring.ownStates.map((s) => new Float64Array(s.length));
    network.frames.forEach((f, i) => this.index.set(f.name, i));
    this.windowStart = new Float64Array(network.frames.length + this.motion.count);
    this.windowCount = new Int32Array(network.frames.length + this.motion.count);
    this.motionCauses = network.plan.coordinates.map((_, c) => this.causes.ofMotion(c));
    this.begin(scenario);
  }

  derivatives(t: number, y: Float64Array, rate: Float64Array): void {
    this.network.derivatives(t, y, rate);
  }

  jacobian(t: number, y: Float64Array, rate: Float64Array, values: Float64Array): void {
    this.network.jacobian(t, y, rate, values);
  }

  look(t: number, y: Float64Array): void {
    this.network.derivatives(t, y, this.scratch);
  }

  crossing(): number {
    let most = -Infinity;
    const { guarded, motion } = this;
    for (let i = 0; i < guarded.length; i++) {
      const frame = guarded[i];
      const guards = frame.guards;
      for (let g = 0; g < guards.length; g++) {
        const v = guards[g].when(frame);
        if (v > most) most = v;
      }
    }
    for (let c = 0; c < motion.count; c++) {
      const v = motion.guard(c);
      if (v > most) most = v;
    }
    return most;
  }

  nextBreak(): number {
    let next = this.operator.nextTime;
    for (let i = 0; i < this.timers.length; i++) if (this.timers[i] < next) next = this.timers[i];
    return next;
  }

  nameOf(state: number): string {
    return this.network.wiring.stateNames[state];
  }

  /** The card step nobody reached, for the closing note. */
  get waiting(): ReturnType<Operator['take']> {
    return this.operator.waiting;
  }

  /** Mode word of a device. */
  modeOf(name: string): string {
    const i = this.index.get(name);
    return i === undefined ? '' : this.tables[i].names[this.network.frames[i].mode];
  }

  jump(t: number, y: Float64Array): JumpResult {
    const before = this.transitions;
    if (!this.started) this.start(t, y);
    for (let pass = 0; ; pass++) {
      let changed = false;
      for (let step = this.operator.take(t); step !== undefined; step = this.operator.take(t)) {
        this.operate(t, step);
        changed = true;
      }
      if (this.settleOnce(t, y)) changed = true;
      if (this.failure?.kind === 'diverged') return 'failed';
      if (!changed) break;
      this.logPhases(t);
      if (pass >= PASSES || this.failure !== undefined) {
        this.failure ??= { kind: 'chatter', where: this.lastMovers() };
        return 'failed';
      }
    }
    if (this.transitions === before) return 'unchanged';
    this.remember(t);
    return 'jumped';
  }

  /** Sets what an epoch says, for replaying. */
  restore(epoch: Epoch): void {
    this.network.frames.forEach((f, i) => {
      f.mode = epoch.modes[i];
      f.entered = epoch.entered[i];
    });
    epoch.motion.forEach((m, c) => this.motion.set(c, m));
    this.network.workspace.inputs.set(epoch.inputs);
    this.network.refresh();
  }

  private begin(scenario: Scenario): void {
    this.network.frames.forEach((f, i) => {
      const parameters: Parameters = scenario.components[f.name].parameters;
      const first = f.definition.initialMode?.(parameters) ?? this.tables[i].names[0];
      this.enter(i, Math.max(0, this.tables[i].names.indexOf(first)), 0);
      Object.values(f.definition.inputs ?? {}).forEach((d, k) => {
        this.network.workspace.inputs[this.network.wiring.inputOffset[i] + k] =
          typeof d.initial === 'number' ? d.initial : d.initial(parameters);
      });
    });
  }

  /** First instant: motions that fit the angles, everything settled in silence, then logged once. */
  private start(t: number, y: Float64Array): void {
    this.started = true;
    for (let c = 0; c < this.motion.count; c++) {
      this.motion.settle(c, y[this.network.wiring.angleState[c]]);
    }
    for (let pass = 0; pass < PASSES && this.settleOnce(t, y, true); pass++);
    const cause = 'at the start';
    const entry = { t, from: '', cause, by: -1, speed: 0 };
    this.network.frames.forEach((f, i) => {
      if (this.tables[i].names.length > 1) {
        this.log.add({ ...entry, device: f.name, to: this.modeOf(f.name), kind: 'mode' });
      }
    });
    this.network.plan.coordinates.forEach((p, c) => {
      this.log.add({ ...entry, device: p.name, to: this.motionWord(c, y), kind: 'motion' });
    });
    this.phases.update(this.facts).forEach((p) => {
      this.log.add({ ...entry, device: p.name, to: p.to, kind: 'phase' });
    });
    this.transitions++;
  }

  /** One pass of the fixed point; false when nothing was due. */
  private settleOnce(t: number, y: Float64Array, silent = false): boolean {
    const { frames } = this.network;
    this.look(t, y);
    const broken = this.broken();
    if (broken !== undefined) {
      this.failure = { kind: 'diverged', where: [broken] };
      return false;
    }
    const due: { frame: number; to: number; guard: Pick<Guard, 'cause' | 'reads'> }[] = [];
    frames.forEach((frame, i) => {
      const guard = frame.guards.find((g) => g.when(frame) > 0) ?? this.dueTimer(i, t);
      if (guard !== undefined) {
        due.push({ frame: i, to: this.tables[i].names.indexOf(guard.to), guard });
      }
    });
    // Motions read the same evaluation; `change` writes into y only.
    const moved: { c: number; from: string; cause: string; speed: number }[] = [];
    for (let c = 0; c < this.motion.count; c++) {
      const from = this.motionWord(c, y);
      const change = this.motion.change(c, y);
      if (change !== undefined) moved.push({ c, from, cause: change.cause, speed: change.speed });
    }
    for (const d of due) {
      const from = this.tables[d.frame].names[frames[d.frame].mode];
      this.enter(d.frame, d.to, t);
      this.writeStates(d.frame, y);
      this.count(d.frame, t);
      if (!silent) {
        const by = this.log.latestOf(this.causes.ofGuard(d.frame, d.guard));
        const to = this.tables[d.frame].names[d.to];
        this.note({ t, device: frames[d.frame].name, from, to, cause: d.guard.cause, by, kind: 'mode', speed: 0 });
      }
    }
    if (due.length > 0) this.bounds(y);
    for (const m of moved) {
      this.count(frames.length + m.c, t);
      const to = this.motionWord(m.c, y);
      if (silent || to === m.from) continue;
      const device = this.network.plan.coordinates[m.c].name;
      const travelling = to === 'rising' || to === 'falling';
      const by =
        travelling && m.speed === 0
          ? this.log.latestOf(this.motionCauses[m.c])
          : this.log.lastOf(device);
      this.note({ t, device, from: m.from, to, cause: m.cause, by, kind: 'motion', speed: m.speed });
    }
    this.transitions += due.length + moved.length;
    return due.length + moved.length > 0;
  }

  /** A state or coordinate whose rate, drive or friction is no number; guards would never tell. */
  private broken(): string | undefined {
    const { workspace: w, plan } = this.network;
    const state = this.scratch.findIndex((r) => !Number.isFinite(r));
    if (state >= 0) return this.nameOf(state);
    return plan.coordinates.find((_, c) => Number.isNaN(w.drive[c] + w.capacity[c]))?.name;
  }

  private dueTimer(i: number, t: number): Pick<Guard, 'to' | 'cause' | 'reads'> | undefined {
    if (t < this.timers[i]) return undefined;
    const frame = this.network.frames[i];
    const modes = Object.values(frame.definition.modes ?? {});
    return modes[frame.mode].timers?.find((x) => frame.entered + x.after(frame) <= t + 1e-12);
  }

  private enter(i: number, mode: number, t: number): void {
    const frame = this.network.frames[i];
    frame.mode = mode;
    frame.entered = t;
    frame.guards = this.tables[i].guards[mode];
    const timers = Object.values(frame.definition.modes ?? {})[mode]?.timers ?? [];
    this.timers[i] = Math.min(Infinity, ...timers.map((x) => t + x.after(frame)));
  }

  private writeStates(i: number, y: Float64Array): void {
    const frame = this.network.frames[i];
    const hook = Object.values(frame.definition.modes ?? {})[frame.mode]?.enter;
    if (hook === undefined) return;
    const states = this.network.wiring.ownStates[i];
    const own = this.ownStates[i];
    states.forEach((s, k) => (own[k] = y[s]));
    hook(frame, own);
    states.forEach((s, k) => (y[s] = own[k]));
  }

  /** Bounds from the end stops and the engaged locks. */
  private bounds(y: Float64Array): void {
    const { frames, plan, wiring } = this.network;
    const { motion } = this;
    plan.coordinates.forEach((p, c) => {
      motion.low[c] = p.data.low;
      motion.high[c] = p.data.high;
    });
    frames.forEach((frame, i) => {
      const bounds = Object.values(frame.definition.modes ?? {})[frame.mode]?.bounds;
      if (bounds === undefined) return;
      const link = Object.keys(frame.definition.links ?? {}).indexOf(bounds.link);
      const attachment = plan.instances[i].attachments[link];
      if (attachment < 0) return;
      const c = plan.attachments[attachment].coordinate;
      const angle = y[wiring.angleState[c]];
      // A lock holds what it caught: it never pushes the part along.
      if (bounds.low) motion.low[c] = Math.min(Math.max(motion.low[c], bounds.low(frame)), angle);
      if (bounds.high) {
        motion.high[c] = Math.max(Math.min(motion.high[c], bounds.high(frame)), angle);
      }
    });
    this.network.refresh();
  }

  private operate(t: number, step: NonNullable<ReturnType<Operator['take']>>): void {
    const i = this.index.get(step.device)!;
    const inputs = this.network.frames[i].definition.inputs ?? {};
    const k = Object.keys(inputs).indexOf(step.input);
    const at = this.network.wiring.inputOffset[i] + k;
    const { workspace } = this.network;
    const words = Object.values(inputs)[k].choices;
    const from = words?.[workspace.inputs[at]] ?? String(workspace.inputs[at]);
    workspace.inputs[at] = step.value;
    this.transitions++;
    this.note({
      t,
      device: step.device,
      from,
      to: words?.[step.value] ?? step.text,
      cause: `the operator sets ${step.input}`,
      by: -1,
      kind: 'operator',
      speed: 0,
    });
  }

  private note(entry: Omit<LogEntry, 'index'>): void {
    this.operator.see(this.log.add(entry));
  }

  private logPhases(t: number): void {
    for (const p of this.phases.update(this.facts)) {
      const by = this.log.entries.length - 1;
      const cause = 'follows from its devices';
      this.note({ t, device: p.name, from: p.from, to: p.to, cause, by, kind: 'phase', speed: 0 });
    }
  }

  private readonly facts: PhaseFacts = {
    motion: (name) => {
      const c = this.network.plan.coordinates.findIndex((p) => p.name === name);
      return c < 0 ? '' : this.motionWord(c, this.network.workspace.y);
    },
    mode: (name) => this.modeOf(name),
  };

  private motionWord(c: number, y: Float64Array): string {
    const p = this.network.plan.coordinates[c];
    switch (this.motion.mode[c]) {
      case RISING:
        return 'rising';
      case FALLING:
        return 'falling';
      case AT_LOW:
      case AT_HIGH: {
        const angle = y[this.network.wiring.angleState[c]];
        const nearLow = angle - p.data.low < p.data.high - angle;
        return `at ${p.definition.ends[nearLow ? 0 : 1]}`;
      }
      case HELD:
      default:
        return 'held';
    }
  }

  private count(slot: number, t: number): void {
    if (t - this.windowStart[slot] > CHATTER_SPAN) {
      this.windowStart[slot] = t;
      this.windowCount[slot] = 0;
    }
    if (++this.windowCount[slot] > CHATTER_COUNT) {
      const { frames, plan } = this.network;
      const name =
        slot < frames.length ? frames[slot].name : plan.coordinates[slot - frames.length].name;
      this.failure ??= { kind: 'chatter', where: [name] };
    }
  }

  private lastMovers(): string[] {
    const t = this.log.entries.at(-1)?.t ?? 0;
    const recent = this.log.entries.filter((e) => e.t === t && e.kind !== 'phase').slice(-20);
    return [...new Set(recent.map((e) => e.device))];
  }

  private remember(t: number): void {
    const { frames, workspace } = this.network;
    this.epochs.push({
      t,
      modes: Int32Array.from(frames, (f) => f.mode),
      entered: Float64Array.from(frames, (f) => f.entered),
      motion: this.motion.mode.slice(),
      inputs: workspace.inputs.slice(),
    });
  }
}
