import type { Page } from 'playwright-core';

/**
 * Opens a case by a double click in the list of files and waits until its cells are there. The editor knows that the
 * file is a notebook only once it has read the extension's manifest; until then it is text, and is closed again.
 */
export async function openNotebook(page: Page, file: string): Promise<void> {
  const entry = page.locator('.explorer-folders-view').getByText(file, { exact: true });
  await entry.waitFor({ timeout: 60_000 });
  for (let tries = 0; tries < 10; tries++) {
    await entry.dblclick();
    const line = page.locator('.notebook-editor .view-line').first();
    const isNotebook = await line.waitFor({ timeout: 5000 }).then(
      () => true,
      () => false,
    );
    if (isNotebook) return;
    const close = page.locator('.tab .codicon-close').first();
    if (await close.isVisible()) await close.click();
  }
  throw new Error(`${file} does not open as a notebook.`);
}
