import { FAULT_GROUPS, type Catalogues } from '../define/index.js';
import { didYouMean, type DisplaySystem } from '../quantity/index.js';
import { columns, wrap } from '../report/layout.js';
import { BadInput } from './io.js';
import { COLUMNS, entriesOf, type Entry, type List } from './list-entry.js';

/** Longest line of prose. */
const WIDTH = 100;

/**
 * A catalogue, a line for each entry; with the name of one, that one in full; with any other
 * word, the entries that speak of it.
 */
export function list(
  catalogues: Catalogues,
  what: List,
  word: string | undefined,
  units: DisplaySystem,
): string {
  const entries = entriesOf(catalogues, what);
  const names = Object.keys(entries);
  if (word === undefined) return table(what, entries, names, units);
  if (names.includes(word)) {
    const lines = [`${word}: ${entries[word].title}`, ...entries[word].full(units)];
    return lines.flatMap(folded).join('\n') + '\n';
  }
  const speaking = names.filter((name) => speaksOf(word, name, entries[name], units));
  if (speaking.length > 0) return table(what, entries, speaking, units);
  const near = didYouMean(word, names);
  throw new BadInput(
    `nothing named ${word} among the ${what}, and none speaks of it${near === '' ? '' : ` (${near})`}; wheelwell list ${what} shows them all`,
  );
}

/** True where a name has the word in it, or a word of the text begins with it, whatever its case. */
function speaksOf(word: string, name: string, entry: Entry, units: DisplaySystem): boolean {
  const { title, group = '', about } = entry;
  const sought = wordsOf(word);
  if (sought === '') return false;
  if (wordsOf(name).includes(sought)) return true;
  return ` ${wordsOf([title, group, about, ...entry.brief(units)].join(' '))}`.includes(
    ` ${sought}`,
  );
}

function wordsOf(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

/** One line each, in groups under their headings where the list has groups. */
function table(
  what: List,
  entries: Readonly<Record<string, Entry>>,
  names: readonly string[],
  units: DisplaySystem,
): string {
  const heads = ['name', 'title', ...COLUMNS[what]].map((title) => ({ title }));
  const groups: readonly (string | undefined)[] = what === 'faults' ? FAULT_GROUPS : [undefined];
  const parts = groups
    .map((group) => ({ group, members: names.filter((name) => entries[name].group === group) }))
    .filter(({ members }) => members.length > 0);
  const members = parts.flatMap((part) => part.members);
  const rows = members.map((n) => [n, entries[n].title, ...entries[n].brief(units)]);
  const [head, ...lines] = columns(heads, rows);
  let next = 0;
  const body = parts.flatMap(({ group, members: { length } }) => {
    const block = lines.slice(next, (next += length));
    return group === undefined
      ? block
      : ['', `${group[0].toUpperCase()}${group.slice(1)} (${length})`, ...block];
  });
  return [head, ...body].map((line) => `${line}\n`).join('');
}

/** A line in as many as it takes; what follows goes two deeper. */
function folded(line: string): readonly string[] {
  const indent = /^ */.exec(line)![0];
  const [first, ...rest] = wrap(line, WIDTH, indent);
  if (rest.length === 0) return [line];
  return [first, ...wrap(rest.join(' '), WIDTH, `${indent}  `)];
}
