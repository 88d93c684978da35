import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openBrowser } from './harness/openBrowser.ts';
import { openNotebook } from './harness/openNotebook.ts';
import { type Profile, startServer } from './harness/startServer.ts';
import type { Outcome } from './suite/testing.ts';

/**
 * A case with unsaved changes, a window that is closed in the middle of it, and a new window: the changes must still
 * be there, and saving them must write what a text editor would have written. Works by hand, through the window.
 */
export async function hotExit(folder: string, profile: Profile): Promise<Outcome> {
  const name = 'unsaved changes survive the end of a window';
  const start = performance.now();
  const outcome = (problem: string | null): Outcome => ({
    name,
    problem,
    milliseconds: Math.round(performance.now() - start),
    statements: 2,
  });
  const workspace = join(folder, 'closed');
  const file = join(workspace, 'case.diag');
  const text = 'diag: 1   # one\n---   # two\nnote: Words\nfor: teacher\n---\nreadings:  Idle\n';
  mkdirSync(join(workspace, '.vscode'), { recursive: true });
  writeFileSync(file, text);
  const settings = {
    'workbench.startupEditor': 'none',
    'files.autoSave': 'off',
    'chat.disableAIFeatures': true,
  };
  writeFileSync(join(workspace, '.vscode', 'settings.json'), JSON.stringify(settings));
  const server = await startServer(profile);
  const browser = await openBrowser();
  try {
    const context = await browser.newContext({ viewport: { width: 1200, height: 900 } });
    const page = await context.newPage();
    page.on('dialog', (dialog) => void dialog.accept());
    await page.goto(`${server.url}?folder=${workspace}`);
    await openNotebook(page, 'case.diag');
    await page.locator('.notebook-editor .view-line').filter({ hasText: 'readings' }).first().click();
    await page.keyboard.press('End');
    await page.keyboard.type(' warm');
    await page.locator('.tab.dirty').waitFor();
    // The editor writes its backup of a remote file ten seconds after the last change.
    await page.waitForTimeout(13_000);
    if (readFileSync(file, 'utf8') !== text) return outcome('The file was written without being saved.');
    await page.reload();
    await page
      .locator('.notebook-editor .view-line')
      .filter({ hasText: 'warm' })
      .first()
      .waitFor({ timeout: 60_000 });
    await page.locator('.tab.dirty').waitFor();
    await page.locator('.notebook-editor .view-line').filter({ hasText: 'warm' }).first().click();
    await page.keyboard.press('ControlOrMeta+s');
    // Not "a tab without unsaved changes": another tab may be one, long before this one is saved.
    await page.locator('.tab.dirty').waitFor({ state: 'detached' });
    const wanted = text.replace('Idle', 'Idle warm');
    let saved = readFileSync(file, 'utf8');
    for (let tries = 0; saved !== wanted && tries < 50; tries++) {
      await page.waitForTimeout(100);
      saved = readFileSync(file, 'utf8');
    }
    return outcome(saved === wanted ? null : `The file is\n${saved}\nand should be\n${wanted}`);
  } catch (problem) {
    return outcome(String(problem));
  } finally {
    await browser.close();
    await server.stop();
  }
}
