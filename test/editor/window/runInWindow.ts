import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { profileIn, writePlainSettings } from '../harness/environment.ts';
import { openBrowser } from '../harness/openBrowser.ts';
import { openWindow } from '../harness/openWindow.ts';
import { freshFolder, packExtension } from '../harness/prepare.ts';
import { installExtension, type RunningEditor, startServer } from '../harness/startServer.ts';
import type { Outcome } from '../suite/testing.ts';
import { hotExit } from './hotExit.ts';
import { OpenedWindow } from './openedWindow.ts';
import { speedTests } from './speedTests.ts';
import { windowTests } from './windowTests.ts';

/** What a person does and sees in the window; no other door than the mouse and the keyboard. */
export interface WindowTest {
  readonly name: string;
  /** Files of the folder that is opened, by name. */
  readonly files: Readonly<Record<string, string>>;
  readonly run: (window: OpenedWindow) => Promise<void>;
}

/**
 * Runs the tests by hand, each in a window and a folder of its own; the one that has to wait for the editor's backup
 * runs beside the others. `only`: a piece of the names of the tests that are wanted. What the window showed at the
 * end of a test is kept beside its folder.
 */
export async function runInWindow(only: string): Promise<readonly Outcome[]> {
  return inOneServer([[hotExit], windowTests], only);
}

/** Those that judge speed, one after the other. */
export async function runForSpeed(only: string): Promise<readonly Outcome[]> {
  return inOneServer([speedTests], only);
}

/** Lists run beside each other, each test of a list after the one before. */
async function inOneServer(
  lists: readonly (readonly WindowTest[])[],
  only: string,
): Promise<readonly Outcome[]> {
  const isWanted = ({ name }: WindowTest) => name.includes(only);
  if (!lists.flat().some(isWanted)) return [];
  const folder = freshFolder('window');
  const profile = profileIn(folder);
  await installExtension(await packExtension(folder, 'process'), profile);
  writePlainSettings(profile);
  const browser = await openBrowser();
  const server = await startServer(profile);
  const run = async (tests: readonly WindowTest[]): Promise<readonly Outcome[]> => {
    const outcomes: Outcome[] = [];
    for (const each of tests.filter(isWanted)) outcomes.push(await runTest(each, browser, server, folder));
    return outcomes;
  };
  try {
    return (await Promise.all(lists.map(run))).flat();
  } finally {
    await browser.close();
    await server.stop();
  }
}

async function runTest(
  { name, files, run }: WindowTest,
  browser: Browser,
  server: RunningEditor,
  folder: string,
): Promise<Outcome> {
  const start = performance.now();
  const own = join(folder, name.replaceAll(/[^a-z0-9]+/gi, '-'));
  mkdirSync(own);
  let problem: string | null = null;
  let statements = 0;
  try {
    const window = new OpenedWindow(await openWindow(browser, server, { folder: own, files }), own);
    try {
      await run(window);
      if (window.statements === 0) problem = 'It states nothing.';
    } finally {
      statements = window.statements;
      await window.page.screenshot({ path: `${own}.png` });
      await window.page.context().close();
    }
  } catch (thrown) {
    problem = thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown);
  }
  const milliseconds = Math.round(performance.now() - start);
  console.log(
    problem === null
      ? `✓ ${name} (${milliseconds} ms)`
      : `✗ ${name} (${milliseconds} ms)\n${problem}\nSee ${own}.png.`,
  );
  return { name, problem, milliseconds, statements };
}
