/** What passes between page and worker about recordings: plain data, arrays transferred. */
import type { ChannelInfo, ColumnChoice, Offset, Recording } from '@wheelwell/core';

export type {
  ColumnChoice,
  Offset,
  RecordedSeries,
  Recording,
  RecordingColumn,
} from '@wheelwell/core';

/** Values over time, s, whichever way they are kept. */
export interface Points {
  readonly t: Float32Array | Float64Array;
  readonly v: Float32Array | Float64Array;
}

/** Page to worker. */
export type RecordingJob =
  | {
      readonly kind: 'recording';
      readonly id: number;
      readonly file: string;
      readonly text: string;
      readonly channels: readonly ChannelInfo[];
      readonly choices: Readonly<Record<number, ColumnChoice>>;
      /** Pressure of the surrounding air, Pa. */
      readonly ambient: number;
    }
  /** By how much a recording is to be moved; pairs of the same signal, recorded and simulated. */
  | {
      readonly kind: 'offset';
      readonly id: number;
      readonly pairs: readonly { readonly recorded: Points; readonly simulated: Points }[];
    };

/** Worker to page; `id` is the job's. */
export type RecordingReply =
  | { readonly kind: 'recording'; readonly id: number; readonly recording: Recording }
  | { readonly kind: 'offset'; readonly id: number; readonly found: Offset | undefined }
  | { readonly kind: 'broken'; readonly id: number; readonly message: string };

export function isRecordingJob(job: { readonly kind: string }): job is RecordingJob {
  return job.kind === 'recording' || job.kind === 'offset';
}
