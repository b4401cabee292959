/** The worker's entry: core off the main thread. */
import { answer } from './answer.js';
import type { MapJob } from './blow-down-message.js';
import { teach } from './lesson.js';
import type { LessonRequest } from './lesson-message.js';
import { work } from './map.js';
import type { AfterRequest, RunRequest, SeriesRequest } from './message.js';
import { isRecordingJob, workRecording } from './recording.js';
import type { RecordingJob } from './recording-message.js';
import { afterOf, seriesOf } from './series.js';
import { answerSheet } from './sheet.js';
import { isSheetJob } from './sheet-message.js';
import type { SheetJob } from './sheet-message.js';

type Job =
  RunRequest | SeriesRequest | AfterRequest | MapJob | LessonRequest | RecordingJob | SheetJob;

// The DOM and worker type libraries cannot both be loaded; this is all that is used of it.
const scope = self as unknown as {
  onmessage: ((e: MessageEvent<Job>) => void) | null;
  postMessage(message: unknown, transfer: Transferable[]): void;
};

scope.onmessage = (e) => {
  if ('kind' in e.data) {
    if (e.data.kind === 'series') {
      const { reply, transfer } = seriesOf(e.data);
      scope.postMessage(reply, transfer);
      return;
    }
    if (e.data.kind === 'lesson') {
      teach(e.data, (reply) => scope.postMessage(reply, []));
      return;
    }
    if (e.data.kind === 'after') {
      scope.postMessage(afterOf(e.data), []);
      return;
    }
    if (isRecordingJob(e.data)) {
      scope.postMessage(workRecording(e.data), []);
      return;
    }
    if (isSheetJob(e.data)) {
      scope.postMessage(answerSheet(e.data), []);
      return;
    }
    void work(e.data, (reply) => scope.postMessage(reply, []));
    return;
  }
  const { id } = e.data;
  const { reply, transfer } = answer(e.data, (share) =>
    scope.postMessage({ id, kind: 'progress', share }, []),
  );
  scope.postMessage(reply, transfer);
};
