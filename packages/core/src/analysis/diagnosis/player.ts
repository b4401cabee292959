/** Has swings played: what is remembered need not be played again. */
import type { Catalogues } from '../../define/index.js';
import type { SetupList } from './setup.js';
import type { Signature, SignatureJob, SignatureMemory, SignaturePool } from './shapes.js';
import { playSignature } from './signature.js';

/** Plays here, a swing at a time, letting others have a turn in between. */
export function ownPool(catalogues: Catalogues): SignaturePool {
  return {
    async play(tasks, onSignature, signal) {
      for (let i = 0; i < tasks.length && signal?.aborted !== true; i++) {
        onSignature(i, playSignature(catalogues, tasks[i]));
        await new Promise((resume) => setTimeout(resume, 0));
      }
    },
  };
}

export class Player {
  /** Swings that were really played. */
  runs = 0;

  constructor(
    private readonly setups: SetupList,
    private readonly pool: SignaturePool,
    private readonly memory: SignatureMemory = new Map<string, Signature>(),
  ) {}

  /** Signatures in the order of the jobs; undefined where it was cancelled before. */
  async play(
    jobs: readonly SignatureJob[],
    hear: (index: number, signature: Signature) => void,
    signal: { readonly aborted: boolean } | undefined,
  ): Promise<readonly (Signature | undefined)[]> {
    const found: (Signature | undefined)[] = jobs.map(() => undefined);
    const keep = (index: number, signature: Signature): void => {
      found[index] = signature;
      hear(index, signature);
    };
    const open: number[] = [];
    jobs.forEach((job, i) => {
      const known = this.memory.get(this.keyOf(job));
      if (known === undefined) open.push(i);
      else keep(i, known);
    });
    await this.pool.play(
      open.map((i) => ({ ...jobs[i], setup: this.setups.toPlay(jobs[i].setup) })),
      (k, signature) => {
        this.runs++;
        this.memory.set(this.keyOf(jobs[open[k]]), signature);
        keep(open[k], signature);
      },
      signal,
    );
    return found;
  }

  private keyOf({ setup, faults, unknown, drawn }: SignatureJob): string {
    const aircraft = drawn === undefined ? (unknown ?? -1) : `drawn ${drawn}`;
    return JSON.stringify([this.setups.at(setup).key, faults, aircraft]);
  }
}
