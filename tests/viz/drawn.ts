/** A part of the bay's drawings as it stands on the page, in millimetres of the aircraft. */
import type { Page } from 'playwright-core';

export const VIEWS = ['front', 'side', 'plan'] as const;
export type ViewName = (typeof VIEWS)[number];

/** Across and down the paper, mm, of a point of the aircraft, m: seen from ahead, from the left, from above. */
export const PAPER: Readonly<
  Record<ViewName, (p: { x: number; y: number; z: number }) => [number, number]>
> = {
  front: ({ y, z }) => [-1000 * y, -1000 * z],
  side: ({ x, z }) => [1000 * x, -1000 * z],
  plan: ({ x, y }) => [1000 * x, -1000 * y],
};

export interface Drawn {
  readonly box: { x: number; y: number; width: number; height: number };
  /** Points of a path, in its own group's millimetres. */
  readonly points: [number, number][];
  /** Millimetres to a pixel of the screen. */
  readonly mm: number;
  readonly classes: string;
}

/** A part of one of the drawings as it stands on the page. */
export function drawn(page: Page, view: ViewName, part: string): Promise<Drawn> {
  return page.locator(`ww-bay svg[data-view=${view}] ${part}`).evaluate((e) => {
    const shape = e as SVGGraphicsElement;
    const { x, y, width, height } = shape.getBBox();
    const numbers = (shape.getAttribute('d') ?? '').match(/-?\d+(\.\d+)?/g) ?? [];
    const points: [number, number][] = [];
    for (let i = 0; i + 1 < numbers.length; i += 2)
      points.push([Number(numbers[i]), Number(numbers[i + 1])]);
    const svg = shape.ownerSVGElement as SVGSVGElement;
    return {
      box: { x, y, width, height },
      points,
      mm: svg.viewBox.baseVal.width / svg.getBoundingClientRect().width,
      classes: shape.getAttribute('class') ?? '',
    };
  });
}
