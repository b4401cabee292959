export type * from './lesson.js';
export { prepareLessonWith, type LessonPlan, type PrepareOptions } from './prepare.js';
export { readLessonWith, type LessonReading } from './read.js';
export { lessonJsonSchemaOf } from './schema.js';
export { writeLesson } from './write.js';
