/** The worker's entry: core off the main thread. What a swing can do without comes when it is first asked for. */
import { answer, refined } from './answer.js';
import type { Answer } from './answer.js';
import type { MapJob } from './blow-down-message.js';
import { isDiagnosisJob } from './diagnosis-message.js';
import type { DiagnosisJob } from './diagnosis-message.js';
import { later } from './later.js';
import type { LessonRequest } from './lesson-message.js';
import type {
  AfterRequest,
  Picture,
  Posted,
  RefineRequest,
  RunRequest,
  SeriesRequest,
} from './message.js';
import { isRecordingJob } from './recording-message.js';
import type { RecordingJob } from './recording-message.js';
import { afterOf, seriesOf } from './series.js';
import { sparing } from './sparing.js';
import { told } from './told.js';
import type { NumberedQuestion } from './told.js';

type Job =
  | RunRequest
  | RefineRequest
  | SeriesRequest
  | AfterRequest
  | LessonRequest
  | DiagnosisJob
  | MapJob
  | NumberedQuestion
  | RecordingJob;

const diagnosis = later(() => import('./diagnosis.js'));
const lesson = later(() => import('./lesson.js'));
const map = later(() => import('./map.js'));
const recording = later(() => import('./recording.js'));
const sheet = later(() => import('./sheet.js'));

// The DOM and worker type libraries cannot both be loaded; this is all that is used of it.
const scope = self as unknown as {
  onmessage: ((e: MessageEvent<Job>) => void) | null;
  postMessage(message: unknown, transfer: Transferable[]): void;
};

/** The picture that the page had last. */
let sent: Picture | undefined;

function post({ reply, transfer }: Answer): void {
  let posted: Posted;
  if (reply.kind === 'picture') {
    posted = { ...reply, picture: sparing(reply.picture, sent) };
    sent = reply.picture;
  } else posted = reply;
  scope.postMessage(posted, transfer);
}

scope.onmessage = ({ data: job }) => {
  const tell = (reply: unknown): void => scope.postMessage(reply, []);
  const shareOf =
    (id: number) =>
    (share: number): void =>
      tell({ id, kind: 'progress', share });
  if (!('kind' in job)) {
    post(answer(job, { tell: shareOf(job.id), quick: job.exact !== true }));
    return;
  }
  switch (job.kind) {
    case 'series':
      return post(seriesOf(job));
    case 'after':
      return tell(afterOf(job));
    case 'lesson':
      return lesson(({ teach }) => teach(job, tell));
    case 'refine':
      return post(refined(job, { tell: shareOf(job.run) }));
    case 'parameters':
    case 'scenario':
    case 'text':
      return tell(told(job));
    case 'sheet':
      return sheet(({ answerSheet }) =>
        tell({ number: job.number, kind: 'sheet', reply: answerSheet(job.job) }),
      );
    default:
      if (isRecordingJob(job)) return recording(({ workRecording }) => tell(workRecording(job)));
      if (isDiagnosisJob(job)) return diagnosis(({ explain }) => void explain(job, tell));
      map(({ work }) => void work(job, tell));
  }
};
