/** Reads recordings and finds their offset in a worker: a long file does not hold up the page. */
import { findOffset, readRecording } from '@wheelwell/core';
import type { Series } from '@wheelwell/core';
import type { Points, RecordingJob, RecordingReply } from './recording-message.js';
import { whyOf } from './why.js';

export function workRecording(job: RecordingJob): RecordingReply {
  const { id } = job;
  try {
    if (job.kind === 'recording') {
      const { text, ...options } = job;
      return { kind: 'recording', id, recording: readRecording(text, options) };
    }
    const pairs = job.pairs.map(({ recorded, simulated }) => ({
      recorded: seriesOf(recorded),
      simulated: seriesOf(simulated),
    }));
    return { kind: 'offset', id, found: findOffset(pairs) };
  } catch (error) {
    return { kind: 'broken', id, message: whyOf(error) };
  }
}

function seriesOf({ t, v }: Points): Series {
  return { t: Float64Array.from(t), v: Float64Array.from(v) };
}
