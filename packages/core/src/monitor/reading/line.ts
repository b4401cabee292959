import type { Evidence } from '../../define/index.js';
import type { Direction } from './motion.js';

/** Names of the devices with a role, in the scenario's order. */
export function devicesOf(e: Evidence, role: ReturnType<Evidence['role']>): readonly string[] {
  return Object.keys(e.scenario.components).filter((name) => e.role(name) === role);
}

/** Node joined to a device's port named after a direction, e.g. `up` or `up-line`. */
export function lineOf(e: Evidence, device: string, direction: Direction): string | undefined {
  const { ports } = e.scenario.components[device];
  const port = Object.keys(ports).find((p) => p === direction || p.startsWith(`${direction}-`));
  return port === undefined ? undefined : ports[port];
}

/** Names of the channels of a device or node with one quantity. */
export function channelsOf(e: Evidence, of: string, quantity: string): readonly string[] {
  return e.channels.filter((c) => c.of === of && c.quantity === quantity).map((c) => c.name);
}

/** Names of the nodes whose pressure the evidence has. */
export function pressureNodes(e: Evidence): readonly string[] {
  return e.channels
    .filter((c) => c.quantity === 'pressure' && c.name === `${c.of}.pressure`)
    .map((c) => c.of);
}
