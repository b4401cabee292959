/** Whether all that a step names is in the scenario. */
import type { Catalogues } from '../define/catalogue.js';
import { PHASES } from '../define/phase.js';
import type { EventPattern, FaultEntry, Scenario } from '../define/scenario.js';
import { tailored } from '../define/tailored.js';
import { GEAR } from '../machine/index.js';
import { didYouMean } from '../quantity/index.js';
import { faultProblem, modeWords, motionWords } from '../scenario/index.js';
import { wordList, type IssueList } from '../scenario/issue-list.js';
import type { LessonStep } from './lesson.js';

type Path = readonly (string | number)[];

export interface Place {
  readonly scenario: Scenario;
  readonly catalogues: Catalogues;
  readonly issues: IssueList;
}

/** Names an event or a check may speak of. */
export function subjects({ components, mechanisms, units }: Scenario): string[] {
  return [...Object.keys(units), ...Object.keys(mechanisms), ...Object.keys(components)];
}

export function checkStep(place: Place, step: LessonStep, path: Path): void {
  const { scenario } = place;
  const cards = Object.keys(scenario.cards);
  one(place, [...path, 'card'], 'test card', step.card, cards);
  checkFaults(place, step.faults ?? [], [...path, 'faults']);
  if (step.moment?.after !== undefined) checkEvent(place, step.moment.after, [...path, 'after']);
  if (step.kind === 'predict' || step.kind === 'find')
    step.of.forEach((name, i) =>
      one(place, [...path, 'of', i], 'device, mechanism or unit', name, subjects(scenario)),
    );
  if (step.kind === 'arrange') {
    if (step.events.length < 2 || step.events.length > 8)
      place.issues.add([...path, 'events'], {
        message: 'this leaves nothing to arrange, or too much',
        allowed: '2 to 8 events',
      });
    step.events.forEach((e, i) => checkEvent(place, e, [...path, 'events', i]));
  }
  if (step.kind === 'find')
    checkFaults(
      place,
      step.suspects.map((s) => ({ ...s, severity: step.faults[0].severity })),
      [...path, 'suspects'],
    );
  if (step.kind !== 'compare') return;
  one(place, [...path, 'with', 'card'], 'test card', step.with.card, cards);
  checkFaults(place, step.with.faults ?? [], [...path, 'with', 'faults']);
  const { measure } = step;
  if ('rule' in measure) {
    const rules = [...Object.keys(place.catalogues.rules), ...scenario.rules.map((r) => r.name)];
    one(place, [...path, 'rule'], 'rule', measure.rule, rules);
  } else if (measure.unit !== '')
    one(place, [...path, 'unit'], 'unit', measure.unit, Object.keys(scenario.units));
}

function one(
  { issues }: Place,
  path: Path,
  what: string,
  name: string,
  known: readonly string[],
): boolean {
  if (known.includes(name)) return true;
  issues.add(path, {
    message: `there is no ${what} of this name`,
    found: name,
    allowed: wordList(known, 40),
    hint: didYouMean(name, known),
  });
  return false;
}

function checkFaults(place: Place, faults: readonly FaultEntry[], path: Path): void {
  faults.forEach((entry, i) => {
    const problem = faultProblem(place.scenario, entry, place.catalogues);
    if (problem !== undefined)
      place.issues.add([...path, i], { message: problem, found: `${entry.fault} on ${entry.on}` });
  });
}

function checkEvent(place: Place, { device, to }: EventPattern, path: Path): void {
  const { scenario } = place;
  const known = [...subjects(scenario), GEAR];
  if (!one(place, [...path, 'device'], 'device, mechanism or unit', device, known)) return;
  const words = wordsOf(place, device);
  if (words.includes(to)) return;
  place.issues.add([...path, 'to'], {
    message: `${device} is never in this state`,
    found: to,
    allowed: wordList(words),
    hint: didYouMean(to, words),
  });
}

/** What the log may say of something: its modes and what the operator sets, its motions, its phases. */
export function wordsOf(
  { scenario, catalogues }: Pick<Place, 'scenario' | 'catalogues'>,
  name: string,
): readonly string[] {
  if (Object.hasOwn(scenario.mechanisms, name))
    return motionWords(catalogues.mechanisms[scenario.mechanisms[name].is]);
  if (!Object.hasOwn(scenario.components, name)) return [...PHASES, 'moving', 'mixed'];
  const { is, parameters } = scenario.components[name];
  const kind = tailored(catalogues.components[is], parameters);
  const set = Object.values(kind.inputs ?? {}).flatMap((input) => input.choices ?? []);
  return [...new Set([...modeWords(kind), ...set])];
}
