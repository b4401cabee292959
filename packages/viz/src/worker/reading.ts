/** Texts as read, with the changes in force; what was read last is kept. */
import { holdScenario } from '@wheelwell/core';
import type { Edit, HeldScenario, Reading, Scenario } from '@wheelwell/core';

/** What is to be read. */
export interface Written {
  readonly file: string;
  readonly text: string;
  /** Changes in force on top of the text; none when absent. */
  readonly edits?: readonly Edit[];
}

let text: { readonly text: string; readonly held: HeldScenario } | undefined;
let reading:
  { readonly held: HeldScenario; readonly edits: string; readonly is: Reading } | undefined;

/** The text, parsed once however often it is changed. */
export function heldOf(w: Written): HeldScenario {
  if (text?.held.file !== w.file || text.text !== w.text)
    text = { text: w.text, held: holdScenario(w.text, { file: w.file }) };
  return text.held;
}

/** Another card or another severity of the same text need not read it again. */
export function readWritten(w: Written): Reading {
  const held = heldOf(w);
  const edits = JSON.stringify(w.edits ?? []);
  if (reading?.held !== held || reading.edits !== edits)
    reading = { held, edits, is: held.read(w.edits) };
  return reading.is;
}

/** The scenario in a text that the page has shown. @throws Error where it does not read */
export function scenarioIn(w: Written): Scenario {
  const { scenario } = readWritten(w);
  if (scenario === undefined) throw new Error(`${w.file} does not read`);
  return scenario;
}
