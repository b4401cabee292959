import { formatIssue, type Scenario } from '../define/index.js';
import type { Engine } from './engine.js';
import type { Io } from './io.js';

/** Reads a scenario file; every issue goes to `complain`. Undefined when it cannot be used. */
export function readScenarioFile(
  engine: Engine,
  io: Io,
  file: string,
  complain: (text: string) => void = io.error,
): { readonly scenario: Scenario; readonly text: string } | undefined {
  const text = io.read(file);
  const { scenario, issues } = engine.readScenario(text, {
    file: file === '-' ? '<standard input>' : file,
  });
  for (const issue of issues) complain(`${formatIssue(issue)}\n`);
  return scenario && { scenario, text };
}
