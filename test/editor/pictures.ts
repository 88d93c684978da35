import { cpSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { writeArchive } from '../../extension/build/writeArchive.ts';
import { writeExtension } from '../../extension/build/writeExtension.ts';
import { openBrowser } from './harness/openBrowser.ts';
import { openNotebook } from './harness/openNotebook.ts';
import { installExtension, profileIn, type RunningEditor, startServer } from './harness/startServer.ts';

/**
 * `npm run pictures`: drives the editor over the samples and writes what a reader of the README sees,
 * in light, dark and high contrast.
 */
const root = join(import.meta.dirname, '..', '..');
const target = join(root, 'extension', 'pictures');
const scratch = join(root, 'out', 'pictures');

interface Picture {
  readonly name: string;
  readonly theme: string;
  readonly sample: string;
  /** What is done before the picture is taken. */
  readonly act?: (page: Page) => Promise<void>;
}

const light = 'Default Light Modern';
const failure = (page: Page) => command(page, 'Diagnostic Casebook: Go to the Next Failure');
const pictures: readonly Picture[] = [
  { name: 'light', theme: light, sample: 'plenum-leak.diag', act: failure },
  { name: 'dark', theme: 'Default Dark Modern', sample: 'plenum-leak.diag', act: failure },
  { name: 'high-contrast', theme: 'Default High Contrast', sample: 'plenum-leak.diag', act: failure },
  { name: 'top', theme: light, sample: 'half-worked-case.diag' },
  {
    name: 'text',
    theme: light,
    sample: 'plenum-leak.diag',
    act: (page) => command(page, 'Diagnostic Casebook: Open as Text'),
  },
];

rmSync(scratch, { recursive: true, force: true });
mkdirSync(target, { recursive: true });
const profile = profileIn(scratch);
await writeExtension(root, join(scratch, 'extension'));
await writeArchive(join(scratch, 'extension'), join(scratch, 'casebook.vsix'));
await installExtension(join(scratch, 'casebook.vsix'), profile);
const server = await startServer(profile);
const browser = await openBrowser();
try {
  for (const picture of pictures) {
    await take(browser, server, picture);
    console.log(`Drew extension/pictures/${picture.name}.png`);
  }
} finally {
  await browser.close();
  await server.stop();
}

async function take(
  browser: Browser,
  server: RunningEditor,
  { name, theme, sample, act }: Picture,
): Promise<void> {
  const workspace = join(scratch, name, 'cases');
  cpSync(join(root, 'samples'), workspace, { recursive: true });
  mkdirSync(join(workspace, '.vscode'));
  writeFileSync(join(workspace, '.vscode', 'settings.json'), JSON.stringify(settings(theme)));
  const context = await browser.newContext({
    viewport: { width: 1280, height: 900 },
    deviceScaleFactor: 1.5,
  });
  const page = await context.newPage();
  await page.goto(`${server.url}?folder=${workspace}`);
  await openNotebook(page, sample);
  // Side bars show nothing of ours.
  await command(page, 'View: Close Primary Side Bar');
  await page.waitForTimeout(2000);
  await act?.(page);
  await page.waitForTimeout(1500);
  await page.screenshot({ path: join(target, `${name}.png`) });
  await context.close();
}

async function command(page: Page, name: string): Promise<void> {
  await page.keyboard.press('F1');
  const input = page.locator('.quick-input-widget input');
  await input.waitFor();
  await input.fill(`>${name}`);
  await page.locator('.quick-input-list .monaco-list-row').first().waitFor();
  await page.keyboard.press('Enter');
  await input.waitFor({ state: 'hidden' });
}

function settings(theme: string): object {
  return {
    'workbench.colorTheme': theme,
    'workbench.startupEditor': 'none',
    'chat.disableAIFeatures': true,
    'workbench.activityBar.location': 'hidden',
    'window.commandCenter': false,
    'workbench.secondarySideBar.defaultVisibility': 'hidden',
    'files.autoSave': 'off',
    'breadcrumbs.enabled': false,
  };
}
