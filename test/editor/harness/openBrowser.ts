import sparticuz from '@sparticuz/chromium';
import { type Browser, chromium } from 'playwright-core';

/**
 * A browser without a window. `CASEBOOK_CHROMIUM` names another Chromium than the one that the package ships
 * (which is for Linux on x64).
 */
export async function openBrowser(): Promise<Browser> {
  // Nothing here is drawn in three dimensions.
  sparticuz.setGraphicsMode = false;
  const own = process.env.CASEBOOK_CHROMIUM;
  const executablePath = own ?? (await sparticuz.executablePath());
  const args = [...(own === undefined ? sparticuz.args : []), '--no-sandbox'].filter(
    // A single process hangs with iframes, and the test's page is no stranger.
    (arg) =>
      !/^--(single-process|no-zygote|headless|window-size|start-maximized|font-render-hinting)/.test(arg),
  );
  try {
    return await chromium.launch({ executablePath, args: [...args, '--headless=shell'], headless: true });
  } catch (problem) {
    throw new Error(`The browser for the tests could not be started (${executablePath}): ${String(problem)}`);
  }
}
