import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import type { RunningEditor } from './startServer.ts';

export interface WindowOptions {
  /** The folder that is opened; its settings are written anew, and what stands in `files` by name. */
  readonly folder: string;
  readonly files?: Readonly<Record<string, string>>;
  readonly settings?: Readonly<Record<string, unknown>>;
  readonly viewport?: { readonly width: number; readonly height: number };
  /** How many pixels of a picture are one of the page. */
  readonly scale?: number;
}

/** Opens a folder in a window of its own and waits until the extension is known there. */
export async function openWindow(
  browser: Browser,
  { url }: RunningEditor,
  { folder, files = {}, settings = {}, viewport = { width: 1280, height: 900 }, scale = 1 }: WindowOptions,
): Promise<Page> {
  mkdirSync(join(folder, '.vscode'), { recursive: true });
  writeFileSync(join(folder, '.vscode', 'settings.json'), JSON.stringify(settings));
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  const context = await browser.newContext({ viewport, deviceScaleFactor: scale });
  const page = await context.newPage();
  // "Leave this page?" when there are unsaved changes.
  page.on('dialog', (dialog) => void dialog.accept());
  await page.goto(`${url}?folder=${folder}`);
  await page.locator('.monaco-workbench .explorer-folders-view').waitFor({ timeout: 60_000 });
  await knowsCommand(page, 'Diagnostic Casebook: New Case');
  return page;
}

/** Until the editor has read the manifest, a case is a text like any other. */
async function knowsCommand(page: Page, title: string): Promise<void> {
  for (let tries = 0; tries < 30; tries++) {
    const isThere = await isSeen(await find(page, title), 1000);
    await page.keyboard.press('Escape');
    await page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
    if (isThere) return;
  }
  throw new Error(`The editor does not come to know "${title}".`);
}

/** Gives a command by its title, as a person does from the palette; once more where the palette closed before the click. */
export async function giveCommand(page: Page, title: string): Promise<void> {
  for (let tries = 0; tries < 5; tries++) {
    const row = await find(page, title);
    const isGiven = await row.click({ timeout: 5000 }).then(
      () => true,
      () => false,
    );
    if (isGiven) return;
    await page.keyboard.press('Escape');
  }
  throw new Error(`The palette closes before "${title}" can be chosen.`);
}

/** Looks for a command in the palette, which whatever takes the focus meanwhile closes again. */
async function find(page: Page, title: string): Promise<Locator> {
  const input = page.locator('.quick-input-widget input.input');
  for (let tries = 0; tries < 10; tries++) {
    await page.keyboard.press('F1');
    if (!(await isSeen(input, 2000))) continue;
    const isFilled = await input.fill(`>${title}`, { timeout: 2000 }).then(
      () => true,
      () => false,
    );
    if (isFilled)
      return page.locator('.quick-input-list .monaco-list-row').filter({ hasText: title }).first();
  }
  throw new Error('The palette does not open.');
}

async function isSeen(what: Locator, patience: number): Promise<boolean> {
  return what.waitFor({ timeout: patience }).then(
    () => true,
    () => false,
  );
}
