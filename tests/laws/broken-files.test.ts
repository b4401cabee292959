import { expect, test } from 'vitest';
import { readWith, type Reading } from '../../packages/core/src/scenario/index.js';
import { MADE_UP_TEXT, madeUp } from '../support/made-up.js';
import { mutate } from '../support/mutate.js';

const COUNT = 10_000;

/** What is wrong with a reading, or nothing. */
function complaint({ scenario, issues }: Reading, lines: number): string {
  if (scenario === undefined && issues.length === 0) return 'neither scenario nor issue';
  if (scenario !== undefined && issues.length > 0) return 'both scenario and issues';
  for (const issue of issues) {
    if (!(issue.line >= 1 && issue.line <= lines && issue.column >= 1))
      return `issue without a place: ${JSON.stringify(issue)}`;
    if (issue.message === '' || issue.found.length > 70)
      return `issue without measure: ${JSON.stringify(issue).slice(0, 300)}`;
  }
  // JSON writes NaN and infinities as null; a scenario holds neither.
  if (scenario !== undefined && JSON.stringify(scenario).includes('null'))
    return 'a figure that is not finite';
  return '';
}

test(
  `each of ${COUNT} damaged files gives a scenario or placed issues, and nothing leaks into JavaScript's own objects`,
  { timeout: 600_000 },
  () => {
    const wrong: string[] = [];
    let sound = 0;
    for (let seed = 0; seed < COUNT; seed++) {
      const { text, what } = mutate(MADE_UP_TEXT, seed);
      try {
        const reading = readWith(madeUp, text);
        const told = complaint(reading, text.split('\n').length);
        if (told !== '') wrong.push(`seed ${seed} (${what.join(', ')}): ${told}`);
        if (reading.scenario !== undefined) sound++;
      } catch (error) {
        wrong.push(`seed ${seed} (${what.join(', ')}): thrown ${String(error)}`);
      }
    }
    expect(wrong).toEqual([]);
    // The damage must be real, yet not always fatal, or the test says nothing.
    expect(sound).toBeGreaterThan(COUNT / 100);
    expect(sound).toBeLessThan(COUNT / 2);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  },
);
