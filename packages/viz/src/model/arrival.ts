/** What the page knows after the worker has answered. */
import type { Picture, Reply } from '../worker/message.js';
import { reached } from './history.js';
import { loopWithin } from './loop.js';
import { count, sentenceOfRun, titleOfRun } from './sentence.js';
import type { Former, State } from './state.js';

/** The change to the state. */
export function arrived(
  before: State,
  reply: Exclude<Reply, { kind: 'series' | 'after' }>,
): Partial<State> {
  if (reply.kind === 'progress') return { progress: reply.share };
  const over = { busy: false, asked: undefined, progress: 0 };
  // What could not be had leaves the former run, and its faults, on show.
  const kept = { ...over, faults: before.picture?.faults ?? [] };
  if (reply.kind === 'issues') {
    const { file, issues } = reply;
    const said = `${file} could not be read: ${count(issues.length, 'problem')}.`;
    return { ...kept, issues, issuesFile: file, said };
  }
  if (reply.kind === 'failure') {
    const failure = `The simulation failed: ${reply.message}.`;
    return { ...kept, failure, said: failure };
  }
  const { picture } = reply;
  const shown = before.picture;
  // The same test again (other faults) keeps the place in time; another one starts over.
  const same =
    shown !== undefined && shown.file === picture.file && shown.duration === picture.duration;
  return {
    ...over,
    picture,
    series: shown?.file === picture.file ? before.series : new Map(),
    former: formerOf(before, picture),
    source: before.asked?.source ?? before.source,
    faults: picture.faults,
    issues: [],
    issuesFile: '',
    time: same ? Math.min(before.time, reached(picture)) : 0,
    playing: same && before.playing,
    loop: same && before.loop !== undefined ? loopWithin(before.loop, picture) : undefined,
    selection: { kind: 'none' },
    marks: shown?.file === picture.file ? before.marks : [],
    span: same ? before.span : [0, picture.duration],
    said: sentenceOfRun(picture),
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
  [p.card, ...p.faults.map((f) => `${f.fault} on ${f.on}`)].join('; ');
