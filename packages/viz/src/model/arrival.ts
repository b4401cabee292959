/** What the page knows after the worker has answered. */
import type { Reply } from '../worker/message.js';
import { reached } from './history.js';
import { count, sentenceOfRun } from './sentence.js';
import type { Source, State } from './state.js';

/** The change to the state; `asked` is the text the answered request was about. */
export function arrived(before: State, reply: Reply, asked: Source | undefined): Partial<State> {
  // What could not be had leaves the former run, and its faults, on show.
  const kept = { busy: false, faults: before.picture?.faults ?? [] };
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
  const former = before.picture;
  // The same test again (other faults) keeps the place in time; another one starts over.
  const same =
    former !== undefined && former.file === picture.file && former.duration === picture.duration;
  return {
    picture,
    source: asked ?? before.source,
    faults: picture.faults,
    busy: false,
    issues: [],
    issuesFile: '',
    failure: '',
    time: same ? Math.min(before.time, reached(picture)) : 0,
    playing: same && before.playing,
    selection: { kind: 'none' },
    span: same ? before.span : [0, picture.duration],
    said: sentenceOfRun(picture),
  };
}
