/** Tasks that travel to a player elsewhere: a setup, with a scenario in it, goes along once. */
import type { Catalogues } from '../../define/index.js';
import type { SentTask, Signature, SignatureTask, SwingSetup } from './shapes.js';
import { playSignature } from './signature.js';

/** What to send to one player for a task: whole the first time that its setup is met, by its key from then on. */
export function taskSender(): (task: SignatureTask) => SentTask {
  const sent = new Set<string>();
  return (task) => {
    const { key } = task.setup;
    if (sent.has(key)) return { ...task, setup: { key } };
    sent.add(key);
    return task;
  };
}

/**
 * Plays what is sent of one diagnosis. A setup that came before is the one that is played, so that what is worked
 * out of its parts is kept.
 *
 * @throws RangeError for a setup that never came whole, or a fault that cannot befall what it names
 */
export function signaturePlayer(catalogues: Catalogues): (task: SentTask) => Signature {
  const known = new Map<string, SwingSetup>();
  return (task) => {
    const setup = known.get(task.setup.key) ?? whole(task.setup);
    if (setup === undefined) throw new RangeError(`never sent whole: setup ${task.setup.key}`);
    known.set(setup.key, setup);
    return playSignature(catalogues, { ...task, setup });
  };
}

const whole = (setup: SentTask['setup']): SwingSetup | undefined =>
  'scenario' in setup ? setup : undefined;
