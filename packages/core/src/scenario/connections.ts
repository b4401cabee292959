/** Ports on nodes, links on mechanisms, units: what hangs together in the aircraft. */
import type { ComponentEntry, LinkEntry, NodeEntry, UnitEntry } from '../define/scenario.js';
import { didYouMean, inUnit } from '../quantity/index.js';
import { turnsOneWay } from './driven.js';
import { isMap, type Draft } from './draft.js';
import { shown } from './issue-list.js';
import { BLANKED, blankedNode, camel, FLUID, kebab } from './names.js';
import { sampleTravel } from './shape.js';
import { shortStroke } from './stroke.js';
import { refer, unknown, type World } from './world.js';

/** Every node with the ports on it, from what is written, so that one mistake does not raise others. */
export function collectNodes(draft: Draft): Map<string, { device: string; port: string }[]> {
  const nodes = new Map<string, { device: string; port: string }[]>();
  for (const [device, { raw }] of draft.components) {
    if (!isMap(raw.ports)) continue;
    for (const [port, node] of Object.entries(raw.ports)) {
      if (typeof node !== 'string' || node === BLANKED) continue;
      const users = nodes.get(node);
      if (users === undefined) nodes.set(node, [{ device, port }]);
      else users.push({ device, port });
    }
  }
  return nodes;
}

/** A node with one port is a dead end: meant only when it is declared, else most often a slip. */
export function checkNodes(world: World): void {
  const { nodes, draft, issues } = world;
  for (const [node, users] of nodes) {
    if (users.length > 1 || draft.nodes.has(node)) continue;
    const [{ device, port }] = users;
    const others = [...nodes.keys()].filter((name) => name !== node);
    const near = didYouMean(node, others);
    issues.add(['components', device, 'ports', port], {
      message: 'no other port joins this node',
      found: node,
      allowed: 'a node that another port joins, or a dead end declared under nodes',
      hint: near === '' ? `write ${BLANKED} to cap the port` : near,
    });
  }
  for (const [node, users] of nodes) {
    const tanks = users.filter(
      ({ device, port }) =>
        draft.components.get(device)?.definition?.vented?.ports.includes(camel(port)) === true,
    );
    const other = tanks.find(({ device }) => device !== tanks[0].device);
    if (other === undefined) continue;
    issues.add(['components', other.device, 'ports', other.port], {
      message: `${tanks[0].device} holds the pressure of this node already`,
      found: node,
      allowed: 'one reservoir on a node',
      hint: 'put a line between them',
    });
  }
  for (const node of draft.nodes.keys()) {
    if (nodes.has(node)) continue;
    issues.addKey(['nodes', node], {
      message: 'no port joins this node',
      found: node,
      hint: didYouMean(node, nodes.keys()),
    });
  }
}

/** Devices, mechanisms and units share the log, so they must not share names. */
export function checkNames({ draft, issues }: World): void {
  const taken = new Map<string, string>();
  for (const section of ['components', 'mechanisms', 'units'] as const) {
    for (const name of draft[section].keys()) {
      const other = taken.get(name);
      if (other === undefined) taken.set(name, section);
      else
        issues.addKey([section, name], {
          message: `this name is taken under ${other}`,
          found: name,
          hint: 'choose another name',
        });
      if (name === FLUID)
        issues.addKey([section, name], {
          message: 'this is what the oil is called',
          found: name,
          hint: 'choose another name',
        });
    }
  }
}

export function buildComponents(world: World): Record<string, ComponentEntry> {
  const built: Record<string, ComponentEntry> = {};
  for (const [name, { definition, frame }] of world.draft.components) {
    const links = buildLinks(world, name);
    const parameters = world.parameters.get(name);
    if (definition === undefined || parameters === undefined) continue;
    checkStroke(world, name, links);
    checkLockEnd(world, name, links);
    if (frame === undefined) continue;
    const ports: Record<string, string> = {};
    for (const [port, node] of Object.entries(frame.ports ?? {})) {
      if (node !== undefined)
        ports[camel(port)] = node === BLANKED ? blankedNode(name, camel(port)) : node;
    }
    built[name] = {
      is: definition.kind,
      note: frame.note ?? '',
      parameters,
      ports,
      links,
      signals: world.signals.get(name) ?? {},
      ...(frame.place && { place: frame.place }),
    };
  }
  return built;
}

/** An uplock holds what it hangs on near its high end, a downlock near its low one: anywhere else it would catch at once. */
function checkLockEnd(world: World, device: string, links: ComponentEntry['links']): void {
  const { definition, raw } = world.draft.components.get(device)!;
  const role = definition?.role;
  const at = world.parameters.get(device)?.at;
  const range = world.mechanisms.get(links.leg?.to ?? '')?.range;
  if ((role !== 'uplock' && role !== 'downlock') || typeof at !== 'number' || !range) return;
  const high = at > 0.5 * (range[0] + range[1]);
  if (high === (role === 'uplock')) return;
  const [end, other] = role === 'uplock' ? ['high', 'downlock'] : ['low', 'uplock'];
  world.issues.add(['components', device, 'at'], {
    message: `a ${kebab(role)} holds near the ${end} end of travel, and this is nearer the other`,
    found: raw.at === undefined ? '' : shown(raw.at),
    allowed: `an angle near the ${end} end of ${links.leg.to}`,
    hint: `for the other end use a ${other}`,
  });
}

/** A jack must be as long as the travel of what it moves. */
function checkStroke(world: World, device: string, links: ComponentEntry['links']): void {
  const { definition, raw } = world.draft.components.get(device)!;
  const parameters = world.parameters.get(device);
  if (definition === undefined || parameters === undefined) return;
  const short = shortStroke(definition, parameters, links);
  if (short === undefined) return;
  const { link, to, needed } = short;
  world.issues.add(['components', device, 'stroke'], {
    message: `the ${kebab(link)} link needs ${millimetres(needed)} over the travel of ${to}`,
    found:
      raw.stroke === undefined
        ? `${inUnit(parameters.stroke as number, 'mm')} by default`
        : shown(raw.stroke),
    allowed: `at least ${millimetres(needed)}`,
    hint: `a longer stroke, or pivots of the link that ask for less`,
  });
}

function buildLinks(world: World, device: string): Record<string, LinkEntry> {
  const { draft, issues, mechanisms } = world;
  const { raw, frame, definition } = draft.components.get(device)!;
  const links: Record<string, LinkEntry> = {};
  for (const [key, link] of Object.entries(isMap(raw.links) ? raw.links : {})) {
    const path = ['components', device, 'links', key];
    if (!isMap(link) || typeof link.to !== 'string') continue;
    if (!draft.mechanisms.has(link.to)) {
      unknown(world, [...path, 'to'], 'mechanism', link.to, draft.mechanisms.keys());
      continue;
    }
    const read = frame?.links?.[key];
    const name = camel(key);
    const shape = definition?.links?.[name]?.shape;
    const range = mechanisms.get(link.to)?.range;
    if (read === undefined || shape === undefined) continue;
    checkLock(world, device, name, [...path, 'to'], link.to);
    if (shape === 'plain') links[name] = { to: link.to };
    else if (range !== undefined) {
      const sampled = sampleTravel(read, range);
      if ('shape' in sampled) links[name] = { to: link.to, travel: sampled.shape };
      else issues.add([...path, ...sampled.at], sampled.finding);
    }
  }
  return links;
}

/** A lock holds at one angle: of what is driven, that must be one angle of its driver too. */
function checkLock(
  { draft, driven, issues }: World,
  device: string,
  link: string,
  path: readonly string[],
  to: string,
): void {
  const modes = Object.values(draft.components.get(device)?.definition?.modes ?? {});
  if (!modes.some(({ bounds }) => bounds?.link === link) || turnsOneWay(driven, to)) return;
  issues.add(path, {
    message: `a lock cannot hold ${to}: it turns back, or rests, while its driver goes on`,
    found: to,
    allowed: 'a mechanism of its own motion, or one that always turns on with its driver',
    hint: `hang it on ${driven.get(to)?.by ?? 'the driver'}`,
  });
}

export function buildNodes({ draft }: World): Record<string, NodeEntry> {
  return Object.fromEntries(
    [...draft.nodes].map(([name, node]) => [
      name,
      { volume: node?.volume ?? 0, air: node?.air ?? 0, note: node?.note ?? '' },
    ]),
  );
}

export function buildUnits(world: World): Record<string, UnitEntry> {
  const built: Record<string, UnitEntry> = {};
  for (const [name, unit] of world.draft.units) {
    if (unit === undefined) continue;
    const path = ['units', name];
    const { side, leg, doors = [], uplock, downlock, sequence = [], actuators = [], bay } = unit;
    refer(world, [...path, 'leg'], leg, 'leg');
    doors.forEach((door, i) => refer(world, [...path, 'doors', i], door, 'door'));
    if (uplock !== undefined) refer(world, [...path, 'uplock'], uplock, 'uplock');
    if (downlock !== undefined) refer(world, [...path, 'downlock'], downlock, 'downlock');
    sequence.forEach((valve, i) => refer(world, [...path, 'sequence', i], valve, 'sequence-valve'));
    actuators.forEach((jack, i) => refer(world, [...path, 'actuators', i], jack, 'actuator'));
    built[name] = {
      side: side as UnitEntry['side'],
      leg,
      doors,
      ...(uplock !== undefined && { uplock }),
      ...(downlock !== undefined && { downlock }),
      sequence,
      actuators,
      ...(bay && { bay }),
    };
  }
  return built;
}

/** Rounded up, so that what is asked for is enough. */
function millimetres(length: number): string {
  return `${Math.ceil(length * 1e3 - 1e-6)} mm`;
}
