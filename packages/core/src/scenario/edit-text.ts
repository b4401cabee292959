/** Changes worked into the text of a file: only the changed values are written anew, every other sign stays. */
import { isMap, isScalar, isSeq, parseDocument, type Pair, type YAMLMap } from 'yaml';
import type { PlacedEdit } from './edit-data.js';

/** Text to stand from `from` to `to`. */
interface Splice {
  readonly from: number;
  readonly to: number;
  readonly by: string;
}

/** The text with every change in it; undefined where a change has no place of its own in it (an alias). */
export function spliced(text: string, placed: readonly PlacedEdit[]): string | undefined {
  const { contents } = parseDocument(text, {
    schema: 'core',
    uniqueKeys: false,
    logLevel: 'error',
  });
  const splices: Splice[] = [];
  // What begins anew in one place is written together, in the order given.
  for (const edit of placed) {
    const splice = spliceOf(text, contents, edit);
    if (splice === undefined) return undefined;
    splices.push(splice);
  }
  const begun = joined(splices).sort((a, b) => b.from - a.from);
  return begun.reduce((now, s) => now.slice(0, s.from) + s.by + now.slice(s.to), text);
}

/** Insertions at one place as one, so that the first given stands first. */
function joined(splices: readonly Splice[]): Splice[] {
  const out: Splice[] = [];
  for (const s of splices) {
    const same = out.findIndex((o) => o.from === s.from && o.to === o.from && s.to === s.from);
    const other = out[same];
    if (other === undefined) out.push(s);
    else out[same] = { ...other, by: other.by + s.by };
  }
  return out;
}

function spliceOf(text: string, contents: unknown, edit: PlacedEdit): Splice | undefined {
  let at = contents;
  for (const [i, key] of edit.keys.entries()) {
    if (isSeq(at)) {
      at = at.items[Number(key)];
      continue;
    }
    if (!isMap(at)) return undefined;
    const pair = at.items.find((p) => nameOf(p) === key);
    if (pair === undefined) return begin(text, at, edit.keys.slice(i), edit.written);
    const rest = edit.keys.slice(i + 1);
    if (isEmpty(pair.value) && rest.length > 0) {
      const from = rangeOf(pair.value)?.[0] ?? endOf(text, pair);
      return { from, to: from, by: ` ${nested(rest, edit.written, true)}` };
    }
    at = pair.value;
  }
  const range = rangeOf(at);
  if (range === undefined) return undefined;
  const empty = isEmpty(at) && range[0] === range[1];
  const end = range[0] + text.slice(range[0], range[1]).trimEnd().length;
  return { from: range[0], to: end, by: empty ? ` ${edit.written}` : edit.written };
}

/** A new key after the last one of its map. */
function begin(
  text: string,
  map: YAMLMap,
  keys: readonly (string | number)[],
  written: string,
): Splice | undefined {
  const last = map.items.at(-1);
  const range = rangeOf(map);
  if (range === undefined) return undefined;
  if (map.flow === true) {
    const from = last === undefined ? range[0] + 1 : endOf(text, last);
    const by = nested(keys, written, false);
    return { from, to: from, by: last === undefined ? ` ${by} ` : `, ${by}` };
  }
  const first = map.items[0];
  if (last === undefined || first === undefined) return undefined;
  const start = rangeOf(first.key)?.[0] ?? 0;
  const indent = start - (text.lastIndexOf('\n', start - 1) + 1);
  // Behind what is said about the last one on its own line.
  const after = endOf(text, last);
  const line = text.indexOf('\n', after);
  const whole = line < 0 ? text.length : line;
  const from = text.charAt(whole - 1) === '\r' ? whole - 1 : whole;
  const newLine = text.includes('\r\n') ? '\r\n' : '\n';
  return { from, to: from, by: `${newLine}${' '.repeat(indent)}${nested(keys, written, false)}` };
}

/** `a: { b: 3 mm }`; the outermost in braces only where it is asked for. */
function nested(keys: readonly (string | number)[], written: string, braced: boolean): string {
  const [key, ...rest] = keys;
  if (key === undefined) return written;
  const inner = `${key}: ${nested(rest, written, true)}`;
  return braced ? `{ ${inner} }` : inner;
}

/** Where the value of a pair ends, without the lines that follow it. */
function endOf(text: string, { key, value }: Pair): number {
  const [from, to] = rangeOf(value) ?? rangeOf(key) ?? [0, 0];
  const end = from + text.slice(from, to).trimEnd().length;
  return Math.max(end, rangeOf(key)?.[1] ?? 0);
}

function nameOf({ key }: Pair): string | undefined {
  return isScalar(key) ? String(key.source ?? key.value) : undefined;
}

function isEmpty(node: unknown): boolean {
  return node === null || (isScalar(node) && node.value === null && (node.source ?? '') === '');
}

function rangeOf(node: unknown): readonly [number, number] | undefined {
  const range = (node as { range?: readonly number[] | null } | null | undefined)?.range;
  return range?.[0] === undefined || range[1] === undefined ? undefined : [range[0], range[1]];
}
