import type { Guard, ModeDefinition, Scenario, Timer } from '../define/index.js';
import type { InstanceFrame, Network } from '../network/index.js';

interface ModeTable {
  readonly names: readonly string[];
  readonly modes: readonly ModeDefinition[];
  readonly guards: readonly (readonly Guard[])[];
}

/** What a device without modes is always in. */
const ONLY: Readonly<Record<string, ModeDefinition>> = { working: { title: 'working' } };

/** A device's transition that is due. */
export interface DueMode {
  readonly frame: number;
  readonly to: number;
  readonly why: Pick<Guard, 'cause' | 'reads'>;
}

/** The modes of all devices, with their timers. */
export class Modes {
  /** Frames that have guards in any mode. */
  private readonly guarded: readonly InstanceFrame[];
  private noted: readonly { readonly frame: InstanceFrame; readonly guard: Guard }[] = [];
  private readonly tables: readonly ModeTable[];
  private readonly timers: Float64Array;
  /** Frames whose modes have a say in how long a step may be. */
  private readonly strides: number[] = [];
  private readonly index = new Map<string, number>();
  private readonly ownStates: readonly Float64Array[];

  constructor(
    private readonly network: Network,
    scenario: Scenario,
  ) {
    const { frames, wiring, workspace } = network;
    this.tables = frames.map(({ definition }) => {
      const modes = definition.modes ?? ONLY;
      return {
        names: Object.keys(modes),
        modes: Object.values(modes),
        guards: Object.values(modes).map((m) => m.guards ?? []),
      };
    });
    this.guarded = frames.filter((_, i) => this.tables[i].guards.some((g) => g.length > 0));
    this.timers = new Float64Array(frames.length).fill(Infinity);
    this.ownStates = wiring.ownStates.map((s) => new Float64Array(s.length));
    frames.forEach((frame, i) => {
      this.index.set(frame.name, i);
      const { parameters } = scenario.components[frame.name];
      const first = frame.definition.initialMode?.(parameters) ?? this.tables[i].names[0];
      this.enter(i, Math.max(0, this.tables[i].names.indexOf(first)), 0);
      Object.values(frame.definition.inputs ?? {}).forEach(({ initial }, k) => {
        workspace.inputs[wiring.inputOffset[i] + k] =
          typeof initial === 'number' ? initial : initial(parameters);
      });
    });
  }

  /** Position of a device among the frames; undefined for a name that is none. */
  indexOf(device: string): number | undefined {
    return this.index.get(device);
  }

  /** True for devices that switch at all. */
  switches(frame: number): boolean {
    return this.tables[frame].names.length > 1;
  }

  /** Mode word of a frame. */
  word(frame: number): string {
    return this.tables[frame].names[this.network.frames[frame].mode];
  }

  /** Largest guard at the point last evaluated; above zero: a transition is due. */
  crossing(): number {
    let most = -Infinity;
    const { guarded } = this;
    for (let i = 0; i < guarded.length; i++) {
      const frame = guarded[i];
      const { guards } = frame;
      for (let g = 0; g < guards.length; g++) {
        const v = guards[g].when(frame);
        if (v > most) most = v;
      }
    }
    return most;
  }

  /** Notes the guards above zero at the point last evaluated. */
  mark(): void {
    this.noted = this.guarded.flatMap((frame) =>
      frame.guards.filter((g) => g.when(frame) > 0).map((guard) => ({ frame, guard })),
    );
  }

  /** Largest noted guard at the point last evaluated. */
  marked(): number {
    let most = -Infinity;
    for (const { frame, guard } of this.noted) most = Math.max(most, guard.when(frame));
    return most;
  }

  /** Earliest timer, s; Infinity when none runs. */
  nextTimer(): number {
    let next = Infinity;
    for (let i = 0; i < this.timers.length; i++) if (this.timers[i] < next) next = this.timers[i];
    return next;
  }

  /** Per device, in declared order, the first guard above zero or timer that has run out. */
  due(t: number): readonly DueMode[] {
    const found: DueMode[] = [];
    const { frames } = this.network;
    // Looked through at every jump: plain loops, for calls of functions made here leave much to be cleared away.
    for (let i = 0; i < frames.length; i++) {
      const why = this.dueGuard(frames[i]) ?? this.dueTimer(i, t);
      if (why !== undefined)
        found.push({ frame: i, to: this.tables[i].names.indexOf(why.to), why });
    }
    return found;
  }

  /** Performs a transition: mode, timers, own states on entry (into `y`). */
  change({ frame, to }: DueMode, t: number, y: Float64Array): void {
    this.enter(frame, to, t);
    const hook = this.tables[frame].modes[to]?.enter;
    if (hook === undefined) return;
    const states = this.network.wiring.ownStates[frame];
    const own = this.ownStates[frame];
    states.forEach((s, k) => (own[k] = y[s]));
    hook(this.network.frames[frame], own);
    states.forEach((s, k) => (y[s] = own[k]));
  }

  /** Sets wired inputs to what their devices say now; true when one has changed. */
  propagate(): boolean {
    const { plan, frames, wiring, workspace } = this.network;
    let changed = false;
    for (const { from, signal, to, input } of plan.wires) {
      const at = wiring.inputOffset[to] + input;
      const said = signal.value(frames[from]);
      if (workspace.inputs[at] === said) continue;
      workspace.inputs[at] = said;
      changed = true;
    }
    return changed;
  }

  /** What the current mode of a frame puts on its coordinate, if anything. */
  bounds(frame: number): ModeDefinition['bounds'] {
    return this.tables[frame].modes[this.network.frames[frame].mode]?.bounds;
  }

  private dueGuard(frame: InstanceFrame): Guard | undefined {
    const { guards } = frame;
    for (let g = 0; g < guards.length; g++) if (guards[g].when(frame) > 0) return guards[g];
    return undefined;
  }

  private dueTimer(i: number, t: number): Timer | undefined {
    if (t < this.timers[i]) return undefined;
    const frame = this.network.frames[i];
    const { timers } = this.tables[i].modes[frame.mode];
    return timers?.find((x) => frame.entered + x.after(frame) <= t + 1e-12);
  }

  private enter(i: number, mode: number, t: number): void {
    const frame = this.network.frames[i];
    frame.mode = mode;
    frame.entered = t;
    frame.guards = this.tables[i].guards[mode];
    const timers = this.tables[i].modes[mode]?.timers ?? [];
    this.timers[i] = Math.min(Infinity, ...timers.map((x) => t + x.after(frame)));
    const place = this.strides.indexOf(i);
    const limits = this.tables[i].modes[mode]?.longestStep !== undefined;
    if (limits && place < 0) this.strides.push(i);
    else if (!limits && place >= 0) this.strides.splice(place, 1);
  }

  /** Longest step that all modes allow from the point that was evaluated last, s. */
  longestStep(): number {
    let least = Infinity;
    for (let k = 0; k < this.strides.length; k++) {
      const i = this.strides[k];
      const frame = this.network.frames[i];
      const longest = this.tables[i].modes[frame.mode].longestStep?.(frame) ?? Infinity;
      if (longest < least) least = longest;
    }
    return least;
  }
}
