export { writeTable } from './csv-table.js';
export { findOffset, type Offset, type OffsetPair } from './offset.js';
export {
  readRecording,
  type ColumnChoice,
  type RecordedSeries,
  type Recording,
  type RecordingColumn,
  type RecordingOptions,
} from './read.js';
