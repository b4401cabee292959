/** The worker's entry: core off the main thread. */
import { answer, judged } from './answer.js';
import type { Answer } from './answer.js';
import type { MapJob } from './blow-down-message.js';
import { explain } from './diagnosis.js';
import { isDiagnosisJob } from './diagnosis-message.js';
import type { DiagnosisJob } from './diagnosis-message.js';
import { teach } from './lesson.js';
import type { LessonRequest } from './lesson-message.js';
import { work } from './map.js';
import type { AfterRequest, JudgeRequest, RunRequest, SeriesRequest } from './message.js';
import { isRecordingJob, workRecording } from './recording.js';
import type { RecordingJob } from './recording-message.js';
import { afterOf, seriesOf } from './series.js';
import { answerSheet } from './sheet.js';
import { isSheetJob } from './sheet-message.js';
import type { SheetJob } from './sheet-message.js';
import { told } from './told.js';
import type { NumberedQuestion } from './told.js';

type Job =
  | RunRequest
  | JudgeRequest
  | SeriesRequest
  | AfterRequest
  | LessonRequest
  | DiagnosisJob
  | MapJob
  | NumberedQuestion
  | RecordingJob
  | SheetJob;

// The DOM and worker type libraries cannot both be loaded; this is all that is used of it.
const scope = self as unknown as {
  onmessage: ((e: MessageEvent<Job>) => void) | null;
  postMessage(message: unknown, transfer: Transferable[]): void;
};

scope.onmessage = ({ data: job }) => {
  const post = ({ reply, transfer }: Answer): void => scope.postMessage(reply, transfer);
  if (!('kind' in job)) {
    const { id } = job;
    const tell = (share: number): void => scope.postMessage({ id, kind: 'progress', share }, []);
    post(answer(job, { tell, early: true }));
    return;
  }
  switch (job.kind) {
    case 'series':
      return post(seriesOf(job));
    case 'after':
      return scope.postMessage(afterOf(job), []);
    case 'lesson':
      return teach(job, (reply) => scope.postMessage(reply, []));
    case 'judge':
      return post(judged(job));
    case 'parameters':
    case 'text':
      return scope.postMessage(told(job), []);
    default:
      if (isRecordingJob(job)) return scope.postMessage(workRecording(job), []);
      if (isSheetJob(job)) return scope.postMessage(answerSheet(job), []);
      if (isDiagnosisJob(job)) return void explain(job, (reply) => scope.postMessage(reply, []));
      void work(job, (reply) => scope.postMessage(reply, []));
  }
};
