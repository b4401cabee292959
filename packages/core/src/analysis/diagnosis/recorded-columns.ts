import type { Evidence } from '../../define/index.js';
import type { ObservedColumn, RecordingEntry } from '../../observation/index.js';
import { readRecording, type Recording } from '../../recording/index.js';

/** The columns as the sheet names them; what it does not name is found by its head. */
export function columnsOf(
  { channels, scenario }: Evidence,
  { file, columns, time }: RecordingEntry,
  text: string,
): { readonly recording: Recording; readonly told: readonly string[] } {
  const told: string[] = [];
  const first = readRecording(text, { file, channels, ambient: scenario.ambient });
  const placeOf = ({ column }: ObservedColumn): number => {
    const wanted = column.trim().toLowerCase();
    const at = first.columns.findIndex(({ title, unit }) =>
      [title, `${title} (${unit})`, `${title} [${unit}]`].some((x) => x.toLowerCase() === wanted),
    );
    if (at < 0)
      told.push(
        `there is no column "${column}", only ${first.columns.map((c) => c.title).join(', ')}`,
      );
    return at;
  };
  const choices = Object.fromEntries(
    Object.entries(columns).map(([channel, column]) => [
      placeOf(column),
      { channel, ...(column.unit !== undefined && { unit: column.unit }) },
    ]),
  );
  const index = time === undefined ? -1 : placeOf(time);
  const recording = readRecording(text, {
    file,
    channels,
    choices,
    ambient: scenario.ambient,
    ...(index >= 0 && {
      time: { index, ...(time?.unit !== undefined && { unit: time.unit }) },
    }),
  });
  for (const i of recording.issues)
    told.push([i.path, i.message, i.found].filter((part) => part !== '').join(': '));
  return { recording, told };
}
