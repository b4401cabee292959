/**
 * Who reads and writes observation sheets for the page: the workers that make its runs, since they are warm and
 * know the scenario.
 */
import type { Question, Told } from './parameters-message.js';
import type { SheetJob, SheetReply } from './sheet-message.js';
import { whyOf } from './why.js';

export class Clerk {
  constructor(private readonly question: (question: Question) => Promise<Told>) {}

  async ask(job: SheetJob): Promise<SheetReply> {
    try {
      const told = await this.question({ kind: 'sheet', job });
      if (told.kind === 'sheet') return told.reply;
      return { kind: 'broken', message: 'another answer came' };
    } catch (error) {
      return { kind: 'broken', message: whyOf(error) };
    }
  }
}
