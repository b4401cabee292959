/** The hydraulic circuit of an aircraft as the page draws it: parts, what joins them, what moves in them. */
import type { DrawingSymbol, Quantity, Role } from '@wheelwell/core';

export type SymbolName = DrawingSymbol['name'];

/** A chamber whose volume follows a travel: `area` (m2) times the channel's rate flows into it. */
export interface ChamberFacts {
  readonly channel: string;
  readonly area: number;
}

/** Where a part joins a node. Ports of one part that join the same node are one. */
export interface PortFacts {
  readonly name: string;
  readonly title: string;
  readonly node: string;
  /** Place on the symbol, modules from its middle, x right, y up. */
  readonly at: readonly [number, number];
  /** Channels of flow that bring oil to the node, and that take it away. */
  readonly into: readonly string[];
  readonly outOf: readonly string[];
  readonly chambers: readonly ChamberFacts[];
}

/** How far a part's moving piece stands: 0 at `low` of a channel, 1 at `high`, -1 as far the other way where it goes both ways; or by its mode. */
export type MoveFacts =
  | {
      readonly channel: string;
      readonly low: number;
      readonly high: number;
      readonly both: boolean;
    }
  | { readonly modes: Readonly<Record<string, number>> };

export interface FigureFacts {
  readonly title: string;
  /** A number in SI, or a word. */
  readonly value: number | string;
  readonly quantity: Quantity;
}

export interface PartFacts {
  readonly name: string;
  readonly kind: string;
  readonly title: string;
  readonly role: Role;
  readonly symbol: SymbolName;
  /** Size the symbol's ports are declared on, modules. */
  readonly size: readonly [number, number];
  /** What its figures make different in the symbol: a selector's neutral, a valve's rest, a jack's cushions. */
  readonly traits: readonly string[];
  readonly ports: readonly PortFacts[];
  /** Unit whose leg or doors it moves, holds or watches; empty for what serves all. */
  readonly unit: string;
  /** Place in the drawing that the scenario fixes, modules. */
  readonly place?: readonly [number, number];
  readonly move?: MoveFacts;
  readonly parameters: readonly FigureFacts[];
}

export interface CircuitNode {
  readonly name: string;
  /** Held by a reservoir: drawn as a tank wherever it is far from one. */
  readonly tank: boolean;
  /** Only gas ports hang on it. */
  readonly gas: boolean;
}

export interface CircuitFacts {
  /** Pressure outside, Pa: what a gauge shows as none. */
  readonly ambient: number;
  readonly parts: readonly PartFacts[];
  readonly nodes: readonly CircuitNode[];
}
