/**
 * The pages of the catalogues as text, drawn from the definitions alone: the same for the command
 * that writes them and for the tests that hold them to what they promise.
 */
import { devicePage } from './device.mjs';
import { exampleWriter } from './example.mjs';
import { faultPage, fluidPage, rulePage } from './finding.mjs';
import {
  capital,
  code,
  fence,
  GENERATED,
  page,
  plain,
  section,
  sentence,
  table,
} from './markdown.mjs';
import { mechanismPage } from './mechanism.mjs';

/** The head comment of a source text, verbatim but for its frame; undefined without one. */
export function headComment(source) {
  const match = /^\s*\/\*\*([\s\S]*?)\*\//.exec(source);
  if (match === null) return undefined;
  return match[1]
    .split('\n')
    .map((line) => line.replace(/^\s*\* ?/, '').trimEnd())
    .join('\n')
    .trim();
}

/** Files whose head a page need not repeat: they hold no equations. */
const PLAIN_SHARES = ['shared/parameters.ts', 'shared/smooth.ts'];

/** Head comments of a definition's file and of what that file takes from beside it. */
function notesOf(read, room, name) {
  const source = read(`${room}/${name}.ts`) ?? '';
  const beside = [...source.matchAll(/from '\.\/(shared\/[\w-]+)\.js'/g)].map(
    ([, file]) => `${file}.ts`,
  );
  const shared = [...new Set(beside)]
    .filter((file) => !PLAIN_SHARES.includes(file))
    .map((file) => ({ file: `${room}/${file}`, text: headComment(read(`${room}/${file}`) ?? '') }))
    .filter(({ text }) => text !== undefined);
  return { head: headComment(source), shared };
}

/** The comment right before a declaration, verbatim but for its frame. */
function commentOf(source, declaration) {
  const before = source.slice(0, source.indexOf(declaration));
  return headComment(before.slice(before.lastIndexOf('/**')));
}

/** What the laws of flow paths and of the oil share, in the words of the sources. */
function lawsPage(read) {
  const passage = commentOf(read('define/device.ts') ?? '/** */', 'export interface PassageLaw');
  const parts = LAWS.map(([title, file, declaration]) => {
    const source = read(file) ?? '';
    return [title, file, declaration ? commentOf(source, declaration) : headComment(source)];
  });
  return page(
    '# Laws',
    'What many devices share. Each page of a device has what is its own.',
    section('A flow path with a declared law', fence('text', passage ?? '')),
    ...parts
      .filter(([, , text]) => text !== undefined)
      .map(([title, file, text]) => section(title, `From ${code(file)}:`, fence('text', text))),
    '[All catalogues](README.md)',
    GENERATED,
  );
}

/** Where each is told: at the head of a file, or right before a declaration. */
const LAWS = [
  ['Orifice', 'medium/orifice.ts'],
  ['Losses of a line', 'medium/line-loss.ts'],
  ['Oil', 'medium/oil.ts'],
  ['Oil with air: pressure from content', 'medium/content.ts'],
  ['Oil against a gas cushion', 'medium/cushion.ts', 'export interface CushionPressure'],
  ['Air', 'medium/air.ts'],
];

/** First sentence of a summary, for an index. */
function brief(text) {
  return sentence(/^.*?[.](?=\s|$)|^.*$/s.exec(text)[0]);
}

function index(title, about, ...parts) {
  return page(`# ${title}`, about, ...parts, '[All catalogues](../README.md)', GENERATED);
}

const nameTable = (all) =>
  table(
    ['name', 'title', 'what it is'],
    all.map((d) => {
      // A rule's kind is what sort of rule it is.
      const name = d.name ?? d.kind;
      return [`[${name}](${name}.md)`, plain(d.title), brief(d.summary)];
    }),
  );

/**
 * Every page by its path from the catalogue folder.
 * @param core the public door of core
 * @param sources.read text of a file under core's sources, by its path; undefined where there is none
 * @param sources.scenarios texts of scenario files, whose figures serve as examples
 * @returns pages, and the writer of examples, so that a test can read them in their frame
 */
export function cataloguePages(core, { read, scenarios }) {
  const { components, mechanisms, faults, rules, fluids } = core.catalogues;
  const examples = exampleWriter(core, scenarios);
  const inGroup = (group) => Object.values(faults).filter((f) => f.group === group);
  const pages = new Map();
  const add = (folder, all, nameOf, make) => {
    for (const d of all) pages.set(`${folder}/${nameOf(d)}.md`, make(d));
  };
  const kind = (d) => d.kind;
  add('devices', Object.values(components), kind, (d) =>
    devicePage(core, examples, d, notesOf(read, 'component', d.kind)),
  );
  add('mechanisms', Object.values(mechanisms), kind, (d) =>
    mechanismPage(core, examples, d, notesOf(read, 'mechanism', d.kind)),
  );
  add('faults', Object.values(faults), kind, (f) => faultPage(core, examples, f));
  add(
    'rules',
    Object.values(rules),
    (r) => r.name,
    (r) => rulePage(core, examples, r),
  );
  add('fluids', Object.values(fluids), kind, (f) => fluidPage(core, f));

  pages.set(
    'devices/README.md',
    index(
      'Devices',
      'What a scenario may have under `components`. An input may be moved by a step of a card, or by the signal of another device: `signals: { coil: sequencer.open-doors }`.',
      nameTable(Object.values(components)),
    ),
  );
  pages.set(
    'mechanisms/README.md',
    index(
      'Mechanisms',
      'What a scenario may have under `mechanisms`: parts with one angle, which devices push, hold and follow. One that another moves through a linkage or a taut chain says so: `driven: { by: tail-leg, table: [[0 deg, 0 deg], [95 deg, 80 deg]] }`, or with an `expression` in `angle`, or with a four-bar `linkage`.',
      nameTable(Object.values(mechanisms)),
    ),
  );
  pages.set(
    'faults/README.md',
    index(
      'Faults',
      'What may go wrong, each with a severity from 0 (healthy) to 1. A fault changes figures of the part it befalls; the physics knows nothing of it. Legs and doors move with lethal force: the cautions on each page are part of it, and the approved data of the aircraft decides.',
      ...core.FAULT_GROUPS.map((group) =>
        section(
          capital(group),
          table(
            ['name', 'title', 'how often', 'befalls'],
            inGroup(group).map((f) => [
              `[${f.kind}](${f.kind}.md)`,
              plain(f.title),
              f.prior,
              f.befalls.map(code).join(', '),
            ]),
          ),
        ),
      ),
    ),
  );
  pages.set(
    'rules/README.md',
    index(
      'Rules',
      'What judges every run. A scenario may add rules of its own of the same kinds.',
      nameTable(Object.values(rules)),
    ),
  );
  pages.set(
    'fluids/README.md',
    index(
      'Oils',
      'What a scenario may name as its `fluid`.',
      nameTable(Object.values(fluids)),
      section(
        'Faults that can befall the oil',
        table(
          ['fault', 'what it is', 'how often'],
          Object.values(faults)
            .filter((f) => f.befalls.includes('fluid'))
            .map((f) => [`[${f.kind}](../faults/${f.kind}.md)`, plain(f.title), f.prior]),
        ),
      ),
    ),
  );
  pages.set('laws.md', lawsPage(read));
  const count = (record) => Object.keys(record).length;
  pages.set(
    'README.md',
    page(
      '# The catalogue',
      'Everything a scenario may name. A model, for learning and for thinking: no figure here may be used on an aircraft.',
      [
        `- [Devices](devices/README.md): ${count(components)}`,
        `- [Mechanisms](mechanisms/README.md): ${count(mechanisms)}`,
        `- [Faults](faults/README.md): ${count(faults)}`,
        `- [Rules](rules/README.md): ${count(rules)}`,
        `- [Oils](fluids/README.md): ${count(fluids)}`,
        '- [Laws](laws.md) that many devices share',
      ].join('\n'),
      'Names are kebab-case in files. Quantities are text with units (`45 mm`, `1500 psi`); ranges and defaults are shown in SI, metric and shop units. Pressures of kind `gauge-pressure` are above ambient, of kind `pressure` absolute.',
      GENERATED,
    ),
  );
  return { pages, examples };
}
