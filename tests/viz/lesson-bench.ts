/** Ways about the lesson bench that its tests share. */
import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { shipped } from '../support/lessons.js';
import { settled } from './browser.js';

export const bench = (page: Page): Locator => page.locator('ww-lesson');
export const button = (page: Page, name: string | RegExp): Locator =>
  bench(page).getByRole('button', { name });
const title = (text: string): string => /^title: (.+)$/m.exec(text)?.[1] ?? '';
export const lesson = (name: string): (typeof shipped)[number] =>
  shipped.find((s) => s.file.endsWith(`/${name}.yaml`))!;

export async function openList(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Lesson', exact: true }).click();
  await bench(page).locator('.lessons').waitFor();
}

export async function take(page: Page, text: string): Promise<void> {
  await bench(page)
    .locator('.lessons button', { hasText: title(text) })
    .click();
  await bench(page).locator('.step').waitFor({ timeout: 90_000 });
  await settled(page);
}

export async function next(page: Page): Promise<void> {
  await button(page, /next step/i).click();
  await settled(page);
}

/** Goes to a step, leaving open what lies before. */
export async function goTo(page: Page, step: number): Promise<void> {
  for (let i = 1; i < step; i++) await button(page, /next step/i).click();
  await settled(page);
}

/** The text of the file that a deed gives the user. */
export async function saved(page: Page, deed: () => Promise<void>): Promise<string> {
  const [file] = await Promise.all([page.waitForEvent('download'), deed()]);
  return readFile(await file.path(), 'utf8');
}
