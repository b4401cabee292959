import type { Card, CardStep, LogEntry, Scenario } from '../define/index.js';
import type { Network } from '../network/index.js';
import type { JumpResult, Problem } from '../solver/index.js';
import { Operator } from './card.js';
import { Causes } from './cause.js';
import { Followers } from './follower.js';
import { ChatterWatch } from './chatter.js';
import { restoreEpoch, takeEpoch, type Epoch } from './epoch.js';
import { Log } from './log.js';
import { Modes } from './mode.js';
import { motionCause } from './motion-cause.js';
import { Motion, type MotionChange } from './motion.js';
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
 *     what devices say by wire becomes the others' inputs
 *     derive phases, log the changes; the operator sees every new entry
 *   more than PASSES: report chatter, with the devices that switched last
 *   tell the solver that the right-hand side jumped
 */
const PASSES = 50;

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
  readonly integrals: Int32Array;
  readonly bends: Problem['bends'];
  readonly log = new Log();
  readonly epochs: Epoch[] = [];
  failure: MachineFailure | undefined;
  transitions = 0;

  private readonly modes: Modes;
  private readonly motion: Motion;
  private readonly followers: Followers;
  /** Motion words of the driven mechanisms as last logged. */
  private readonly followed: string[] = [];
  private readonly operator: Operator;
  private readonly causes: Causes;
  private readonly phases: Phases;
  private readonly chatter: ChatterWatch;
  private readonly scratch: Float64Array;
  private started = false;
  private enough = false;

  constructor(
    private readonly network: Network,
    scenario: Scenario,
    card: Card,
    /** Told every log entry; true ends the run once that instant is settled. */
    private readonly until?: (entry: LogEntry) => boolean,
  ) {
    this.size = network.size;
    this.pattern = network.pattern;
    this.scale = network.scale;
    this.fast = network.fast;
    this.integrals = network.integrals;
    this.bends = network.bends;
    this.modes = new Modes(network, scenario);
    this.motion = new Motion(network);
    this.followers = new Followers(network, this.motion);
    this.operator = new Operator(card);
    this.causes = new Causes(network.plan);
    this.phases = new Phases(scenario);
    this.chatter = new ChatterWatch(network.frames.length + this.motion.count);
    this.scratch = new Float64Array(network.size);
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
    return Math.max(this.modes.crossing(), this.motion.crossing(), this.followers.crossing());
  }

  mark(): void {
    this.modes.mark();
    this.motion.mark();
    this.followers.mark();
  }

  marked(): number {
    return Math.max(this.modes.marked(), this.motion.marked(), this.followers.marked());
  }

  nextBreak(): number {
    return Math.min(this.operator.nextTime, this.modes.nextTimer());
  }

  longestStep(): number {
    return this.modes.longestStep();
  }

  nameOf(state: number): string {
    return this.network.wiring.stateNames[state];
  }

  /** The card step nobody reached, for the closing note. */
  get waiting(): CardStep | undefined {
    return this.operator.waiting;
  }

  jump(t: number, y: Float64Array): JumpResult {
    const before = this.transitions;
    if (!this.started) this.start(t, y);
    for (let pass = 0; ; pass++) {
      let changed = false;
      for (let step = this.operator.take(t); step !== undefined; step = this.operator.take(t)) {
        this.operate(t, step);
        this.modes.propagate();
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
    this.epochs.push(takeEpoch(t, this.network, this.motion));
    return this.enough ? 'end' : 'jumped';
  }

  /** Sets what an epoch says, for replaying. */
  restore(epoch: Epoch): void {
    restoreEpoch(epoch, this.network, this.motion);
  }

  /** First instant: motions that fit the angles, everything settled in silence, then logged once. */
  private start(t: number, y: Float64Array): void {
    this.started = true;
    const { frames, plan, wiring } = this.network;
    for (let c = 0; c < this.motion.count; c++) this.motion.settle(c, y[wiring.angleState[c]]);
    this.motion.bound(this.modes, y);
    this.followers.settle(y);
    this.modes.propagate();
    for (let pass = 0; pass < PASSES && this.settleOnce(t, y, true); pass++);
    const entry = { t, from: '', cause: 'at the start', by: -1, speed: 0 };
    frames.forEach((f, i) => {
      if (!this.modes.switches(i)) return;
      this.log.add({ ...entry, device: f.name, to: this.modes.word(i), kind: 'mode' });
    });
    plan.coordinates.forEach((p, c) => {
      this.log.add({ ...entry, device: p.name, to: this.motion.word(c, y), kind: 'motion' });
    });
    this.followers.names.forEach((device, i) => {
      const to = this.followers.word(i, y);
      this.followed[i] = to;
      this.log.add({ ...entry, device, to, kind: 'motion' });
    });
    this.phases.update(this.facts).forEach((p) => {
      this.log.add({ ...entry, device: p.name, to: p.to, kind: 'phase' });
    });
    this.transitions++;
  }

  /** One pass of the fixed point; false when nothing was due. */
  private settleOnce(t: number, y: Float64Array, silent = false): boolean {
    const { frames, plan } = this.network;
    const { modes, motion } = this;
    this.look(t, y);
    const broken = this.broken();
    if (broken !== undefined) {
      this.failure = { kind: 'diverged', where: [broken] };
      return false;
    }
    const due = modes.due(t);
    // Motions read the same evaluation; `change` writes into y only.
    const moved: { c: number; from: string; change: MotionChange }[] = [];
    for (let c = 0; c < motion.count; c++) {
      const from = motion.word(c, y);
      const change = motion.change(c, y);
      if (change !== undefined) moved.push({ c, from, change });
    }
    for (const d of due) {
      const from = modes.word(d.frame);
      modes.change(d, t, y);
      const device = frames[d.frame].name;
      this.count(d.frame, device, t);
      if (silent) continue;
      const by = this.causes.ofGuard(d.frame, d.why, this.log);
      const { cause } = d.why;
      this.note({ t, device, from, to: modes.word(d.frame), cause, by, kind: 'mode', speed: 0 });
    }
    if (due.length > 0) motion.bound(modes, y);
    for (const { c, from, change } of moved) {
      const device = plan.coordinates[c].name;
      this.count(frames.length + c, device, t);
      const to = motion.word(c, y);
      if (silent || to === from) continue;
      const why = motionCause(this.network, this.causes, this.log, c, change);
      this.note({ t, device, from, to, ...why, kind: 'motion', speed: change.speed });
    }
    const advanced = this.followers.advance();
    if (moved.length > 0 || advanced) this.follow(t, y, moved, silent);
    const wired = due.length > 0 && this.modes.propagate();
    this.transitions += due.length + moved.length + (wired ? 1 : 0);
    return due.length + moved.length > 0 || advanced || wired;
  }

  /** Logs what driven mechanisms do after their leaders. */
  private follow(
    t: number,
    y: Float64Array,
    moved: readonly { readonly c: number; readonly change: MotionChange }[],
    silent: boolean,
  ): void {
    const { followers, followed } = this;
    followers.names.forEach((device, i) => {
      const to = followers.word(i, y);
      const from = followed[i];
      if (to === from) return;
      followed[i] = to;
      if (silent) return;
      const c = followers.leaderOf(i);
      const leader = this.network.plan.coordinates[c].name;
      const hit = moved.find((m) => m.c === c)?.change.speed ?? 0;
      const speed = followers.speed(i, y, hit);
      const by = this.log.lastOf(leader);
      this.note({ t, device, from, to, cause: `driven by ${leader}`, by, kind: 'motion', speed });
    });
  }

  /** A state or coordinate whose rate, drive or friction is no number; guards would never tell. */
  private broken(): string | undefined {
    const { workspace: w, plan } = this.network;
    const state = this.scratch.findIndex((r) => !Number.isFinite(r));
    if (state >= 0) return this.nameOf(state);
    return plan.coordinates.find((_, c) => Number.isNaN(w.drive[c] + w.capacity[c]))?.name;
  }

  private operate(t: number, step: CardStep): void {
    const { frames, wiring, workspace } = this.network;
    const i = this.modes.indexOf(step.device)!;
    const inputs = frames[i].definition.inputs ?? {};
    const k = Object.keys(inputs).indexOf(step.input);
    const at = wiring.inputOffset[i] + k;
    const words = Object.values(inputs)[k].choices;
    const from = words?.[workspace.inputs[at]] ?? String(workspace.inputs[at]);
    workspace.inputs[at] = step.value;
    this.transitions++;
    const to = words?.[step.value] ?? step.text;
    const cause = `the operator sets ${step.input}`;
    this.note({ t, device: step.device, from, to, cause, by: -1, kind: 'operator', speed: 0 });
  }

  private note(entry: Omit<LogEntry, 'index'>): void {
    const added = this.log.add(entry);
    this.operator.see(added);
    if (this.until?.(added) === true) this.enough = true;
  }

  private logPhases(t: number): void {
    for (const { name: device, from, to, of } of this.phases.update(this.facts)) {
      const by = this.log.latestOf(of);
      const { device: behind, to: state } = this.log.entries[by];
      const cause = `${behind} is ${state}`;
      this.note({ t, device, from, to, cause, by, kind: 'phase', speed: 0 });
    }
  }

  private readonly facts: PhaseFacts = {
    motion: (name) => {
      const c = this.network.plan.coordinates.findIndex((p) => p.name === name);
      if (c >= 0) return this.motion.phaseWord(c, this.network.workspace.y);
      return this.followed[this.followers.names.indexOf(name)] ?? '';
    },
    holds: (lock, leg, end) => {
      const i = this.modes.indexOf(lock);
      if (i === undefined || this.modes.bounds(i) === undefined) return false;
      const c = this.network.plan.members.find((m) => m.name === leg)?.coordinate ?? -1;
      return c >= 0 && this.motion.endWord(c, this.network.workspace.y) === end;
    },
  };

  private count(part: number, name: string, t: number): void {
    if (this.chatter.count(part, t)) this.failure ??= { kind: 'chatter', where: [name] };
  }

  private lastMovers(): string[] {
    const t = this.log.entries.at(-1)?.t ?? 0;
    const recent = this.log.entries.filter((e) => e.t === t && e.kind !== 'phase').slice(-20);
    return [...new Set(recent.map((e) => e.device))];
  }
}
