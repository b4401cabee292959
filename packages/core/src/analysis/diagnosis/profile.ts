/** What a cause foretells at any severity, from the severities that were played. */
import type { Keys, Vector } from './keys.js';
import type { Hypothesis } from './shapes.js';

/** Severities that a fault is looked at between: less than the least nobody notices. */
export const LEAST = 0.05;

/** Of what is as bad at any severity: from when, and to. */
const AT_ALL = 1e-3;
export const WORST = 1;
/** What was played so near to it makes what was borrowed worth nothing. */
const NEAR = 0.05;

/** What is foretold under each setup. */
export type Foretold = readonly Vector[];

export interface Drawn {
  readonly severity: number;
  readonly foretold: Foretold;
}

interface Node {
  readonly severity: number;
  readonly vector: Vector;
  /** Taken over from the other side, where its like was played. */
  readonly borrowed: boolean;
}

export class Profile {
  /** For each setup, in the order of severity; the first is the healthy aircraft at zero. */
  private readonly nodes: Node[][];
  /** What severities came to on aircraft from the scatter of healthy ones. */
  readonly drawn: Drawn[] = [];
  /** Its worst in oil that is colder by what a thermometer is off; for what hangs on that. */
  private chilled: Foretold | undefined;
  /** How often something was added: as long as it stays so, all that follows from it does. */
  revision = 0;

  /** @param abrupt as bad at any severity */
  constructor(
    readonly hypothesis: Hypothesis,
    private readonly keys: Keys,
    healthy: Foretold,
    private readonly abrupt = false,
  ) {
    this.nodes = healthy.map((vector) => [{ severity: 0, vector, borrowed: false }]);
  }

  /** Adds what a severity comes to under one setup; what was played counts before what was borrowed. */
  put(severity: number, setup: number, vector: Vector, borrowed = false): void {
    for (const at of this.abrupt ? [AT_ALL, WORST] : [severity])
      this.add({ severity: at, vector, borrowed }, setup);
  }

  /** Adds what it comes to on another aircraft than the nominal one. */
  draw(severity: number, foretold: Foretold): void {
    this.revision++;
    this.drawn.push({ severity, foretold });
  }

  /** Adds what its worst comes to in colder oil. */
  chill(foretold: Foretold): void {
    this.revision++;
    this.chilled = foretold;
  }

  /** How much colder it may be than was noted. */
  get colds(): readonly Cold[] {
    return this.chilled === undefined ? AS_NOTED : COLDS;
  }

  private add(node: Node, setup: number): void {
    this.revision++;
    const near = (n: Node): boolean =>
      n.severity > 0 && Math.abs(n.severity - node.severity) <= NEAR;
    const nodes = this.nodes[setup];
    if (node.borrowed && nodes.some((n) => !n.borrowed && near(n))) return;
    const left = nodes.filter(
      (n) => n.severity !== node.severity && !(n.borrowed && !node.borrowed && near(n)),
    );
    this.nodes[setup] = [...left, node].sort((a, b) => a.severity - b.severity);
  }

  /** Whether a severity was played so near that playing another is not worth it. */
  has(severity: number, setup: number, within: number): boolean {
    return this.nodes[setup].some(
      (n) =>
        !n.borrowed && n.severity > 0 && (this.abrupt || Math.abs(n.severity - severity) <= within),
    );
  }

  /** Whether anything but the healthy aircraft is known under a setup. */
  known(setup: number): boolean {
    return this.nodes[setup].length > 1;
  }

  /** Whether what is known nearest to a severity, under the first setup, is borrowed. */
  borrowed(severity: number): boolean {
    return nearest(this.nodes[0], severity).borrowed;
  }

  /** Severities that are known under the first setup, rising from the healthy aircraft's zero. */
  get severities(): readonly number[] {
    return this.nodes[0].map((n) => n.severity);
  }

  /** Between which severities, under the first setup, a time runs away: what fits there fits narrowly. */
  get steep(): readonly (readonly [number, number])[] {
    const [nodes] = this.nodes;
    return nodes.slice(1).flatMap((b, i) => {
      const a = nodes[i];
      const away = this.keys.runsAway(a.vector, b.vector, nodes[0].vector);
      return away ? [[a.severity, b.severity] as const] : [];
    });
  }

  /** What was played, or borrowed, next to a severity; the healthy aircraft's where nothing was. */
  nearest(severity: number): Foretold {
    return this.nodes.map((nodes) => nearest(nodes, severity).vector);
  }

  /**
   * Straight between what was played, and on from the last of it.
   *
   * @param cold by so many standard deviations of what is known of it; for what hangs on that alone
   */
  at(severity: number, cold = 0): Foretold {
    const { chilled } = this;
    return this.nodes.map((nodes, setup) => {
      const usual = this.between(nodes, severity);
      if (chilled === undefined || cold === 0) return usual;
      const [{ vector: sound }] = nodes;
      const worst = this.between(nodes, WORST);
      return usual.map((x, i) => {
        const more = chilled[setup][i] - worst[i];
        if (Number.isNaN(more)) return x;
        const moved = x + cold * severity * more;
        // Warm, it is as good as sound, and not better.
        const least = sound[i] < x ? sound[i] : x;
        return more > 0 ? Math.max(moved, least) : moved;
      });
    });
  }

  private between(nodes: readonly Node[], severity: number): Vector {
    if (severity <= 0 || nodes.length === 1) return nodes[0].vector;
    // The first that is as bad; beyond the last it goes on as between the last two.
    let above = 1;
    while (above < nodes.length - 1 && nodes[above].severity < severity) above++;
    const [a, b] = [nodes[above - 1], nodes[above]];
    if (b.severity === severity) return b.vector;
    const share = (severity - a.severity) / (b.severity - a.severity);
    return this.keys.between(a.vector, b.vector, share, nodes[0].vector);
  }
}

function nearest(nodes: readonly Node[], severity: number): Node {
  const away = (n: Node): number => Math.abs(n.severity - severity);
  return nodes.reduce((a, b) => (away(b) < away(a) ? b : a));
}

/** How cold it may be, in standard deviations, and how likely each is. */
interface Cold {
  readonly by: number;
  readonly share: number;
}
const AS_NOTED: readonly Cold[] = [{ by: 0, share: 1 }];
const COLDS: readonly Cold[] = normal([-1.5, -0.75, 0, 0.75, 1.5]);

/** Places of a normal distribution with the shares they stand for. */
function normal(places: readonly number[]): readonly Cold[] {
  const densities = places.map((by) => Math.exp(-0.5 * by * by));
  const sum = densities.reduce((a, b) => a + b, 0);
  return places.map((by, i) => ({ by, share: densities[i] / sum }));
}

/** Places to find the best by, for a quick look, and for a cause that is likely: where a time runs away, a fit is narrow. */
const POINTS = { rough: 8, quick: 24, close: 240 } as const;

const evenly = (points: number): readonly number[] =>
  Array.from({ length: points }, (_, i) => LEAST + ((1 - LEAST) * (i + 0.5)) / points);

/** Severities at which evidence is summed up, evenly over what can be noticed. */
const SEVERITIES = {
  rough: evenly(POINTS.rough),
  quick: evenly(POINTS.quick),
  close: evenly(POINTS.close),
} as const;

/** A severity, and which share of all that can be noticed it stands for. */
export interface Stretch {
  readonly severity: number;
  readonly share: number;
}

/** Where it is looked, too, between two severities where a time runs away. */
const INNER = [0.2, 0.4, 0.6, 0.8] as const;

/**
 * The places at which evidence is summed up, with those that were played, and some where a time runs away: what
 * fits there may fit nowhere else.
 */
export function stretchesOf(
  { severities, steep }: Pick<Profile, 'severities' | 'steep'>,
  look: keyof typeof SEVERITIES,
): readonly Stretch[] {
  const inner = steep.flatMap(([a, b]) => INNER.map((share) => a + share * (b - a)));
  const besides = [...severities, ...inner].filter((s) => s >= LEAST);
  const all = [...new Set([...SEVERITIES[look], ...besides])].sort((a, b) => a - b);
  const between = (i: number): number => (all[i - 1] + all[i]) / 2;
  return all.map((severity, i) => {
    const [from, to] = [i === 0 ? LEAST : between(i), i === all.length - 1 ? 1 : between(i + 1)];
    return { severity, share: (to - from) / (1 - LEAST) };
  });
}

/**
 * Severities that are played rather than others near them, the first before the next: each halves what is open
 * at most sheets, and they are what is played ahead. Of some 340 swings that a sheet wants on the largest demo
 * all but 30 are at one of them.
 */
export const PREFERRED: readonly number[] = [
  WORST,
  ...[0.5, 0.1, 0.25, 0.75, 0.9, 0.3, 0.2, 0.6, 0.4, 0.8, 0.7],
];
const ROUNDING = 1e-9;

/** A severity that is as good as one sought, which may be so far off. */
export const preferred = (sought: number, off: number): number =>
  PREFERRED.find((s) => Math.abs(s - sought) <= off + ROUNDING) ?? Math.round(sought * 100) / 100;
