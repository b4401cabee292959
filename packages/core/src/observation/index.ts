export type { Contradiction } from './contradiction.js';
export { expectedSwings, type ExpectedSwing } from './expected.js';
export { readObservations, type ObservationReading } from './read.js';
export { observationSchema } from './schema.js';
export * from './sheet.js';
export { writeObservations, type ObservationWriting } from './write.js';
