/** What the page knows after the worker has answered. */
import type { Picture, Reply } from '../worker/message.js';
import { NO_CHANGES, refusedWith } from './changes.js';
import { reached } from './history.js';
import { loopWithin } from './loop.js';
import { count, sentenceOfRun, titleOfRun } from './sentence.js';
import type { Former, State } from './state.js';

/** The change to the state. */
export function arrived(
  before: State,
  reply: Exclude<Reply, { kind: 'series' | 'after' }>,
): Partial<State> {
  switch (reply.kind) {
    case 'progress':
      return { progress: reply.share };
    case 'issues':
      return refused(before, reply);
    case 'failure': {
      const failure = `The simulation failed: ${reply.message}.`;
      return { ...inForce(before), failure, said: failure };
    }
    case 'picture':
      return pictured(before, reply.picture, reply.interim === true);
  }
}

const OVER = { busy: false, asked: undefined, progress: 0 };

/** What could not be had leaves the former run, its faults and its figures, on show. */
function inForce(before: State): Partial<State> {
  const { picture } = before;
  return { ...OVER, faults: picture?.faults ?? [], edits: picture?.edits ?? [] };
}

function refused(before: State, { file, issues }: Reply & { kind: 'issues' }): Partial<State> {
  const kept = inForce(before);
  const now = kept.edits ?? [];
  const wrong = before.edits.filter(
    (e) => !now.some((n) => n.path === e.path && n.value === e.value),
  );
  // Of a text that reads well without it: told where it was typed.
  if (before.asked?.source === before.source && wrong.length > 0) {
    const changes = refusedWith(before.changes, now, wrong, issues);
    return { ...kept, changes, said: `Not changed: ${issues.map((i) => i.message).join('; ')}.` };
  }
  const said = `${file} could not be read: ${count(issues.length, 'problem')}.`;
  return { ...kept, issues, issuesFile: file, said };
}

/** The exact run in place of the quick one, with its flags and clearances: all that is looked at stays. */
export function refined(before: State, picture: Picture): Partial<State> {
  const { picture: quick, selection } = before;
  const time = Math.min(before.time, reached(picture));
  const at = selection.kind === 'event' ? selection.index : -1;
  const [then, now] = [quick?.log[at], picture.log[at]];
  const same = then?.device === now?.device && then?.to === now?.to;
  return {
    ...OVER,
    picture,
    time,
    said: sentenceOfRun(picture),
    ...(!same && { selection: NONE }),
  };
}

const NONE = { kind: 'none' } as const;

/** Its own flags follow within a moment: until then those of the run before it stay, of the same test. */
export function withFlags(made: Picture, before: Picture | undefined): Picture {
  const stay = !made.judged && before?.file === made.file && before.card === made.card;
  return stay ? { ...made, flags: before.flags } : made;
}

/** `interim`: a step of a drag; what is asked for has not come yet. */
function pictured(before: State, picture: Picture, interim: boolean): Partial<State> {
  const shown = before.picture;
  const sameFile = shown?.file === picture.file;
  // The same test again (other faults) keeps the place in time; another one starts over.
  const same = shown !== undefined && sameFile && shown.duration === picture.duration;
  const opened = before.asked !== undefined && before.asked.source !== before.source;
  const { selection } = before;
  const view: Partial<State> = {
    picture,
    series: sameFile ? before.series : new Map(),
    former: formerOf(before, picture),
    held: sameFile ? before.held : undefined,
    time: same ? Math.min(before.time, reached(picture)) : 0,
    playing: same && before.playing,
    loop: same && before.loop !== undefined ? loopWithin(before.loop, picture) : undefined,
    selection: sameFile && selection.kind === 'part' ? selection : { kind: 'none' },
    marks: shown?.file === picture.file ? before.marks : [],
    span: same ? before.span : [0, picture.duration],
  };
  if (interim) return view;
  return {
    ...OVER,
    busy: !picture.judged,
    ...view,
    source: before.asked?.source ?? before.source,
    faults: picture.faults,
    edits: picture.edits,
    ...(opened && { changes: NO_CHANGES, saved: undefined }),
    issues: [],
    issuesFile: '',
    ...(picture.judged && { said: sentenceOfRun(picture) }),
  };
}

/**
 * A file opened again after an edit is compared with what it was. Dragging a severity makes many
 * runs of one test: the run before the test stays the former one.
 */
function formerOf(before: State, picture: Picture): Former | undefined {
  const shown = before.picture;
  if (shown?.file !== picture.file) return undefined;
  const title = titleOfRun(shown);
  const edited = before.asked !== undefined && before.asked.source.text !== before.source?.text;
  if (edited) return { title: `${title}, file as it was`, timings: shown.timings };
  if (testOf(shown) === testOf(picture)) return before.former;
  return { title, timings: shown.timings };
}

const testOf = (p: Picture): string =>
  [p.card, ...p.faults.map((f) => `${f.fault} on ${f.on}`), ...p.edits.map((e) => e.path)].join(
    '; ',
  );
