/** What is looked for on every page: rules of accessibility, words cut off. */
import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';

const axeSource = readFileSync(
  createRequire(import.meta.url).resolve('axe-core/axe.min.js'),
  'utf8',
);

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly target: unknown; readonly failureSummary?: string }[];
}

/** Rules of WCAG 2.1 A and AA and best practice, by axe-core. */
export async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  const found = await page.evaluate(async () => {
    const { axe } = window as unknown as {
      axe: { run: () => Promise<{ violations: Violation[] }> };
    };
    return (await axe.run()).violations;
  });
  return found.flatMap((v) =>
    v.nodes.map((n) => `${v.id}: ${JSON.stringify(n.target)} ${n.failureSummary ?? ''}`),
  );
}

/** Elements with words that stick out of the window sideways or are cut off by their own box. */
export function cutOff(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const out: string[] = [];
    const visit = (root: ParentNode): void => {
      for (const e of root.querySelectorAll('*')) {
        if (e.shadowRoot !== null) visit(e.shadowRoot);
        if (
          e.matches(':not(.aside) > * > tr > :is(td:not(.flags), th)') &&
          e.scrollWidth > e.clientWidth + 1
        )
          out.push(`table cell "${e.textContent?.trim().slice(0, 40)}" cut off`);
        if (
          !(e instanceof HTMLElement) ||
          e.closest('.aside') !== null ||
          e.childElementCount > 0 ||
          e.textContent?.trim() === ''
        )
          continue;
        const box = e.getBoundingClientRect();
        if (box.width === 0) continue;
        const name = `${e.localName} "${e.textContent?.trim().slice(0, 40)}"`;
        if (box.left < -1 || box.right > innerWidth + 1) out.push(`${name} outside the window`);
        const style = getComputedStyle(e);
        // For a screen reader only.
        if (style.clipPath === 'inset(50%)') continue;
        if (
          style.textOverflow !== 'ellipsis' &&
          style.display !== 'inline' &&
          e.scrollWidth > e.clientWidth + 1
        )
          out.push(`${name} cut off`);
      }
    };
    visit(document);
    if (document.documentElement.scrollWidth > innerWidth)
      out.push(`page ${document.documentElement.scrollWidth} wide`);
    // Beside each other the panels scroll, the page does not.
    const wide = innerWidth >= 1100 && document.querySelector('ww-app') !== null;
    if (wide && document.documentElement.scrollHeight > innerHeight)
      out.push(`page ${document.documentElement.scrollHeight} high`);
    return out;
  });
}
