export type { Contradiction } from './contradiction.js';
export { expectedSwings, hasLight, type ExpectedOptions, type ExpectedSwing } from './expected.js';
export { drivenNodes, gaugeNode, HELD, lineNodes } from './expected-reading.js';
export { readObservations, type ObservationReading } from './read.js';
export { observationSchema } from './schema.js';
export * from './sheet.js';
export { writeObservations, type ObservationWriting } from './write.js';
