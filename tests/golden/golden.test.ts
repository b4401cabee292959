/**
 * Every card of every scenario against its recorded telling, `<scenario>/<card>.txt`. A missing
 * one is recorded; a changed one is laid beside it as `<card>.changed.txt` for the eye.
 * `UPDATE_GOLDEN=1` accepts. Runs are of the fine tolerance, so that what is recorded is the
 * model, not the step control; what a card is meant to raise is asked of a run as users have it.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { formatIssue, readScenario, simulate } from '@wheelwell/core';
import { difference, parse, tell, write } from '../support/golden.js';

const here = (path: string): URL => new URL(path, import.meta.url);
const SCENARIOS = here('../../scenarios/');
const accept = Boolean(process.env.UPDATE_GOLDEN);

const names = readdirSync(SCENARIOS, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name);

it('there are scenarios', () => {
  expect(names.length).toBeGreaterThan(0);
});

describe.each(names)('%s', (name) => {
  const file = `${name}/${name}.yaml`;
  const { scenario, issues } = readScenario(readFileSync(new URL(file, SCENARIOS), 'utf8'), {
    file,
  });
  if (scenario === undefined) throw new Error(issues.map(formatIssue).join('\n'));
  const folder = here(`${name}/`);
  mkdirSync(folder, { recursive: true });
  const cards = Object.entries(scenario.cards);

  it.each(cards)('%s: goes as recorded', (card, { title }) => {
    const recorded = new URL(`${card}.txt`, folder);
    const beside = new URL(`${card}.changed.txt`, folder);
    rmSync(beside, { force: true });
    const now = tell(simulate(scenario, { card, tolerance: 'fine' }));
    const text = write(now, `${name}, ${card}: ${title}`);
    // What is written can be read back, or nothing below would mean anything.
    expect(difference(parse(text), now)).toBeUndefined();
    if (!existsSync(recorded)) {
      writeFileSync(recorded, text);
      return;
    }
    const found = difference(parse(readFileSync(recorded, 'utf8')), now);
    if (found === undefined) return;
    if (accept) writeFileSync(recorded, text);
    else writeFileSync(beside, text);
    expect(accept ? undefined : found).toBeUndefined();
  });

  it.each(cards)(
    '%s: raises what it is meant to raise, and nothing else',
    (card, { expect: meant }) => {
      const raised = simulate(scenario, { card }).flags.filter((f) => f.severity !== 'note');
      expect([...new Set(raised.map((f) => f.rule))].sort()).toEqual([...meant].sort());
    },
  );

  it('has no recording of a card that is gone', () => {
    const known = cards.map(([card]) => `${card}.txt`);
    const gone = readdirSync(folder).filter(
      (f) => !known.includes(f) && !f.endsWith('.changed.txt'),
    );
    if (accept) gone.forEach((f) => rmSync(new URL(f, folder)));
    else expect(gone).toEqual([]);
  });
});

describe('the comparison', () => {
  const row = 'event     7.146  mode      left-uplock               open -> engaged';
  const flag =
    'flag   caution   spread                    -0.300 time                    left right';
  const text = ['flicker  0.05', 'ended  done  30.000', row, flag].join('\n');
  const against = (other: string): string | undefined => difference(parse(text), parse(other));

  it.each([
    ['a time 1 ms later', '7.146', '7.147', false],
    ['a time 5 ms later', '7.146', '7.151', true],
    ['another state', 'engaged', 'jammed', true],
    ['no event', row, '', true],
    ['a margin 1 ms less', '-0.300', '-0.301', false],
    ['a margin a twentieth less', '-0.300', '-0.315', true],
    ['another culprit', 'left right', 'tail', true],
    ['another severity', 'caution', 'fail   ', true],
    ['another end', 'done', 'stuck', true],
  ])('%s', (_, old, now, differs) => {
    expect(against(text.replace(old, now)) !== undefined).toBe(differs);
  });
});
