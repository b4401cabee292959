/** The lessons that come with the project, each with its scenario, made ready once. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { prepareLesson, readScenario } from '@wheelwell/core';
import type { LessonPlan, Scenario } from '@wheelwell/core';

const ROOT = fileURLToPath(new URL('../../scenarios/', import.meta.url));

export interface Shipped {
  /** From the folder of scenarios, e.g. `hedgelark/lessons/blow-down.yaml`. */
  readonly file: string;
  readonly text: string;
  readonly scenario: Scenario;
  readonly plan: () => LessonPlan;
}

const scenarios = new Map<string, Scenario>();

function scenarioAt(path: string): Scenario {
  const known = scenarios.get(path);
  if (known !== undefined) return known;
  const { scenario, issues } = readScenario(readFileSync(path, 'utf8'), { file: path });
  if (scenario === undefined) throw new Error(JSON.stringify(issues));
  scenarios.set(path, scenario);
  return scenario;
}

export const shipped: readonly Shipped[] = readdirSync(ROOT, { recursive: true, encoding: 'utf8' })
  .filter((path) => /\/lessons\/[^/]+\.yaml$/.test(path))
  .sort()
  .map((file) => {
    const text = readFileSync(join(ROOT, file), 'utf8');
    const named = /^scenario: (.+)$/m.exec(text)?.[1] ?? '';
    const scenario = scenarioAt(join(ROOT, dirname(file), named));
    let plan: LessonPlan | undefined;
    return { file, text, scenario, plan: () => (plan ??= prepareLesson(text, scenario, { file })) };
  });
