/** What views work with beside the store they belong to. */
import { BetweenWork } from '../model/between.js';
import { BlowDownWork } from '../model/blow-down.js';
import { exampleSheets } from '../model/demos.js';
import { DiagnosisWork } from '../model/diagnosis.js';
import { EditWork } from '../model/edits.js';
import { LessonDesk } from '../model/lesson-desk.js';
import { LessonWork } from '../model/lesson.js';
import { LinkWork } from '../model/link-work.js';
import type { Shell } from '../model/link-work.js';
import { LoopWork } from '../model/loop.js';
import { MeasuredWork } from '../model/measured.js';
import type { Source } from '../model/state.js';
import type { Store } from '../model/store.js';
import { TestCardWork } from '../model/test-card.js';
import { TracesWork } from '../model/traces.js';
import type { Works } from '../view/index.js';
import { Diagnoser } from '../worker/diagnosis-client.js';
import { Tutor } from '../worker/lesson-client.js';
import { Mapper } from '../worker/map-client.js';
import { RecordingReader } from '../worker/recording-client.js';
import { Clerk } from '../worker/sheet-client.js';
import { watchClock } from './clock.js';
import { shelf } from './settings.js';

export function worksOf(store: Store, demos: readonly Source[], shell: Shell): Works {
  const tutor = new Tutor();
  const question = store.question.bind(store);
  const testCard = new TestCardWork(store, new Clerk(question), shelf, watchClock);
  const lesson = new LessonWork(store, tutor, shelf);
  return {
    edit: new EditWork(store),
    blowDown: new BlowDownWork(store, new Mapper()),
    lesson,
    desk: new LessonDesk(lesson, tutor),
    measured: new MeasuredWork(store),
    testCard,
    diagnosis: new DiagnosisWork(store, testCard, new Diagnoser(question), exampleSheets),
    between: new BetweenWork(store),
    loop: new LoopWork(store),
    traces: new TracesWork(store, new RecordingReader(), shelf),
    link: new LinkWork(store, demos, shell),
  };
}
