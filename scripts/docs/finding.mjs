/** Pages of faults, rules and oils. */
import {
  capital,
  code,
  fence,
  GENERATED,
  kebab,
  page,
  plain,
  section,
  sentence,
  table,
} from './markdown.mjs';

const SLOWS = { up: 'the way up', down: 'the way down', both: 'both ways' };

/** Where the page of a kind lies, seen from a catalogue's folder. */
function linkTo(core, kind) {
  if (kind === 'fluid') return '[the oil](../fluids/README.md)';
  const folder = kind in core.catalogues.components ? 'devices' : 'mechanisms';
  return `[${kind}](../${folder}/${kind}.md)`;
}

export function faultPage(core, examples, f) {
  return page(
    `# ${capital(plain(f.title))}`,
    `${code(f.kind)} · fault, ${f.group} · [all faults](README.md)`,
    `> **Caution.** ${sentence(f.caution)}`,
    table(
      ['', ''],
      [
        ['What it is', sentence(f.meaning)],
        ['How it shows', sentence(f.shows)],
        ['How it is confirmed', sentence(f.confirm)],
        ['How it is put right', sentence(f.remedy)],
        ['Befalls', f.befalls.map((kind) => linkTo(core, kind)).join(', ')],
        ['How often', `${capital(f.prior)}. ${sentence(f.priorWhy)}`],
        ['At severity 1', sentence(f.worst)],
        ['Slows', f.slows === undefined ? 'Nothing for certain.' : `${capital(SLOWS[f.slows])}.`],
        [
          'On gauge and stopwatch',
          f.silent ? 'Nothing: only an inspection finds it.' : 'It shows.',
        ],
        ['Source', sentence(f.source)],
      ],
    ),
    section(
      'In a scenario',
      'On a test card; severity goes from 0 (healthy) to 1.',
      fence('yaml', examples.card(f)),
      `On the command line: ${code(`--fault ${f.kind}@NAME=50%`)}, with the name of the part in the scenario.`,
    ),
    GENERATED,
  );
}

/** What a limit bounds, from the schema of scenario files. */
function limitsOf(core, rule) {
  const { properties } = core.scenarioJsonSchema().properties.limits;
  return table(
    ['limit', 'what it bounds'],
    rule.limits.map((name) => [code(kebab(name)), plain(properties[kebab(name)].description)]),
  );
}

export function rulePage(core, examples, rule) {
  const piece = examples.limits(rule);
  return page(
    `# ${capital(plain(rule.title))}`,
    `${code(rule.name)} · rule of kind ${code(rule.kind)} · [all rules](README.md)`,
    sentence(rule.summary),
    'It judges every run by itself; its flags carry a signed margin: positive is what was in hand, negative is beyond.',
    section(
      'Limits',
      piece === undefined
        ? 'It reads none of the scenario’s limits.'
        : 'Set in the scenario by whoever tests, from the approved data of the aircraft. Where one is left out, the rule judges by a plain guide or not at all, as told above.',
      limitsOf(core, rule),
      piece === undefined ? '' : fence('yaml', piece),
    ),
    section('Source', sentence(rule.source)),
    section(
      'On a card',
      `A card that is meant to break it says so: ${code(`expect: [${rule.name}]`)}.`,
    ),
    GENERATED,
  );
}

export function fluidPage(core, f) {
  const both = (value, quantity) =>
    [
      ...new Set(
        ['metric', 'us', 'si'].map((units) => core.toDisplay(value, quantity, units).text),
      ),
    ].join('<br>');
  return page(
    `# ${capital(plain(f.title))}`,
    `${code(f.kind)} · oil · [all oils](README.md)`,
    sentence(f.summary),
    section(
      'In a scenario',
      fence('yaml', `fluid: { kind: ${f.kind}, temperature: 20 degC, free-air: 0.5 % }`),
    ),
    section(
      'Figures',
      table(
        ['what', 'value'],
        [
          ...f.viscosity.map((v) => [
            `Viscosity at ${core.toDisplay(v.temperature, 'temperature', 'metric').text}`,
            both(v.viscosity, 'viscosity'),
          ]),
          [
            `Density at ${core.toDisplay(f.densityAt, 'temperature', 'metric').text}`,
            both(f.density, 'density'),
          ],
          ['Expansion', `${Number((f.expansion * 100).toPrecision(3))} % per K`],
          ['Bulk modulus', both(f.bulkModulus, 'gauge-pressure')],
          ['Vapour pressure', both(f.vapourPressure, 'pressure')],
        ],
      ),
    ),
    section('Source', sentence(f.source)),
    GENERATED,
  );
}
