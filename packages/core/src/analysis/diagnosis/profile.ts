/** What a cause foretells at any severity, from the severities that were played. */
import type { Hypothesis, Signature } from './shapes.js';

/** Severities that a fault is looked at between: less than the least nobody notices. */
export const LEAST = 0.05;

interface Node {
  readonly severity: number;
  /** For each setup. */
  readonly signatures: readonly Signature[];
}

/** Nodes in the order of severity; the first is the healthy aircraft at zero. */
export class Profile {
  private readonly nodes: Node[];

  constructor(
    readonly hypothesis: Hypothesis,
    healthy: readonly Signature[],
  ) {
    this.nodes = [{ severity: 0, signatures: healthy }];
  }

  /** Adds what a severity comes to under one setup; where it was not played the healthy figures stand. */
  put(severity: number, setup: number, signature: Signature): void {
    const at = this.nodes.findIndex((n) => n.severity === severity);
    const before = at < 0 ? this.nodes[0].signatures : this.nodes[at].signatures;
    const node = { severity, signatures: before.map((s, i) => (i === setup ? signature : s)) };
    if (at < 0) this.nodes.push(node);
    else this.nodes[at] = node;
    this.nodes.sort((a, b) => a.severity - b.severity);
  }

  /** Straight between nodes; what only one of the two has comes from the nearer. */
  at(severity: number): readonly Signature[] {
    const above = this.nodes.findIndex((n) => n.severity >= severity);
    const b = this.nodes[above] ?? this.nodes[this.nodes.length - 1];
    const a = this.nodes[Math.max(0, above - 1)] ?? b;
    if (a === b || above < 0) return b.signatures;
    const share = (severity - a.severity) / (b.severity - a.severity);
    return a.signatures.map((s, i) => between(s, b.signatures[i], share));
  }
}

function between(a: Signature, b: Signature, share: number): Signature {
  const near = share < 0.5 ? a : b;
  const out: Record<string, number> = {};
  for (const key of Object.keys(near)) {
    const [x, y] = [a[key], b[key]];
    const step =
      x === undefined || y === undefined || key.endsWith('moved') || key.endsWith('pauses');
    out[key] = step ? near[key] : x + share * (y - x);
  }
  return out;
}

/** Places for a quick look, and for a cause that is likely: where a time runs away, a fit is narrow. */
const POINTS = { quick: 24, close: 240 } as const;

const evenly = (points: number): readonly number[] =>
  Array.from({ length: points }, (_, i) => LEAST + ((1 - LEAST) * (i + 0.5)) / points);

/** Severities at which evidence is summed up, evenly over what can be noticed. */
export const SEVERITIES = { quick: evenly(POINTS.quick), close: evenly(POINTS.close) } as const;
