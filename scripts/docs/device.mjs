/** Pages of devices. */
import {
  capital,
  code,
  GENERATED,
  kebab,
  page,
  plain,
  section,
  sentence,
  table,
} from './markdown.mjs';
import { parameterTable } from './parameter.mjs';
import { equations, faultsOf, written } from './part.mjs';

const entries = (record) => Object.entries(record ?? {});

/** A device of role `control` and the like may decide these by its own figures. */
const TAILORED =
  'Which modes, inputs and signals it has follows from its own figures in the scenario; below is what it has without any.';

function ports(d) {
  return table(
    ['port', 'what it is', 'oil at this port', 'remarks'],
    entries(d.ports).map(([name, port]) => [
      code(kebab(name)),
      plain(port.title),
      typeof port.volume === 'number'
        ? `${Number((port.volume * 1e6).toPrecision(4))} cm³`
        : 'from its parameters',
      [
        port.optional && 'may stay unconnected',
        port.compliance && 'walls give with pressure',
        port.pocket && 'may hold trapped air',
        port.cushion && 'oil against gas, a node of its own',
        d.vented?.ports.includes(name) && 'held at the pressure of the tank',
      ]
        .filter(Boolean)
        .join('; '),
    ]),
  );
}

function links(d) {
  const chambers = (name) =>
    (d.chambers ?? []).filter((c) => c.link === name).map((c) => code(kebab(c.port)));
  return table(
    ['link', 'what it is', 'reads', 'moves oil at', 'remarks'],
    entries(d.links).map(([name, link]) => [
      code(kebab(name)),
      plain(link.title),
      link.shape === 'travel'
        ? 'travel in metres, from `pivots`, a `table` or an `expression` in `angle`'
        : 'the angle itself',
      chambers(name).join(', '),
      link.optional ? 'may stay unconnected' : '',
    ]),
  );
}

function inputs(core, d) {
  return table(
    ['input', 'what it is', 'takes', 'at the start'],
    entries(d.inputs).map(([name, input]) => {
      const at =
        typeof input.initial === 'number'
          ? (input.choices?.[input.initial] ??
            core.toDisplay(input.initial, input.quantity, 'metric').text)
          : 'from a parameter';
      return [
        code(kebab(name)),
        plain(input.title),
        input.choices ? input.choices.map(code).join(', ') : `a quantity (${input.quantity})`,
        input.choices && at !== 'from a parameter' ? code(at) : at,
      ];
    }),
  );
}

/** Modes and what takes the device from one to the next. */
function modes(d) {
  const all = entries(d.modes);
  const rows = all.flatMap(([name, mode], i) => {
    const ways = [
      ...(mode.guards ?? []),
      ...(mode.timers ?? []).map((t) => ({ ...t, clock: true })),
    ];
    const own = [
      mode.title === name ? '' : plain(mode.title),
      i === 0 && d.initialMode === undefined ? 'where it starts' : '',
      mode.bounds ? `bounds the angle at ${code(kebab(mode.bounds.link))}` : '',
    ]
      .filter(Boolean)
      .join('; ');
    const first = [code(name), own];
    if (ways.length === 0) return [[...first, '', '']];
    return ways.map((way, j) => [
      ...(j === 0 ? first : ['', '']),
      code(way.to),
      way.clock ? `after its time: ${plain(way.cause)}` : plain(way.cause),
    ]);
  });
  return table(['mode', 'what it is', 'leaves for', 'when'], rows);
}

/** Red oil in a hangar; a law is only looked at for what it is made of. */
const OIL = {
  density: 867,
  viscosity: 25e-6,
  bulkModulus: 1.8e9,
  ambient: 101325,
  temperature: 293,
};

/** What a law is made of, with the figures of the example. */
function lawOf(flow, parameters) {
  if (flow.law === undefined) return 'its equations';
  if (parameters === undefined) return 'a law';
  const law = flow.law(parameters, OIL);
  const pieces = [
    law.constant > 0 && 'an orifice',
    law.check !== undefined && 'a check valve',
    law.leak > 0 && 'a laminar leak',
  ].filter(Boolean);
  return pieces.length === 0 ? 'a leak (none by default)' : pieces.join(' beside ');
}

function flows(d, parameters) {
  return table(
    ['path', 'what it is', 'from', 'to', 'flow follows from', 'remarks'],
    entries(d.flows).map(([name, flow]) => [
      code(kebab(name)),
      plain(flow.title ?? ''),
      code(kebab(flow.from)),
      code(kebab(flow.to)),
      lawOf(flow, parameters),
      [
        flow.source && 'gives energy to the oil',
        flow.inertial && 'its oil has inertia',
        flow.also && `depends on ${flow.also.map((a) => code(a)).join(', ')}`,
      ]
        .filter(Boolean)
        .join('; '),
    ]),
  );
}

function channels(core, d) {
  const row = (name, title, quantity) => [code(`${d.kind}.${name}`), plain(title), quantity];
  return table(
    ['channel', 'what it is', 'quantity'],
    [
      ...entries(d.links).map(([name, l]) =>
        row(name, l.title, l.shape === 'travel' ? 'length' : 'angle'),
      ),
      ...entries(d.states).map(([name, s]) => row(name, s.title, s.unit === '' ? 'ratio' : s.unit)),
      ...entries(d.flows).map(([name, f]) =>
        row(name, f.title ?? `flow ${f.from} to ${f.to}`, 'flow'),
      ),
      ...entries(d.readings).map(([name, r]) => row(name, r.title, r.quantity)),
    ],
  );
}

function symbol({ symbol: { name, size, ports: places } }) {
  const where = table(
    ['port', 'right', 'up'],
    entries(places).map(([port, [x, y]]) => [code(kebab(port)), String(x), String(y)]),
  );
  const drawn =
    name === 'other'
      ? 'A box with its name: it has no symbol of its own in the drawing.'
      : `Drawn as ${code(name)}, the symbol of ISO 1219-1 where the standard has one.`;
  return section(
    'Symbol',
    `${drawn} Size ${size[0]} by ${size[1]} in the standard's modules of 2.5 mm${where === '' ? '.' : ', ports from the centre:'}`,
    where,
  );
}

/** The page of a device. `notes` has the head comment of its file and of what it shares. */
export function devicePage(core, examples, d, notes) {
  return page(
    `# ${capital(plain(d.title))}`,
    `${code(d.kind)} · device, role ${code(d.role)} · [all devices](README.md)`,
    sentence(d.summary),
    written(examples.piece(d), 'components'),
    section('Parameters', parameterTable(core, d.parameters)),
    section('Ports', ports(d)),
    section('Links', links(d)),
    d.tailor === undefined ? '' : `> ${TAILORED}`,
    section('Inputs', inputs(core, d)),
    section(
      'Signals',
      table(
        ['signal', 'what it tells'],
        entries(d.signals).map(([name, s]) => [code(kebab(name)), plain(s.title)]),
      ),
    ),
    section('Modes', modes(d)),
    section('Flow paths', flows(d, examples.parameters(d))),
    section('Channels of a run', channels(core, d)),
    equations(notes, d.source),
    section('Faults that can befall it', faultsOf(core, d.kind)),
    symbol(d),
    GENERATED,
  );
}
