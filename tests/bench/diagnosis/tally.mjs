/** What the cases come to. */
import { halfOf } from './case.mjs';

/** Lists by what a function tells of their members, in the order of their first ones. */
export function grouped(list, of) {
  const groups = new Map();
  for (const one of list) groups.set(of(one), [...(groups.get(of(one)) ?? []), one]);
  return groups;
}

const percent = (part, of) => (of === 0 ? NaN : (100 * part) / of);
const count = (list, test) => list.filter(test).length;

/** Tops of the bins of stated probability. */
const BINS = 10;
const binOf = (p) => Math.min(BINS - 1, Math.floor(BINS * p));

/** Bins of stated probability against what came true; the expected error weighs them by their cases. */
export function calibration(results) {
  const bins = Array.from({ length: BINS }, (_, k) => {
    const own = results.filter(({ first }) => binOf(first.probability) === k);
    const stated = own.reduce((sum, { first }) => sum + first.probability, 0);
    return { n: own.length, stated, right: count(own, ({ first }) => first.rank === 0) };
  });
  const error = bins.reduce((sum, b) => sum + Math.abs(b.stated - b.right), 0) / results.length;
  return { bins, error };
}

/** Checks until it was established, Infinity where it never was. */
const checksOf = ({ last, checks }) => (last.established ? checks.length : Infinity);

function median(list) {
  const sorted = [...list].sort((a, b) => a - b);
  return sorted.length === 0 ? NaN : sorted[(sorted.length - 1) >> 1];
}

/** One row of the table. */
export function row(name, results) {
  const faulty = results.filter((r) => r.truth !== undefined);
  const sound = results.filter((r) => r.truth === undefined);
  const pairs = faulty.filter((r) => r.second !== undefined);
  const first = count(faulty, (r) => r.first.rank === 0);
  const missed = count(faulty, (r) => r.first.rank > 0 && r.first.rank < 3);
  return {
    name,
    cases: results.length,
    'first, %': percent(first, faulty.length),
    'first three, %': percent(first + missed, faulty.length),
    'false, truth in three': `${missed} of ${faulty.length - first}`,
    ...(pairs.length > 0 && {
      'both first, %': percent(
        count(pairs, (r) => r.first.both === 0),
        pairs.length,
      ),
      'both in three, %': percent(
        count(pairs, (r) => r.first.both >= 0 && r.first.both < 3),
        pairs.length,
      ),
    }),
    'healthy called so, %': percent(
      count(sound, (r) => r.first.rank === 0),
      sound.length,
    ),
    'calibration error': calibration(results).error,
    'members of first': median(faulty.map((r) => r.first.members)),
    'checks, median': median(faulty.map(checksOf)),
    'established, %': percent(
      count(results, (r) => r.last.established),
      results.length,
    ),
    'established and wrong, %': percent(
      count(results, (r) => r.last.established && r.last.rank !== 0),
      results.length,
    ),
    's per case': results.reduce((sum, r) => sum + r.seconds, 0) / results.length,
  };
}

const causeOf = (causes) =>
  causes === undefined ? 'none known' : causes.map((c) => c.fault).join(' + ') || 'healthy';

/** True kind against the kind that was named first, only where that was wrong; the most frequent first. */
export function confusion(results) {
  const counts = new Map();
  for (const { truth, first } of results) {
    if (first.rank === 0) continue;
    const key = `${truth?.fault ?? 'healthy'} taken for ${causeOf(first.groups[0]?.causes)}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1]).map(([key, n]) => `${n} x ${key}`);
}

/** One line for a case that went wrong, enough to know what to look at. */
export function missLine({ name, i, kind, truth, second, first }) {
  const what =
    [truth, second]
      .filter((t) => t !== undefined)
      .map((t) => `${t.fault} ${t.on} (${t.severity.toFixed(2)})`)
      .join(' and ') || 'nothing wrong';
  const said = first.groups
    .map(
      (g) =>
        `${g.causes.map((c) => `${c.fault} ${c.on}`).join(' + ') || 'healthy'} ` +
        `${(100 * g.probability).toFixed(0)} % (${g.severities.map((s) => s.toFixed(2)).join(' and ')}, ${g.members})`,
    )
    .join('; ');
  const unknown = `unknown ${(100 * first.unknown).toFixed(0)} %`;
  return `${name} ${i} ${kind}: ${what}, rank ${first.rank + 1}: ${said}; ${unknown}`;
}

/** Rows by aircraft, by half, by kind of sheet. */
export function rowsOf(results) {
  const by = (of) => grouped(results, of);
  const rows = (groups) => [...groups].map(([name, own]) => row(name, own));
  return [
    ...rows(by((r) => `${r.name}, ${halfOf(r.i)}`)),
    ...rows(by((r) => `sheet: ${r.kind}`)),
    ...rows(by((r) => `all, ${halfOf(r.i)}`)),
  ];
}
