/** The chart of traces as files: a picture, a drawing, figures. */
import { layOut } from '../drawing/trace-layout.js';
import type { Box } from '../drawing/trace-layout.js';
import { MARGIN, paintPicture } from '../drawing/trace-paint.js';
import type { Caption } from '../drawing/trace-paint.js';
import { traceSvg } from '../drawing/trace-svg.js';
import { seconds, titleOfRun } from '../model/sentence.js';
import type { State } from '../model/state.js';
import { tracesCsv } from '../model/trace-csv.js';
import { sampleAt, shownIn } from '../model/trace-panels.js';
import type { TracePanel } from '../model/trace-panels.js';
import { download } from './download.js';

export type FileKind = 'png' | 'svg' | 'csv';

/** Width of a picture, px, and its pixels to a px: fit for a page of a report. */
const WIDTH = 1100;
const FINE = 2;

export async function saveTraces(
  kind: FileKind,
  panels: readonly TracePanel[],
  state: State,
  fit: boolean,
): Promise<void> {
  const { picture, span, time } = state;
  if (picture === undefined) return;
  const name = `${picture.file.replace(/\.\w+$/, '')}-${picture.card}-traces.${kind}`;
  if (kind === 'csv') {
    download(name, tracesCsv(panels, state), 'text/csv');
    return;
  }
  const box: Box = { span, width: WIDTH, height: 520, left: 64, right: 270, row: 16, fit };
  const layout = layOut(panels, box);
  const labels = layout.panels.map(({ content, lines }) =>
    lines.map(({ label, samples }) => {
      const now = samples === undefined ? NaN : sampleAt(samples, time);
      return `${label}  ${shownIn(content, now)}`;
    }),
  );
  const title = `${picture.title}: ${titleOfRun(picture)}. Figures at ${seconds(time)}.`;
  const caption: Caption = { title, labels };
  if (kind === 'svg') {
    download(name, traceSvg(layout, box, caption), 'image/svg+xml');
    return;
  }
  const canvas = document.createElement('canvas');
  canvas.width = WIDTH * FINE;
  canvas.height = (layout.height + MARGIN.top + MARGIN.bottom) * FINE;
  const g = canvas.getContext('2d');
  if (g === null) return;
  g.scale(FINE, FINE);
  paintPicture(g, layout, box, caption);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
  if (blob !== null) download(name, blob, 'image/png');
}
