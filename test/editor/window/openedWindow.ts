import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { giveCommand } from '../harness/openWindow.ts';

/** A folder that is open in a window of the editor, and the words in which a test works in it by hand. */
export class OpenedWindow {
  readonly page: Page;
  readonly folder: string;
  /** How many statements were made here. */
  statements = 0;

  constructor(page: Page, folder: string) {
    this.page = page;
    this.folder = folder;
  }

  write(file: string, text: string): void {
    writeFileSync(join(this.folder, file), text);
  }

  read(file: string): string {
    return readFileSync(join(this.folder, file), 'utf8');
  }

  async command(title: string): Promise<void> {
    await giveCommand(this.page, title);
  }

  async press(...keys: readonly string[]): Promise<void> {
    for (const key of keys) await this.page.keyboard.press(key);
  }

  /** Opens a file by a double click, whatever it turns out to be. */
  async openFile(file: string): Promise<void> {
    const entry = this.page.locator('.explorer-folders-view').getByText(file, { exact: true });
    await entry.waitFor({ timeout: 30_000 });
    await entry.dblclick();
  }

  /** Opens a case and waits until its cells are there. */
  async openNotebook(file: string): Promise<void> {
    await this.openFile(file);
    await this.cellLine('').waitFor({ timeout: 30_000 });
  }

  /** The first line of a cell's text that holds some words. */
  cellLine(words: string): Locator {
    return this.page
      .locator('.notebook-editor .view-line')
      .filter({ hasText: spaced(words) })
      .first();
  }

  /** Turns the wheel until a line of a cell stands no further down than `most`, in pixels of the page. */
  async scrollTo(words: string, most: number): Promise<void> {
    const { mouse } = this.page;
    const line = this.cellLine(words);
    await mouse.move(640, 500);
    for (let tries = 0; tries < 200; tries++) {
      const { y } = (await line.boundingBox({ timeout: 200 }).catch(() => null)) ?? {
        y: Number.POSITIVE_INFINITY,
      };
      if (y < most) return;
      await mouse.wheel(0, Math.min(300, y - most + 20));
      await this.page.waitForTimeout(100);
    }
    throw new Error(`"${words}" does not come into sight.`);
  }

  /** The first line of a file that is open as text that holds some words. */
  textLine(words: string): Locator {
    return this.page
      .locator('.editor-instance > .monaco-editor .view-line')
      .filter({ hasText: spaced(words) })
      .first();
  }

  /** A message in the corner of the window. */
  message(words: string | RegExp): Locator {
    return this.page.locator('.notification-list-item').filter({ hasText: words }).first();
  }

  /** A row of the list that opens at the top. */
  choice(words: string): Locator {
    return this.page.locator('.quick-input-list .monaco-list-row').filter({ hasText: words }).first();
  }

  /** Takes an offer at the cursor, as soon as the editor knows of it. */
  async takeOffer(title: string): Promise<void> {
    const offer = this.page.locator('.action-widget .monaco-list-row').filter({ hasText: title }).first();
    for (let tries = 0; tries < 10 && !(await offer.isVisible()); tries++) {
      await this.press('ControlOrMeta+.');
      await offer.waitFor({ timeout: 2000 }).catch(() => undefined);
    }
    await this.sees(`the offer "${title}"`, offer);
    await offer.click();
  }

  /** States that something comes to be seen. */
  async sees(what: string, where: Locator, patience = 30_000): Promise<void> {
    this.statements++;
    try {
      await where.waitFor({ timeout: patience });
    } catch {
      throw new Error(`Looked in vain for ${what}.`);
    }
  }

  /** States that a time in milliseconds is within its bound, and says it. */
  measured(what: string, milliseconds: number, bound: number): void {
    this.statements++;
    const ok = milliseconds <= bound;
    console.log(`  ${what}: ${milliseconds.toFixed(0)} ms, at most ${bound} ms: ${ok ? 'ok' : 'over'}`);
    if (!ok) throw new Error(`${what} took more than ${bound} ms.`);
  }

  /** States that what is found comes to be what it should be. */
  async comesTo<T>(what: string, find: () => T | Promise<T>, wanted: T, patience = 30_000): Promise<void> {
    this.statements++;
    const [text, end] = [JSON.stringify(wanted, null, 1), performance.now() + patience];
    for (;;) {
      const found = JSON.stringify(await find(), null, 1);
      if (found === text) return;
      if (performance.now() > end) throw new Error(`${what} is\n${found}\nand should be\n${text}`);
      await this.page.waitForTimeout(100);
    }
  }
}

/** The editor draws spaces as ones that do not break. */
function spaced(words: string): RegExp {
  return new RegExp(words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replaceAll(' ', '[ \\u00a0]'));
}
