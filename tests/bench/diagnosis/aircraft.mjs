/** The aircraft on the jacks: sound within its tolerances, with one thing wrong or nothing, under conditions. */
import { expectedOf } from './noting.mjs';

/**
 * Shares by which sound parts differ, either way, evenly: another law and other figures than the
 * inference takes for granted.
 */
const TOLERANCES = {
  friction: 0.22,
  sealMoment: 0.15,
  flow: 0.04,
  displacement: 0.04,
};
const BORE = 0.018;
/** Of a valve's setting: where it cracks and where it is full open go together. */
const SETTING = 0.02;
const ORIFICES = ['one-way-restrictor', 'orifice'];
/** K. */
const TEMPERATURE = 3;

export function within(scenario, random) {
  const scaled = (parts) =>
    Object.fromEntries(
      Object.entries(parts).map(([name, part]) => {
        const shares = { ...TOLERANCES, ...(ORIFICES.includes(part.is) && { bore: BORE }) };
        const parameters = { ...part.parameters };
        for (const [key, share] of Object.entries(shares))
          if (typeof parameters[key] === 'number')
            parameters[key] *= 1 + share * (2 * random.uniform() - 1);
        const setting = 1 + SETTING * (2 * random.uniform() - 1);
        for (const key of ['crack', 'full'])
          if (typeof parameters[key] === 'number') parameters[key] *= setting;
        return [name, { ...part, parameters }];
      }),
    );
  return {
    ...scenario,
    warmer: TEMPERATURE * (2 * random.uniform() - 1),
    components: scaled(scenario.components),
    mechanisms: scaled(scenario.mechanisms),
  };
}

/** What the supply gives when nothing else is said; undefined where no stand has a knob for it. */
export function flowOf(core, scenario) {
  return supplies(core, scenario).find(([, { parameters }]) => 'flow' in parameters)?.[1].parameters
    .flow;
}

const supplies = (core, scenario) =>
  Object.entries(scenario.components).filter(
    ([, { is }]) => core.catalogues.components[is].role === 'supply',
  );

/**
 * Swings it. `conditions` as on the sheet: a stand set to half its flow gives half of what this one gives;
 * the thermometer is off by what this aircraft's is.
 */
export function swing(core, aircraft, nominal, card, conditions, faults) {
  const { temperature, supplyFlow, doors } = conditions;
  const components = { ...aircraft.components };
  if (supplyFlow !== undefined)
    for (const [name, part] of supplies(core, nominal))
      if ('flow' in part.parameters) {
        const share = supplyFlow / part.parameters.flow;
        const { parameters } = components[name];
        const flow = parameters.flow * share;
        components[name] = { ...components[name], parameters: { ...parameters, flow } };
      }
  const mechanisms = { ...aircraft.mechanisms };
  if (doors === 'disconnected')
    for (const [name, part] of Object.entries(mechanisms))
      if (core.catalogues.mechanisms[part.is].role === 'door')
        mechanisms[name] = {
          ...part,
          parameters: { ...part.parameters, sealMoment: 0, friction: 0 },
        };
  const usual = nominal.cards[card].temperature ?? nominal.fluid.temperature;
  const kelvin = temperature ?? usual;
  const hard = kelvin < usual || supplyFlow !== undefined;
  const own = hard ? waitedFor(nominal.cards[card]) : watched(nominal.cards[card]);
  const played = { ...own, faults: [], temperature: kelvin + aircraft.warmer };
  const { warmer: _, ...scenario } = { ...aircraft, components, mechanisms };
  return core.simulate(
    { ...scenario, cards: { ...scenario.cards, [card]: played } },
    { card, faults },
  );
}

/** Nobody leaves a gear that is still on its way: it is watched for longer than the card says, s. */
const WATCHED = 30;
const watched = (card) => ({ ...card, duration: card.duration + WATCHED });

/** Cold, or on half the flow, the gear is given twice the time. */
function waitedFor(card) {
  const [first] = card.steps;
  const later = (step) =>
    step.after === undefined ? { ...step, at: first.at + 2 * (step.at - first.at) } : step;
  return { ...card, steps: card.steps.map(later), duration: 2 * card.duration };
}

/** Every fault wherever it can befall, but those that no swing shows. */
export function placesOf(core, scenario) {
  const parts = [
    ...Object.entries(scenario.components),
    ...Object.entries(scenario.mechanisms),
    ['fluid', { is: 'fluid' }],
  ];
  return Object.values(core.catalogues.faults).flatMap((f) =>
    f.silent
      ? []
      : parts
          .filter(([, part]) => f.befalls.includes(part.is))
          .map(([on]) => ({ fault: f.kind, on })),
  );
}

/** From here a hand with a watch notices: s, or this share of the time, whichever is more. */
const SECONDS = 0.5;
const SHARE = 0.1;
/** And who reads a gauge: Pa, or the same share. */
const PASCAL = 5e5;
/** What came clearly first and now comes clearly last: s. */
const CLEARLY = 0.3;

/**
 * Whether what is noted of a swing tells it from another: a time off by half a second or a tenth of it,
 * whichever is more; a reading by a tenth; something that comes in one alone; or, where order is noted,
 * two moments that changed places.
 */
export function noticeable(core, style, before, after) {
  const a = expectedOf(core, style, before);
  const b = expectedOf(core, style, after);
  if (b.some((y) => !a.some((x) => x.direction === y.direction))) return true;
  return a.some((x) => {
    const y = b.find(({ direction }) => direction === x.direction);
    // A swing that was not made is not on the sheet.
    if (y === undefined) return false;
    const differs = (of, least) => {
      const keys = new Set([...Object.keys(x[of]), ...Object.keys(y[of])]);
      return [...keys].some((key) => {
        const [p, q] = [x[of][key], y[of][key]];
        if (p === undefined || q === undefined) return true;
        return Math.abs(p - q) > Math.max(least, SHARE * Math.abs(p));
      });
    };
    if (differs('times', SECONDS) || differs('gauges', PASCAL)) return true;
    if (['jerks', 'strayed', 'dark'].some((of) => differs(of, 0))) return true;
    const moments = Object.entries(x.order).filter(([key]) => key in y.order);
    return moments.some(([m, p]) =>
      moments.some(([n, q]) => q - p > CLEARLY && y.order[m] - y.order[n] > CLEARLY),
    );
  });
}
