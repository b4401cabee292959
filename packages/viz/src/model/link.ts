/**
 * What a link to this page holds, and how it is written behind its `#`: as readable as can be,
 * `aircraft=hedgelark&card=doors-early&t=12.5`; a file of the user's own is packed.
 */
import type { Condition } from '../worker/blow-down-message.js';
import type { Edit, FaultEntry, System } from '../worker/message.js';
import type { ObservationConditions } from '../worker/sheet-message.js';
import { BrokenLink, Fields, quoted, word } from './fields.js';
import type { Loop } from './loop.js';
import type { Mark } from './marks.js';
import type { MeasuredTime } from './measured.js';
import { pack, unpack } from './pack.js';
import { RATES } from './state.js';
import type { Source } from './state.js';

/** What is picked out: an event or a flag, or a part of the aircraft. */
export type Picked = Mark | { readonly kind: 'part'; readonly name: string };

export interface Link {
  /** A scenario that comes with the page, by its name, or a text of the user's own. */
  readonly from: { readonly demo: string } | Source;
  /** Empty for the first. */
  readonly card: string;
  /** The card's own when undefined. */
  readonly faults: readonly FaultEntry[] | undefined;
  readonly edits: readonly Edit[];
  readonly condition: Condition | undefined;
  /** Conditions of a sheet in place of the card's. */
  readonly stood: ObservationConditions | undefined;
  readonly measured: readonly MeasuredTime[];
  readonly time: number;
  readonly rate: number;
  /** The whole run when undefined. */
  readonly span: readonly [number, number] | undefined;
  readonly loop: Loop | undefined;
  readonly picked: Picked | undefined;
  readonly marks: readonly Mark[];
  readonly system: System | undefined;
  readonly bench: string;
  /** Channels of the traces on show; the usual ones when undefined. */
  readonly traces: readonly string[] | undefined;
  /** Views on top where several share a place. */
  readonly shown: readonly string[];
  readonly large: boolean;
}

export const PLAIN: Omit<Link, 'from'> = {
  card: '',
  faults: undefined,
  edits: [],
  condition: undefined,
  stood: undefined,
  measured: [],
  time: 0,
  rate: 1,
  span: undefined,
  loop: undefined,
  picked: undefined,
  marks: [],
  system: undefined,
  bench: '',
  traces: undefined,
  shown: [],
  large: false,
};

// Writing

/** Names of fields, in the order in which they are written. */
type Part = readonly [key: string, fields: readonly (string | number)[]];

function partsOf(link: Link): Part[] {
  const some = (key: string, value: string): Part[] => (value === '' ? [] : [[key, [value]]]);
  return [
    ...('demo' in link.from ? some('aircraft', link.from.demo) : some('file', link.from.file)),
    ...some('card', link.card),
    ...(link.faults?.length === 0 ? some('fault', 'none') : []),
    ...(link.faults ?? []).map((f): Part => ['fault', [f.fault, f.on, f.severity]]),
    ...link.edits.map((e): Part => ['set', [e.path, e.value]]),
    ...(link.condition === undefined
      ? []
      : [['bottle', [link.condition.charge, link.condition.temperature]] as const]),
    ...Object.entries(link.stood ?? {}).map((e): Part => ['stood', e]),
    ...link.measured.map((m): Part => ['measured', [m.on, m.event, m.since, m.time, m.error]]),
    ...(link.time === 0 ? [] : [['t', [link.time]] as const]),
    ...(link.rate === 1 ? [] : [['speed', [link.rate]] as const]),
    ...(link.span === undefined ? [] : [['span', link.span] as const]),
    ...(link.loop === undefined
      ? []
      : [['loop', [link.loop.from, link.loop.to, link.loop.on ? 'on' : 'off']] as const]),
    ...(link.picked === undefined ? [] : [['picked', fieldsOf(link.picked)] as const]),
    ...link.marks.map((m): Part => ['mark', fieldsOf(m)]),
    ...some('units', link.system ?? ''),
    ...some('bench', link.bench),
    // An empty field: none at all.
    ...(link.traces === undefined
      ? []
      : [['traces', link.traces.length === 0 ? [''] : link.traces] as const]),
    ...(link.shown.length === 0 ? [] : [['show', link.shown] as const]),
    ...(link.large ? some('large', 'on') : []),
  ];
}

function fieldsOf(mark: Picked): readonly (string | number)[] {
  switch (mark.kind) {
    case 'event':
      return ['event', mark.on, mark.to, mark.nth];
    case 'flag':
      return ['flag', mark.rule, mark.nth];
    case 'measured':
      return ['measured', mark.on, mark.event, mark.since];
    case 'part':
      return ['part', mark.name];
    case 'time':
      return ['time', mark.t];
  }
}

/** What comes behind the `#`. */
export async function writeLink(link: Link): Promise<string> {
  const parts = partsOf(link).map(
    ([key, fields]) => `${key}=${fields.map((f) => word(String(f))).join(',')}`,
  );
  if ('text' in link.from) parts.push(`text=${await pack(link.from.text)}`);
  return parts.join('&');
}

// Reading

/** @throws BrokenLink with what is wrong. */
export async function readLink(hash: string): Promise<Link> {
  const link: { -readonly [K in keyof Link]: Link[K] } = { from: { demo: '' }, ...PLAIN };
  let file: string | undefined;
  let text: string | undefined;
  const seen = new Set<string>();
  for (const part of hash.replace(/^#/, '').split('&')) {
    if (part === '') continue;
    const at = part.indexOf('=');
    const key = at < 0 ? part : part.slice(0, at);
    const r = new Fields(key, at < 0 ? '' : part.slice(at + 1));
    if (seen.has(key) && !SEVERAL.has(key)) throw new BrokenLink(`it says ${quoted(key)} twice`);
    seen.add(key);
    switch (key) {
      case 'aircraft':
        link.from = { demo: r.text() };
        break;
      case 'file':
        file = r.text();
        break;
      case 'text':
        text = await unpack(r.text()).catch(() => {
          throw new BrokenLink('the scenario in it has been cut short or changed on its way');
        });
        break;
      case 'card':
        link.card = r.text();
        break;
      case 'fault':
        link.faults ??= [];
        if (r.count === 1) r.one(['none']);
        else
          link.faults = [
            ...link.faults,
            { fault: r.text(), on: r.text(), severity: r.number(0, 1) },
          ];
        break;
      case 'set':
        link.edits = [...link.edits, { path: r.text(), value: r.text() }];
        break;
      case 'bottle':
        link.condition = { charge: r.number(0), temperature: r.number(0) };
        break;
      case 'stood':
        link.stood = { ...link.stood, ...conditionIn(r) };
        break;
      case 'measured':
        link.measured = [
          ...link.measured,
          { on: r.text(), event: r.text(), since: r.text(), time: r.number(0), error: r.number(0) },
        ];
        break;
      case 't':
        link.time = r.number(0);
        break;
      case 'speed':
        link.rate = r.number(0);
        if (!RATES.includes(link.rate)) throw r.wrong();
        break;
      case 'span':
        link.span = [r.number(0), r.number(0)];
        if (link.span[0] >= link.span[1]) throw r.wrong();
        break;
      case 'loop':
        link.loop = { from: r.number(0), to: r.number(0), on: r.one(['on', 'off']) === 'on' };
        break;
      case 'picked':
        link.picked = r.first() === 'part' ? { kind: r.one(['part']), name: r.text() } : markIn(r);
        break;
      case 'mark':
        link.marks = [...link.marks, markIn(r)];
        if (link.marks.length > 2) throw r.wrong();
        break;
      case 'units':
        link.system = r.one<System>(['us', 'metric']);
        break;
      case 'bench':
        link.bench = r.text();
        break;
      case 'traces':
        link.traces = Array.from({ length: r.count }, () => r.text()).filter((n) => n !== '');
        break;
      case 'show':
        link.shown = Array.from({ length: r.count }, () => r.text());
        break;
      case 'large':
        link.large = r.one(['on']) === 'on';
        break;
      default:
        throw new BrokenLink(`this page does not know ${quoted(key)} in it`);
    }
    r.end();
  }
  if (text !== undefined) link.from = { file: file ?? 'scenario.yaml', text };
  else if (file !== undefined) throw new BrokenLink(`the text of ${file} is missing in it`);
  else if (!seen.has('aircraft')) throw new BrokenLink('it names no aircraft');
  return link;
}

/** Those that may be said more than once. */
const SEVERAL: ReadonlySet<string> = new Set(['fault', 'set', 'stood', 'measured', 'mark']);

function conditionIn(r: Fields): ObservationConditions {
  const key = r.one([...NUMBERS, 'fluid', 'doors']);
  if (key === 'fluid') return { fluid: r.text() };
  if (key === 'doors')
    return { doors: r.one<'connected' | 'disconnected'>(['connected', 'disconnected']) };
  return { [key]: r.number(-Number.MAX_VALUE) };
}

const NUMBERS = ['supplyFlow', 'supplyPressure', 'temperature', 'attitude', 'leftFor'] as const;

function markIn(r: Fields): Mark {
  const kind = r.one(['event', 'flag', 'measured', 'time']);
  switch (kind) {
    case 'event':
      return { kind, on: r.text(), to: r.text(), nth: r.number(0) };
    case 'flag':
      return { kind, rule: r.text(), nth: r.number(0) };
    case 'measured':
      return { kind, on: r.text(), event: r.text(), since: r.text() };
    case 'time':
      return { kind, t: r.number(0) };
  }
}
