/** What the user has changed and may take back: figures of the scenario and faults. Pure; the store keeps it. */
import type { Edit, FaultEntry, Issue } from '../worker/message.js';

/** A change as it can be taken back and made again. */
export type Change = {
  /** In words, for the buttons. */
  readonly what: string;
  /** Steps of one drag have the same gesture, and are one change; empty for none. */
  readonly gesture: string;
} & (
  | { readonly kind: 'edits'; readonly before: readonly Edit[]; readonly after: readonly Edit[] }
  | {
      readonly kind: 'faults';
      /** Faults are a card's: taken back on that card. */
      readonly card: string;
      readonly before: readonly FaultEntry[];
      readonly after: readonly FaultEntry[];
    }
);

/** A change that could not be made; what was typed is kept until its figure is changed again. */
export interface Refused {
  readonly edit: Edit;
  readonly issues: readonly Issue[];
}

export interface ChangesState {
  readonly past: readonly Change[];
  readonly future: readonly Change[];
  readonly refused: readonly Refused[];
}

export const NO_CHANGES: ChangesState = { past: [], future: [], refused: [] };

/** More steps than anyone takes back. */
const MOST = 200;

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** With one change more; a further step of a drag joins the one before. */
export function noted({ past, refused }: ChangesState, change: Change): ChangesState {
  const last = past.at(-1);
  const joins =
    last !== undefined &&
    last.gesture !== '' &&
    last.gesture === change.gesture &&
    last.kind === change.kind;
  const whole = joins ? ({ ...change, before: last.before } as Change) : change;
  const others = joins ? past.slice(0, -1) : past;
  const kept = same(whole.before, whole.after) ? others : [...others, whole].slice(-MOST);
  return { past: kept, future: [], refused: refused.filter((r) => !touches(change, r.edit)) };
}

/** Whether a change is of the figure that was refused a value. */
function touches(change: Change, { path }: Edit): boolean {
  if (change.kind !== 'edits') return false;
  const at = (edits: readonly Edit[]): string | undefined =>
    edits.find((e) => e.path === path)?.value;
  return at(change.before) !== at(change.after);
}

/** The drag is over: what follows is another change. */
export function settled(changes: ChangesState): ChangesState {
  const last = changes.past.at(-1);
  if (last === undefined || last.gesture === '') return changes;
  return { ...changes, past: [...changes.past.slice(0, -1), { ...last, gesture: '' }] };
}

/** After the last change came to nothing: `inForce` is what holds. */
export function refusedWith(
  changes: ChangesState,
  inForce: readonly Edit[],
  wrong: readonly Edit[],
  issues: readonly Issue[],
): ChangesState {
  const kept = changes.refused.filter((r) => !wrong.some((e) => e.path === r.edit.path));
  const refused = [...kept, ...wrong.map((edit) => ({ edit, issues }))];
  const last = changes.past.at(-1);
  if (last?.kind !== 'edits') return { ...changes, refused };
  const others = changes.past.slice(0, -1);
  const past = same(last.before, inForce) ? others : [...others, { ...last, after: inForce }];
  return { ...changes, past, refused };
}

/** Without what was typed in vain at a figure. */
export function forgiven(changes: ChangesState, path: string): ChangesState {
  return { ...changes, refused: changes.refused.filter((r) => r.edit.path !== path) };
}

/** The edits with one path at another value, or at the file's own for undefined. */
export function withEdit(
  edits: readonly Edit[],
  path: string,
  value: string | undefined,
): readonly Edit[] {
  const now = edits.find((e) => e.path === path);
  if (value === undefined) return now === undefined ? edits : edits.filter((e) => e !== now);
  if (now?.value === value) return edits;
  const edit = { path, value };
  return now === undefined ? [...edits, edit] : edits.map((e) => (e === now ? edit : e));
}
