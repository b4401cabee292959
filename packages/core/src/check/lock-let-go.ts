import type { CheckDefinition } from '../define/index.js';

export const lockLetGo: CheckDefinition = {
  kind: 'lock-let-go',
  title: 'Shake it in its lock',
  how: 'Locked and left, then loaded by hand sideways: does the lock let go, or the gear come out of it later?',
  minutes: 10,
  tools: 'none, or a spring scale',
  caution: 'Ground locks within reach; nobody under the leg.',
  source: 'NTSB field report CEN10IA030; common practice, no source',
  shows: [
    'downlock-not-over-centre',
    'selector-not-in-detent',
    'uplock-spring-weak',
    'uplock-misrigged',
    'internal-lock-worn',
    'uplatch-cable-stretched',
  ],
  sure: 0.85,
};
