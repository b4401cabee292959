/**
 * Examples of how a kind is written in a scenario: required parameters only, with figures of the
 * scenarios that come with the project where one has the kind, else from the middle of the range.
 * `frame` makes a complete scenario of a piece, so that a test can read it.
 */
import { Document, isCollection, isMap, isScalar, parse, visit } from 'yaml';
import { kebab } from './markdown.mjs';

/** Longest piece that stands on one line, as in the scenarios of the project. */
const LONGEST = 70;

function yaml(data) {
  const document = new Document(data);
  visit(document, {
    Collection(_, node, path) {
      // Sections and their entries keep a line for each key.
      const deep = path.filter(isMap).length >= 2;
      const plain = node.items.every((item) => isScalar(item) || isScalar(item.value));
      const short = JSON.stringify(node.toJSON()).length <= LONGEST;
      if ((deep || !isMap(node)) && short && (plain || !node.items.some(hasMap))) node.flow = true;
    },
  });
  const text = document.toString({ flowCollectionPadding: true, lineWidth: 0 }).trimEnd();
  return text.replace(/\[ /g, '[').replace(/ \]/g, ']');
}

const hasMap = (item) => isMap(item.value) && item.value.items.some((i) => isCollection(i.value));

/** Units in which an example is written. */
const SYSTEM = { 'gauge-pressure': 'us', flow: 'us', displacement: 'us' };
const FIGURES = 2;

/** Text of a value, rounded; brought back inside where rounding has left the range. */
function written(core, value, p) {
  const { value: shown, unit } = core.toDisplay(value, p.quantity, SYSTEM[p.quantity] ?? 'metric');
  const number = Number(shown.toPrecision(FIGURES));
  return unit === '' ? number : `${number} ${unit}`;
}

/** A state table as small as one can be that does something. */
const TABLE = {
  down: { drive: ['down-coil'], next: [{ if: ['lever up'], to: 'up' }] },
  up: {
    drive: ['up-coil'],
    next: [
      { if: ['lever down'], to: 'down' },
      { after: '20 s', to: 'waiting' },
    ],
  },
  waiting: { next: [{ if: ['not lever up'], to: 'down' }] },
};

/** A share of the way through a range, across decades where it spans them. */
function within([low, high], share) {
  return low > 0 && high / low > 20 ? low * (high / low) ** share : low + share * (high - low);
}

function example(core, p, share) {
  switch (p.type) {
    case 'choice':
      return p.choices[Math.min(p.choices.length - 1, Math.floor(share * p.choices.length))];
    case 'switch':
      return 'yes';
    case 'shape':
      return [0, 1].map((x, i) => [
        written(core, x, { quantity: p.of }),
        written(core, within(p.range, share * (0.6 + 0.4 * i)), { quantity: p.gives }),
      ]);
    case 'point':
      return [share, 1 - share].map((s) =>
        written(core, within(p.range, s), { quantity: 'length' }),
      );
    case 'state-table':
      return TABLE;
    default:
      return written(core, within(p.range, share), p);
  }
}

/** Names of what the links of an example hang on, in turn. */
const HANGERS = ['left-leg', 'left-door'];

const PIVOTS = { fixed: '420 mm', moving: '120 mm', 'at-low': '40 deg', sense: 'opening' };

function link(definition, { shape }, i) {
  const to = HANGERS[i % HANGERS.length];
  if (shape !== 'travel') return { to };
  return definition.role === 'actuator'
    ? { to, pivots: PIVOTS }
    : { to, expression: '0.1 * angle' };
}

const mapOf = (record, make) =>
  Object.fromEntries(Object.entries(record ?? {}).map(([name, thing], i) => make(name, thing, i)));

/** The fixed lines of an example: kind, ports and links that must be there. */
function bodyOf(definition) {
  if (!('ports' in definition)) return { is: definition.kind };
  const ports = mapOf(
    Object.fromEntries(Object.entries(definition.ports).filter(([, port]) => !port.optional)),
    (port) => [kebab(port), `${kebab(port)}-node`],
  );
  const links = mapOf(
    Object.fromEntries(Object.entries(definition.links ?? {}).filter(([, l]) => !l.optional)),
    (name, l, i) => [kebab(name), link(definition, l, i)],
  );
  return {
    is: definition.kind,
    ...(Object.keys(ports).length > 0 && { ports }),
    ...(Object.keys(links).length > 0 && { links }),
  };
}

/** A small seeded generator of numbers in [0, 1) (mulberry32, public domain). */
function seeded(seed) {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Writes examples; `scenarios` are texts of scenario files. */
export function exampleWriter(core, scenarios) {
  const known = scenarios.map((text) => parse(text));
  const parts = known.flatMap((file) =>
    [file.components, file.mechanisms].flatMap((section) => Object.values(section ?? {})),
  );
  const limits = Object.assign({}, ...known.map((file) => file.limits ?? {}));
  const made = new Map();
  const { components, mechanisms } = core.catalogues;

  /** Candidates for the required parameters: as others wrote them, the middle, then by chance. */
  function* candidates(definition) {
    const required = Object.entries(definition.parameters).filter(
      ([, p]) => p.default === undefined,
    );
    for (const part of parts) {
      if (part.is !== definition.kind) continue;
      if (required.some(([name]) => part[kebab(name)] === undefined)) continue;
      yield Object.fromEntries(required.map(([name]) => [kebab(name), part[kebab(name)]]));
      // Figures that go together may need one that has a default.
      const rest = Object.keys(part).filter((key) => !FRAME_KEYS.includes(key));
      yield Object.fromEntries(rest.map((key) => [key, part[key]]));
    }
    const fill = (share) =>
      Object.fromEntries(required.map(([name, p]) => [kebab(name), example(core, p, share())]));
    yield fill(() => 0.5);
    const random = seeded(1);
    for (let i = 0; i < 300; i++) yield fill(random);
  }

  /** The entry of a kind, as data; the first candidate that reads without a problem. */
  function entry(definition) {
    if (made.has(definition.kind)) return made.get(definition.kind);
    const body = bodyOf(definition);
    let chosen;
    for (const parameters of candidates(definition)) {
      const trial = { ...body, ...parameters };
      chosen ??= trial;
      if (core.readScenario(frame(definition, trial)).issues.length > 0) continue;
      chosen = trial;
      break;
    }
    made.set(definition.kind, chosen);
    return chosen;
  }

  /** A complete scenario around the entry of a kind, and around what more it is given. */
  function frame(definition, own = entry(definition), more = {}) {
    const isDevice = 'ports' in definition;
    const hangers = isDevice ? Object.values(own.links ?? {}).map(({ to }) => to) : [];
    const moving = Object.fromEntries(
      [...new Set(hangers)].map((name) => [name, entry(mechanisms[name.split('-')[1]])]),
    );
    const nodes = Object.fromEntries(
      Object.values(own.ports ?? {}).map((node) => [node, { volume: '1 cm^3' }]),
    );
    return yaml({
      wheelwell: 1,
      title: `Example of ${definition.kind}`,
      fluid: { kind: 'mineral-red' },
      components: isDevice ? { [definition.kind]: own } : aTank(),
      mechanisms: isDevice ? moving : { [definition.kind]: own },
      ...(isDevice && Object.keys(nodes).length > 0 && { nodes }),
      cards: { look: { title: 'Look', duration: '1 s', steps: [] } },
      ...more,
    });
  }

  const aTank = () => ({ tank: { is: 'reservoir', ports: { outlet: 'tank', return: 'tank' } } });

  return {
    /** The piece for the page of a device or mechanism. */
    piece: (definition) =>
      yaml({
        ['ports' in definition ? 'components' : 'mechanisms']: {
          [definition.kind]: entry(definition),
        },
      }),
    /** The parameters of that piece as read, SI; undefined when it cannot be read. */
    parameters: (definition) => {
      const { scenario } = core.readScenario(frame(definition));
      return scenario?.components[definition.kind]?.parameters;
    },
    /** The card for the page of a fault. */
    card: (fault) => yaml({ cards: cardOf(fault) }),
    /** Lines of `limits` for the page of a rule; `undefined` when it has none. */
    limits: (rule) =>
      rule.limits.length === 0
        ? undefined
        : yaml({
            limits: Object.fromEntries(
              rule.limits.map((name) => [kebab(name), limits[kebab(name)] ?? sample(name)]),
            ),
          }),
    /** Complete scenarios around those pieces. */
    whole: (definition) => frame(definition),
    wholeWithFault: (fault) => {
      const [kind] = fault.befalls;
      const definition = components[kind] ?? mechanisms[kind] ?? components.reservoir;
      return frame(definition, entry(definition), { cards: cardOf(fault) });
    },
    wholeWithLimits: (piece) =>
      frame(components.reservoir, entry(components.reservoir), parse(piece)),
  };

  function sample(name) {
    const { properties } = core.scenarioJsonSchema().properties.limits;
    // A limit that only a rule knows takes any quantity.
    return properties[kebab(name)].examples?.[0] ?? '1 s';
  }
}

const FRAME_KEYS = ['is', 'note', 'ports', 'links', 'place', 'signals', 'driven'];

function cardOf(fault) {
  return {
    [fault.kind]: {
      title: fault.title,
      duration: '30 s',
      faults: [{ fault: fault.kind, on: fault.befalls[0], severity: 0.5 }],
      steps: [],
    },
  };
}
