/** Fifty traces of ten thousand points brought down to pixels, and a recording of as many rows read. */
import { rolldown } from 'rolldown';

const TRACES = 50;
const POINTS = 10_000;

/** The page's drawing code, bundled as its build does. */
async function drawing() {
  const input = new URL('../../../packages/viz/src/drawing/trace-layout.ts', import.meta.url);
  const bundle = await rolldown({ input: input.pathname });
  const { output } = await bundle.generate({ format: 'es' });
  await bundle.close();
  return import(`data:text/javascript,${encodeURIComponent(output[0].code)}`);
}

export default async ({ core, measure }) => {
  const { layOut } = await drawing();
  const t = Float32Array.from({ length: POINTS }, (_, i) => (30 * i) / POINTS);
  const lines = Array.from({ length: TRACES }, (_, k) => ({
    name: `trace ${k}`,
    label: `trace ${k}`,
    style: { light: '#000000', dark: '#ffffff', dash: [] },
    samples: { t, v: t.map((x) => Math.sin(x + k) + 0.2 * Math.sin(400 * x)) },
    recorded: [],
  }));
  const panels = [{ key: 'a', title: 'a', factor: 1, shift: 0, lines }];
  const size = { width: 860, height: 300, left: 58, right: 190, row: 15, fit: false };
  const names = Array.from({ length: 12 }, (_, k) => `signal ${k} (deg)`).join(',');
  const rows = Array.from({ length: POINTS }, (_, i) =>
    [i / 250, ...Array.from({ length: 12 }, (_, k) => Math.sin(i / 90 + k).toFixed(5))].join(','),
  );
  const text = [`time (s),${names}`, ...rows].join('\n');
  return [
    // One frame of a screen at 60 Hz.
    {
      name: '50 x 10,000 points to pixels, whole',
      target: { median: 17 },
      ...measure(() => layOut(panels, { ...size, span: [0, 30] })),
    },
    {
      name: 'the same, a tenth of the time',
      ...measure(() => layOut(panels, { ...size, span: [12, 15] })),
    },
    { name: 'recording of 10,000 rows x 12 read', ...measure(() => core.readRecording(text)) },
  ];
};
