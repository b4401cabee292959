import type {
  Card,
  Catalogues,
  ChannelInfo,
  Evidence,
  LogEntry,
  Outcome,
  Placement,
  Role,
  Run,
  Scenario,
  Series,
  Statistics,
} from '../define/index.js';
import type { Network } from '../network/index.js';
import type { ReadableChannel } from './channel.js';
import type { Machine } from './machine.js';

/** What is there when a card was played; see play.ts. */
export interface PlayedParts {
  readonly scenario: Scenario;
  readonly card: Card;
  readonly cardName: string;
  readonly catalogues: Catalogues;
  readonly network: Network;
  readonly channels: readonly ReadableChannel[];
  readonly machine: Machine;
  readonly outcome: Outcome;
  readonly tolerance: Run['tolerance'];
  readonly statistics: Statistics;
}

/** A card that was played: all that is known of it beside its channels. */
export abstract class PlayedCard implements Evidence {
  readonly scenario: Scenario;
  readonly card: Card;
  readonly duration: number;
  readonly outcome: Outcome;
  readonly log: readonly LogEntry[];
  readonly channels: readonly ChannelInfo[];
  private readonly catalogues: Catalogues;
  private readonly outlines = new Map<string, { at: (angle: number) => Placement }>();

  constructor({ scenario, card, outcome, machine, channels, catalogues }: PlayedParts) {
    this.scenario = scenario;
    this.card = card;
    this.outcome = outcome;
    this.duration = outcome.time;
    this.log = machine.log.entries;
    this.channels = channels.map((c) => c.info);
    this.catalogues = catalogues;
  }

  abstract series(channel: string): Series | undefined;

  role(name: string): Role | undefined {
    return roleIn(this.catalogues, this.scenario, name);
  }

  outline(mechanism: string, angle: number): Placement | undefined {
    const entry = this.scenario.mechanisms[mechanism];
    if (entry === undefined) return undefined;
    const outline =
      this.outlines.get(mechanism) ??
      this.catalogues.mechanisms[entry.is].outline(entry.parameters);
    this.outlines.set(mechanism, outline);
    return outline.at(angle);
  }
}

/** What a device or mechanism is for; undefined for a name the scenario does not have. */
export function roleIn(
  { components, mechanisms }: Catalogues,
  scenario: Scenario,
  name: string,
): Role | undefined {
  const device = scenario.components[name];
  if (device !== undefined) return components[device.is]?.role;
  const mechanism = scenario.mechanisms[name];
  return mechanism === undefined ? undefined : mechanisms[mechanism.is]?.role;
}
