import { cpSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { writeArchive } from '../../extension/build/writeArchive.ts';
import { writeExtension } from '../../extension/build/writeExtension.ts';
import { profileIn, writePlainSettings } from './harness/environment.ts';
import { openBrowser } from './harness/openBrowser.ts';
import { openWindow } from './harness/openWindow.ts';
import { installExtension, type RunningEditor, startServer } from './harness/startServer.ts';
import { OpenedWindow } from './window/openedWindow.ts';

/**
 * `npm run pictures`: drives the editor over the samples and writes what a reader of the README sees,
 * in light, dark and high contrast. `npm run pictures -- light chart` draws two of them.
 */
const root = join(import.meta.dirname, '..', '..');
const target = join(root, 'extension', 'pictures');
const scratch = join(root, 'out', 'pictures');

interface Picture {
  readonly name: string;
  readonly theme: string;
  readonly sample: string;
  /** What is done before the picture is taken. */
  readonly act?: (window: OpenedWindow) => Promise<void>;
}

const light = 'Default Light Modern';
const failure = async (window: OpenedWindow): Promise<void> => {
  await window.command('Diagnostic Casebook: Go to the Next Failure');
  // What stands beside the text comes a moment later.
  await window.cellLine('fast > drive ✓ holds').waitFor();
  await window.page.locator('.cell-status-item').filter({ hasText: '1 fails as announced' }).waitFor();
  // Results above that came late have moved it.
  await window.scrollTo('check: Does the trim fall', 150);
};
/** The chart of a cell is the last of its results: the next cell comes into sight below it. */
const chart = (window: OpenedWindow) => window.scrollTo('readings: Vacuum gauge at idle', 840);
const pictures: readonly Picture[] = [
  { name: 'light', theme: light, sample: 'plenum-leak.diag', act: failure },
  { name: 'dark', theme: 'Default Dark Modern', sample: 'plenum-leak.diag', act: failure },
  { name: 'high-contrast', theme: 'Default High Contrast', sample: 'plenum-leak.diag', act: failure },
  { name: 'chart', theme: light, sample: 'plenum-leak.diag', act: chart },
  {
    name: 'text',
    theme: light,
    sample: 'plenum-leak.diag',
    act: async (window) => {
      await window.command('Diagnostic Casebook: Open as Text');
      await window.textLine('diag: 1').waitFor();
      const found = () => window.page.locator('#status\\.problems').getAttribute('aria-label');
      await window.comesTo('what was found in the text alone', found, 'Infos: 6');
    },
  },
];

rmSync(scratch, { recursive: true, force: true });
mkdirSync(target, { recursive: true });
const profile = profileIn(scratch);
await writeExtension(root, join(scratch, 'extension'));
await writeArchive(join(scratch, 'extension'), join(scratch, 'casebook.vsix'));
await installExtension(join(scratch, 'casebook.vsix'), profile);
writePlainSettings(profile);
const browser = await openBrowser();
const server = await startServer(profile);
try {
  const wanted = process.argv.slice(2);
  for (const picture of pictures.filter(({ name }) => wanted.length === 0 || wanted.includes(name))) {
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
  const page = await openWindow(browser, server, {
    folder: workspace,
    settings: settings(theme),
    scale: 1.5,
  });
  const window = new OpenedWindow(page, workspace);
  await window.openNotebook(sample);
  // Side bars show nothing of ours.
  await window.command('View: Toggle Primary Side Bar Visibility');
  await page.waitForTimeout(2000);
  await act?.(window);
  // Away from everything that says something about itself.
  await page.mouse.move(640, 898);
  await writeStill(page, join(target, `${name}.png`));
  await page.context().close();
}

/** Takes the picture once it no longer changes. */
async function writeStill(page: Page, path: string): Promise<void> {
  let before: Buffer | undefined;
  for (let tries = 0; tries < 20; tries++) {
    await page.waitForTimeout(1500);
    const now = await page.screenshot();
    if (before?.equals(now)) {
      writeFileSync(path, now);
      return;
    }
    before = now;
  }
  throw new Error(`${path} keeps changing.`);
}

function settings(theme: string): Readonly<Record<string, unknown>> {
  return {
    'workbench.colorTheme': theme,
    'workbench.activityBar.location': 'hidden',
    'window.commandCenter': false,
    // biome-ignore lint/suspicious/noTemplateCurlyInString: The editor fills it in.
    'window.title': '${activeEditorShort}',
    'breadcrumbs.enabled': false,
    'editor.cursorBlinking': 'solid',
  };
}
