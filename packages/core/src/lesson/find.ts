/** A hidden fault: what to choose from, what each check shows, and how each suspect would have shown. */
import type { FaultEntry } from '../define/scenario.js';
import { partsOf } from '../scenario/index.js';
import { checksOf, differs } from './check.js';
import { onlyIn } from './compare.js';
import type { FindStep, LessonCheck, LessonChoice, LessonLine } from './lesson.js';
import type { Made } from './predict.js';
import { plain, shuffled, type Stage } from './stage.js';

/** Wrong ones to choose from, and how many are tried to find them. */
const MOST_SUSPECTS = 4;
const MOST_TRIED = 7;

type Suspect = Omit<FaultEntry, 'severity'>;

export interface Found extends Made {
  readonly checks: readonly LessonCheck[];
}

export function find(stage: Stage, step: FindStep, path: readonly (string | number)[]): Found {
  const { issues, catalogues } = stage;
  const run = stage.play(step);
  const sound = stage.play({ card: step.card, faults: [] });
  const checks = checksOf(stage, run, step.of);
  const telling = (others: readonly LessonCheck[]): LessonCheck | undefined =>
    checks.find((check, i) => differs(check, others[i]));
  if (checks.length === 0)
    issues.add([...path, 'of'], {
      message: 'there is nothing to check',
      hint: 'name a unit, or leave of: out',
    });
  else if (telling(checksOf(stage, sound, step.of)) === undefined)
    issues.add([...path, 'faults'], { message: 'no check tells this run from a sound one' });
  const own = step.suspects.length > 0;
  const wrong: LessonChoice[] = [];
  for (const [i, suspect] of (own ? step.suspects : guesses(stage, step)).entries()) {
    if (wrong.length === MOST_SUSPECTS && !own) break;
    if (step.faults.some((f) => idOf(f) === idOf(suspect))) continue;
    const severity = step.faults[0].severity;
    const check = telling(
      checksOf(stage, stage.play({ card: step.card, faults: [{ ...suspect, severity }] }), step.of),
    );
    if (check !== undefined)
      wrong.push(
        choiceOf(
          stage,
          suspect,
          `With this one the check "${check.text}" would have shown something else.`,
        ),
      );
    else if (own)
      issues.add([...path, 'suspects', i], {
        message: 'no check tells this from the hidden fault',
        found: `${suspect.fault} on ${suspect.on}`,
      });
  }
  if (wrong.length === 0)
    issues.add(path, {
      message: 'there is nothing else to suspect',
      allowed: 'suspects: other faults',
    });
  const [first] = step.faults;
  const right = choiceOf(stage, first, 'This is what was hidden.');
  const facts = catalogues.faults[first.fault];
  const words = [
    facts.meaning,
    facts.shows,
    `Confirm: ${facts.confirm}`,
    `Caution: ${facts.caution}`,
  ];
  return {
    question: step.text === '' ? 'Something is wrong in this run. What is it?' : step.text,
    choices: shuffled([right, ...wrong], `${step.card} ${path.join(' ')}`),
    right: [idOf(first)],
    checks,
    told: [
      ...words.map((text): LessonLine => ({ text, sort: 'word' })),
      ...onlyIn(stage, run, sound, ''),
    ],
  };
}

const idOf = ({ fault, on }: Suspect): string => `${fault} on ${on}`;

function choiceOf({ catalogues }: Stage, suspect: Suspect, told: string): LessonChoice {
  const { title } = catalogues.faults[suspect.fault];
  return { id: idOf(suspect), text: `${title}: ${plain(suspect.on)}`, told };
}

/** The same fault elsewhere, then other faults of the parts of the same unit, then of what all share. */
function guesses(stage: Stage, step: FindStep): Suspect[] {
  const { scenario, catalogues } = stage;
  const [{ fault, on }] = step.faults;
  const parts = { ...scenario.components, ...scenario.mechanisms };
  const names = Object.keys(parts);
  const elsewhere = names
    .filter((name) => name !== on && catalogues.faults[fault].befalls.includes(parts[name].is))
    .map((name) => ({ fault, on: name }));
  const home = Object.values(scenario.units).find((unit) => partsOf(unit).includes(on));
  const near =
    home === undefined ? names : [home.leg, ...home.sequence, ...home.actuators, ...home.doors];
  const others = Object.values(catalogues.faults)
    .filter((f) => f.kind !== fault && f.silent !== true && f.prior !== 'rare')
    .flatMap((f) =>
      near
        .filter((name) => Object.hasOwn(parts, name) && f.befalls.includes(parts[name].is))
        .slice(0, 1)
        .map((name) => ({ fault: f.kind, on: name })),
    );
  const spread = others.filter(
    (_, i) => i % Math.max(1, Math.floor(others.length / MOST_TRIED)) === 0,
  );
  return [...elsewhere.slice(0, 2), ...spread].slice(0, MOST_TRIED);
}
