/** Sections that pages of devices and of mechanisms share. */
import { code, fence, plain, section, sentence, table } from './markdown.mjs';

export function faultsOf(core, kind) {
  return table(
    ['fault', 'what it is', 'how often', 'at severity 1'],
    Object.values(core.catalogues.faults)
      .filter((f) => f.befalls.includes(kind))
      .map((f) => [`[${f.kind}](../faults/${f.kind}.md)`, plain(f.title), f.prior, plain(f.worst)]),
  );
}

/** `notes` has the head comment of a file and of what it shares. */
export function equations({ head, shared }, source) {
  return section(
    'Equations',
    head === undefined ? '' : fence('text', head),
    ...shared.flatMap(({ file, text }) => [`From ${code(file)}:`, fence('text', text)]),
    `Source: ${sentence(source)} What many devices share is under [laws](../laws.md).`,
  );
}

export const written = (piece, where) =>
  section(
    'In a scenario',
    `Under ${code(where)}; everything else has its default.`,
    fence('yaml', piece),
  );
