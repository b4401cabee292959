/**
 * Everything the equations read and write at one (t, y): plain typed arrays, made once. Frames
 * and the network share it. Node, coordinate and attachment indices are the compiler's.
 */
export interface WorkspaceSizes {
  readonly nodes: number;
  readonly coordinates: number;
  readonly attachments: number;
  readonly inputs: number;
  readonly partials: number;
}

export class Workspace {
  t = 0;
  y: Float64Array = new Float64Array(0);
  rate: Float64Array = new Float64Array(0);
  jacobianValues: Float64Array = new Float64Array(0);
  wantJacobian = false;

  /** Per node: absolute pressure (Pa), oil content (m3), dp/dcontent, dp/dvolume, inflow (m3/s). */
  readonly pressure: Float64Array;
  readonly content: Float64Array;
  readonly byContent: Float64Array;
  readonly byVolume: Float64Array;
  readonly gain: Float64Array;

  /** Per node: gas in it beside the oil's own free air (m3 at ANR), and its temperature (K). */
  readonly gas: Float64Array;
  readonly gasTemperature: Float64Array;
  /** dp/dgas, dp/dtemperature, and the volume (m3) of nodes that gas can reach. */
  readonly byGas: Float64Array;
  readonly byHeat: Float64Array;
  readonly volume: Float64Array;

  /** Per coordinate: angle, speed, moment without friction (N m), friction capacity (N m). */
  readonly angle: Float64Array;
  readonly speed: Float64Array;
  readonly drive: Float64Array;
  readonly capacity: Float64Array;
  /** Viscous resistance, N m s/rad, already taken off the drive. */
  readonly viscous: Float64Array;
  /** Sign of motion: 1, -1, or 0 when held. */
  readonly direction: Int8Array;
  readonly inverseInertia: Float64Array;
  /** Partial derivatives of the net moment. */
  readonly driveByAngle: Float64Array;
  readonly driveBySpeed: Float64Array;

  /** Per attachment: travel, d travel / d angle, and its derivative. */
  readonly travel: Float64Array;
  readonly ratio: Float64Array;
  readonly curvature: Float64Array;
  readonly attachmentCoordinate: Int32Array;
  /** The attachment of links that hang on nothing: it never travels. */
  readonly idleAttachment: number;

  /** Operator inputs. */
  readonly inputs: Float64Array;
  /** Partial derivatives against node pressures, by entry; entry 0 collects what is not wanted. */
  readonly partial: Float64Array;

  constructor(sizes: WorkspaceSizes) {
    const f = (n: number): Float64Array => new Float64Array(n);
    this.pressure = f(sizes.nodes);
    this.content = f(sizes.nodes);
    this.byContent = f(sizes.nodes);
    this.byVolume = f(sizes.nodes);
    this.gain = f(sizes.nodes);
    this.gas = f(sizes.nodes);
    this.gasTemperature = f(sizes.nodes);
    this.byGas = f(sizes.nodes);
    this.byHeat = f(sizes.nodes);
    this.volume = f(sizes.nodes);
    this.angle = f(sizes.coordinates);
    this.speed = f(sizes.coordinates);
    this.drive = f(sizes.coordinates);
    this.capacity = f(sizes.coordinates);
    this.viscous = f(sizes.coordinates);
    this.direction = new Int8Array(sizes.coordinates);
    this.inverseInertia = f(sizes.coordinates);
    this.driveByAngle = f(sizes.coordinates);
    this.driveBySpeed = f(sizes.coordinates);
    this.idleAttachment = sizes.attachments;
    this.travel = f(sizes.attachments + 1);
    this.ratio = f(sizes.attachments + 1);
    this.curvature = f(sizes.attachments + 1);
    this.attachmentCoordinate = new Int32Array(sizes.attachments + 1);
    this.inputs = f(sizes.inputs);
    this.partial = f(sizes.partials);
  }
}
