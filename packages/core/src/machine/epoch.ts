import type { Network } from '../network/index.js';
import type { Motion } from './motion.js';

/** Everything discrete at an instant; recorded whenever it changes. */
export interface Epoch {
  readonly t: number;
  readonly modes: Int32Array;
  readonly entered: Float64Array;
  readonly motion: Int8Array;
  readonly inputs: Float64Array;
}

/** What is discrete now. */
export function takeEpoch(t: number, { frames, workspace }: Network, motion: Motion): Epoch {
  const modes = new Int32Array(frames.length);
  const entered = new Float64Array(frames.length);
  // Plain loops: the typed arrays' `from` takes ten times as long.
  for (let i = 0; i < frames.length; i++) {
    modes[i] = frames[i].mode;
    entered[i] = frames[i].entered;
  }
  return { t, modes, entered, motion: motion.mode.slice(), inputs: workspace.inputs.slice() };
}

/** Sets what an epoch says, for replaying. */
export function restoreEpoch(epoch: Epoch, network: Network, motion: Motion): void {
  network.frames.forEach((f, i) => {
    f.mode = epoch.modes[i];
    f.entered = epoch.entered[i];
  });
  epoch.motion.forEach((m, c) => motion.set(c, m));
  network.workspace.inputs.set(epoch.inputs);
  network.refresh();
}
