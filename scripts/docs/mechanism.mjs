/** Pages of legs, doors and other mechanisms. */
import { capital, code, GENERATED, page, plain, section, sentence, table } from './markdown.mjs';
import { parameterTable } from './parameter.mjs';
import { equations, faultsOf, written } from './part.mjs';

/** The page of a leg, door or other mechanism. */
export function mechanismPage(core, examples, d, notes) {
  const [low, high] = d.ends;
  return page(
    `# ${capital(plain(d.title))}`,
    `${code(d.kind)} · mechanism · [all mechanisms](README.md)`,
    sentence(d.summary),
    `Its angle counts from **${low}** (low end) to **${high}** (high end). The log says ${[`rising`, `falling`, `held`, `at ${low}`, `at ${high}`].map(code).join(', ')}.`,
    written(examples.piece(d), 'mechanisms'),
    section('Parameters', parameterTable(core, d.parameters)),
    section(
      'Channels of a run',
      table(
        ['channel', 'what it is', 'quantity'],
        [
          [code(`${d.kind}.angle`), `angle from ${low}`, 'angle'],
          [code(`${d.kind}.speed`), `angular speed, towards ${high} positive`, 'angular-speed'],
        ],
      ),
    ),
    equations(notes, d.source),
    section('Faults that can befall it', faultsOf(core, d.kind)),
    GENERATED,
  );
}
