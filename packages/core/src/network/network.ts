import { gases, oilAt, type ContentLaw, type OilProperties } from '../medium/index.js';
import { kept } from '../define/index.js';
import type {
  Catalogues,
  DeviceDefinition,
  GasDefinition,
  Scenario,
  Surroundings,
} from '../define/index.js';
import type { SparsePattern } from '../solver/index.js';
import { ChamberBends } from './bends.js';
import { Exchange } from './exchange.js';
import { InstanceFrame } from './frame.js';
import { GasCarriage } from './gas.js';
import { gasReach, NO_GAS, stillGas, type GasCard } from './gas-reach.js';
import { OilNodes, type GasStates } from './oil-nodes.js';
import { Placement } from './placement.js';
import { plan as makePlan, type Plan } from './plan.js';
import { shutInGroups } from './shut-in.js';
import { wire, type Wiring } from './wiring.js';
import { Workspace } from './workspace.js';

/** Sizes of angles and speeds, for error control, rad and rad/s. */
const ANGLE_SCALE = 0.001;
const SPEED_SCALE = 1;

/**
 * A compiled network: names resolved to indices, equations ready to run. The structure never
 * changes; what does (modes, inputs, bounds) stands in the frames and the workspace and is
 * set by the machine.
 */
export class Network {
  readonly plan: Plan;
  readonly wiring: Wiring;
  readonly workspace: Workspace;
  readonly frames: readonly InstanceFrame[];
  readonly law: ContentLaw;
  readonly around: Surroundings;
  readonly size: number;
  readonly pattern: SparsePattern;
  readonly scale: Float64Array;
  readonly fast: Uint8Array;
  readonly integrals: Int32Array;
  readonly bends: ChamberBends;

  /** Share by which oil that is shut in has grown since. */
  private readonly growth: number;
  private readonly shutIn: readonly (readonly number[])[];
  /** The gas of the vessels; dry air where there is none. */
  readonly gas: GasDefinition;
  /** Gas on its way; absent where none can go anywhere. */
  readonly carriage: GasCarriage | undefined;
  readonly states: GasStates;
  private readonly oil: OilNodes;
  private readonly placement: Placement;
  private readonly exchange: Exchange;
  private readonly running: readonly InstanceFrame[];
  private readonly equations: readonly NonNullable<DeviceDefinition['equations']>[];
  /** Scratch: volume swept per radian by every chamber. */
  private readonly sweep: Float64Array;

  /** `card`: what decides where gas can go (see gas-reach.ts). */
  constructor(
    scenario: Scenario,
    catalogues: Catalogues,
    private readonly card: GasCard = NO_GAS,
  ) {
    const { oil, around } = surroundings(scenario.fluid, catalogues, scenario.ambient);
    this.around = around;
    this.law = {
      bulkModulus: oil.bulkModulus,
      ambient: scenario.ambient,
      vapour: oil.vapourPressure,
      freeAir: Math.max(scenario.fluid.freeAir, 1e-6),
    };
    const whole = makePlan(scenario, catalogues, this.around);
    const reachedInWhole = gasReach(whole, card);
    const still = stillGas(whole, reachedInWhole, card);
    const rests = still.air.size + still.charged.size > 0;
    this.plan = rests ? makePlan(scenario, catalogues, this.around, still) : whole;
    const reached = rests ? gasReach(this.plan, card) : reachedInWhole;
    const { expansion } = catalogues.fluids[scenario.fluid.kind];
    this.growth = expansion * scenario.fluid.warmedBy;
    this.shutIn = shutInGroups(this.plan);
    const { nodes, coordinates, attachments, instances } = this.plan;
    const { temperature } = scenario.fluid;
    const vessels = nodes.flatMap((n) => n.vessel ?? []);
    this.gas = vessels.length > 0 ? catalogues.gases[vessels[0].gas] : gases['dry-air'];
    this.oil = new OilNodes(this.law, nodes, reached, catalogues.gases, this.gas, temperature);
    this.placement = new Placement(coordinates, attachments);
    this.sweep = new Float64Array(this.oil.chamberArea.length);
    this.wiring = wire(this.plan, this.oil.chamberStart, reached);
    this.size = this.wiring.states;
    this.pattern = this.wiring.pattern;
    this.workspace = new Workspace({
      nodes: nodes.length,
      coordinates: coordinates.length,
      attachments: attachments.length,
      inputs: this.wiring.inputs,
      partials: this.wiring.entries.count,
    });
    this.workspace.gasTemperature.fill(temperature);
    const { contentState } = this.wiring;
    this.states = { contentState, ...this.wiring.gas };
    attachments.forEach((a, i) => (this.workspace.attachmentCoordinate[i] = a.coordinate));
    nodes.forEach((n, i) => {
      if (n.vented !== undefined) this.workspace.pressure[i] = n.vented;
      if (n.resting !== undefined) this.workspace.gas[i] = n.resting;
    });
    this.exchange = new Exchange(
      this.workspace,
      this.wiring.frames,
      instances.flatMap((i) => i.laws),
    );
    const { exchange, wiring } = this;
    if (wiring.gas.paths.length + wiring.gas.vessels.length > 0)
      this.carriage = new GasCarriage(
        wiring.gas,
        exchange,
        wiring.frames,
        this.gas,
        oil.density,
        this.law.vapour,
        temperature,
        vessels.map((v) => ({ gamma: catalogues.gases[v.gas].gamma, exchange: v.exchange })),
      );
    this.frames = instances.map((p, i) => {
      const at = exchange.offsets[i];
      return new InstanceFrame(p.name, p.definition, p.k, exchange, wiring.frames[i], at);
    });
    this.running = this.frames.filter((f) => f.definition.equations !== undefined);
    this.equations = this.running.map((f) => f.definition.equations!);
    this.scale = new Float64Array(this.size);
    this.fast = new Uint8Array(this.size);
    this.setScales();
    const { angleState, speedState } = wiring;
    this.integrals = Int32Array.from([...angleState].flatMap((a, c) => [a, speedState[c]]));
    const moved = this.oil.movedChambers().map(({ node, chamber }) => {
      const attachment = this.oil.chamberAttachment[chamber];
      const c = attachments[attachment].coordinate;
      const at = { content: contentState[node], angle: angleState[c], speed: speedState[c] };
      return { ...at, attachment, area: this.oil.chamberArea[chamber] };
    });
    this.bends = new ChamberBends(moved, this.placement);
  }

  /** What each state's error is measured against. */
  private setScales(): void {
    const { contentState, angleState, speedState, ownStates, gas } = this.wiring;
    this.oil.setScales(this.initial(), this.states, this.scale);
    gas.gasState.forEach((s) => s >= 0 && (this.fast[s] = 1));
    this.plan.nodes.forEach(
      (n, i) => (this.fast[contentState[i]] = n.vented === undefined ? 1 : 0),
    );
    angleState.forEach((s) => (this.scale[s] = ANGLE_SCALE));
    speedState.forEach((s) => (this.scale[s] = SPEED_SCALE));
    this.plan.instances.forEach((p, i) => {
      Object.values(p.definition.states ?? {}).forEach((d, k) => {
        this.scale[ownStates[i][k]] = d.scale;
      });
    });
  }

  /** States at rest: oil at ambient pressure everywhere, mechanisms where they start. */
  initial(start: Readonly<Record<string, number>> = {}): Float64Array {
    const { contentState, angleState, ownStates } = this.wiring;
    const { nodeOf } = this.plan;
    const gas = new Map(Object.entries(this.card.gas).map(([n, v]) => [nodeOf.get(n) ?? -1, v]));
    const y = new Float64Array(this.size);
    this.plan.instances.forEach((p, i) => {
      Object.values(p.definition.states ?? {}).forEach((d, k) => (y[ownStates[i][k]] = d.initial));
    });
    const travel = this.placement.initial(y, angleState, start);
    this.oil.initial(y, this.states, travel, gas);
    if (this.growth !== 0) {
      for (const group of this.shutIn) this.oil.grow(y, contentState, travel, group, this.growth);
    }
    return y;
  }

  /** Volume of a node at the point last evaluated, m3, walls not counted. */
  volumeOf(node: number): number {
    return this.oil.volumeOf(node, this.workspace.travel);
  }

  /**
   * Moment of the pressure above ambient in the chambers that push a coordinate towards its high
   * (1) or low (-1) end, at the point last evaluated, N m, at least 0 unless there is a vacuum.
   */
  pressureMoment(c: number, sense: 1 | -1): number {
    const { workspace: w, around } = this;
    const { chamberStart, chamberArea, chamberAttachment } = this.oil;
    let sum = 0;
    for (let i = 0; i < this.plan.nodes.length; i++)
      for (let k = chamberStart[i]; k < chamberStart[i + 1]; k++) {
        const a = chamberAttachment[k];
        if (w.attachmentCoordinate[a] !== c) continue;
        const sweep = sense * chamberArea[k] * w.ratio[a];
        if (sweep > 0) sum += (w.pressure[i] - around.ambient) * sweep;
      }
    return sum;
  }

  /** Work that gas (per m3 at ANR) can do from a pressure down to ambient at the oil's temperature, J/m3. */
  gasWorth(pressure: number): number {
    return this.oil.gasWorth(pressure);
  }

  /** Angle of the coordinate at which a link has a travel (rad for plain links); links that a lock may hang on are monotone. */
  coordinateAngle(attachment: number, travel: number): number {
    return this.placement.coordinateAngle(attachment, travel);
  }

  /** Whether a link's travel grows (1) or shrinks (-1) as its coordinate rises. */
  senseOf(attachment: number): number {
    return this.placement.senseOf(attachment);
  }

  /** Kinetic energy of the coordinates at the point last evaluated, J. */
  kineticEnergy(): number {
    return this.placement.kineticEnergy(this.workspace);
  }

  /** Static moment of a coordinate (weight, springs) at the point last evaluated, N m. */
  staticMoment(c: number): number {
    return this.placement.staticMoment(c);
  }

  /** To be called when a mode, a bound or a held angle has changed. */
  refresh(): void {
    this.placement.refresh();
  }

  derivatives(t: number, y: Float64Array, rate: Float64Array): void {
    this.workspace.wantJacobian = false;
    this.evaluate(t, y, rate);
  }

  /**
   * Evaluates at given node pressures (Pa absolute): the contents of firm nodes in `y` are set to
   * what gives those pressures at the angles in `y`.
   */
  atPressures(t: number, y: Float64Array, rate: Float64Array, pressure: Float64Array): void {
    const { angleState, speedState } = this.wiring;
    this.placement.evaluate(this.workspace, y, angleState, speedState);
    this.oil.fill(y, this.states, this.workspace.travel, pressure);
    this.derivatives(t, y, rate);
  }

  jacobian(t: number, y: Float64Array, rate: Float64Array, values: Float64Array): void {
    const w = this.workspace;
    w.wantJacobian = true;
    w.jacobianValues = values;
    clear(values);
    clear(w.partial);
    this.evaluate(t, y, rate);
    this.turnPartials(values);
    this.turnGas(values);
    this.oil.weigh(w, this.states, this.scale);
  }

  private evaluate(t: number, y: Float64Array, rate: Float64Array): void {
    const w = this.workspace;
    const { angleState, speedState, contentState } = this.wiring;
    w.t = t;
    w.y = y;
    w.rate = rate;
    clear(rate);
    clear(w.gain);
    this.placement.evaluate(w, y, angleState, speedState);
    this.oil.evaluate(w, y, this.states);
    const { running, equations, exchange, carriage } = this;
    for (let i = 0; i < equations.length; i++) equations[i](running[i]);
    exchange.passages.evaluate();
    carriage?.evaluate();
    exchange.scatter();
    if (w.wantJacobian) {
      this.sweepChambers();
      carriage?.scatterPartials(w.jacobianValues, this.sweep);
      exchange.scatterPartials();
    }
    const { gain, direction } = w;
    for (let i = 0; i < contentState.length; i++) rate[contentState[i]] = gain[i];
    for (let c = 0; c < angleState.length; c++) {
      const sign = direction[c];
      if (sign === 0) continue;
      rate[angleState[c]] = w.speed[c];
      rate[speedState[c]] = (w.drive[c] - sign * w.capacity[c]) * w.inverseInertia[c];
    }
  }

  /** Volume swept per radian by every chamber; a held coordinate sweeps nothing. */
  private sweepChambers(): void {
    const { chamberArea, chamberAttachment } = this.oil;
    const { sweep, workspace: w } = this;
    for (let k = 0; k < sweep.length; k++) {
      const a = chamberAttachment[k];
      sweep[k] = w.direction[w.attachmentCoordinate[a]] === 0 ? 0 : chamberArea[k] * w.ratio[a];
    }
  }

  /** Partials against the pressure of nodes with gas become partials against gas and temperature. */
  private turnGas(values: Float64Array): void {
    const { partial, byGas, byHeat } = this.workspace;
    const { gasEntries, gasSlots, heatEntries, heatSlots } = this.wiring.gas;
    const { node, scaledBy } = this.wiring.entries;
    const { inverseInertia } = this.workspace;
    for (let i = 0; i < gasEntries.length; i++) {
      const e = gasEntries[i];
      const g = scaledBy[e] < 0 ? partial[e] : partial[e] * inverseInertia[scaledBy[e]];
      values[gasSlots[i]] += g * byGas[node[e]];
    }
    for (let i = 0; i < heatEntries.length; i++)
      values[heatSlots[i]] += partial[heatEntries[i]] * byHeat[node[heatEntries[i]]];
  }

  /** Pressure partials become state partials; the coordinates' own rows are filled. */
  private turnPartials(values: Float64Array): void {
    const w = this.workspace;
    const { count, node, scaledBy, contentSlot, chamberStart, chamberSlot, chamber } =
      this.wiring.entries;
    const { sweep } = this;
    const { partial, byContent, byVolume, inverseInertia, direction } = w;
    for (let i = 1; i < count; i++) {
      const c = scaledBy[i];
      const g = c < 0 ? partial[i] : partial[i] * inverseInertia[c];
      if (g === 0) continue;
      const j = node[i];
      values[contentSlot[i]] += g * byContent[j];
      const end = chamberStart[i + 1];
      const gv = g * byVolume[j];
      for (let k = chamberStart[i]; k < end; k++) values[chamberSlot[k]] += gv * sweep[chamber[k]];
    }
    const { angleBySpeed, speedByAngle, speedBySpeed, angleState, speedState } = this.wiring;
    for (let c = 0; c < angleState.length; c++) {
      if (direction[c] === 0) continue;
      const byAngle = w.driveByAngle[c] + this.placement.inertiaTerm(c, w, w.rate[speedState[c]]);
      values[angleBySpeed[c]] += 1;
      values[speedByAngle[c]] += byAngle * inverseInertia[c];
      values[speedBySpeed[c]] += w.driveBySpeed[c] * inverseInertia[c];
    }
  }
}

/** The oil and what devices know of where they are: the same objects as long as the scenario's fluid is. */
const surroundings = kept(
  (
    { kind, temperature, thickness }: Scenario['fluid'],
    { fluids }: Catalogues,
    ambient: number,
  ): { readonly oil: OilProperties; readonly around: Surroundings } => {
    const oil = oilAt(fluids[kind], temperature);
    const { density, bulkModulus } = oil;
    const viscosity = oil.viscosity * thickness;
    return { oil, around: { density, viscosity, bulkModulus, ambient, temperature } };
  },
);

/** Small arrays: a loop is quicker than the built-in fill. */
function clear(a: Float64Array): void {
  for (let i = 0; i < a.length; i++) a[i] = 0;
}
