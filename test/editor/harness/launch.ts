#!/usr/bin/env node
import { mkdirSync, writeFileSync } from 'node:fs';
import * as path from 'node:path';
import { parseArgs } from 'node:util';
import { openBrowser } from './openBrowser.ts';
import { startServer } from './startServer.ts';

/**
 * Takes the place of a desktop editor's program where there is none to download: started with the same arguments
 * (`--extensionDevelopmentPath`, `--extensionTestsPath`, a folder), it serves the editor, opens it in a browser without
 * a window, and exits with the status of the tests.
 *
 * `CASEBOOK_EDITOR_PATIENCE`: milliseconds until tests that do not end are given up.
 */
const { values, positionals } = parseArgs({
  strict: false,
  allowPositionals: true,
  options: {
    extensionDevelopmentPath: { type: 'string' },
    extensionDevelopmentKind: { type: 'string' },
    extensionTestsPath: { type: 'string' },
    'extensions-dir': { type: 'string' },
    'user-data-dir': { type: 'string' },
  },
});
const folder = positionals[0];
if (folder === undefined) throw new Error('A folder to open must be given.');

const profile = { extensions: given('extensions-dir'), data: given('user-data-dir') };
// First what goes by itself when the other cannot be had.
const browser = await openBrowser();
const server = await startServer(profile, { runsTests: true });
let status = 1;
const browserLog: string[] = [];
try {
  status = await runTests();
} finally {
  await browser.close();
  await server.stop();
}
process.exit(status);

async function runTests(): Promise<number> {
  const page = await browser.newPage({ viewport: { width: 1400, height: 1000 } });
  let resolve: (code: number) => void = () => {};
  let reject: (reason: Error) => void = () => {};
  const ended = new Promise<number>((...settle) => {
    [resolve, reject] = settle;
  });
  await page.exposeFunction('codeAutomationLog', (type: string, args: readonly unknown[]) => {
    const words = args.filter((each) => typeof each !== 'string' || !/^(%c|color:|background:)/.test(each));
    // Reports of the tests only: the editor's own chatter goes to the log.
    if (words.some((each) => typeof each === 'string' && each.startsWith('[casebook] '))) {
      console.log(words.join(' ').replace('[casebook] ', ''));
    } else
      browserLog.push(
        `${type}: ${words.map((each) => (typeof each === 'string' ? each : JSON.stringify(each))).join(' ')}`,
      );
  });
  await page.exposeFunction('codeAutomationExit', (code: number) => resolve(code));
  page.on('pageerror', (problem) => browserLog.push(`page: ${problem.message}`));
  page.on('crash', () => reject(new Error('The page crashed.')));
  const patience = Number(process.env.CASEBOOK_EDITOR_PATIENCE ?? 300_000);
  const alarm = setTimeout(() => reject(new Error(`The tests did not end within ${patience} ms.`)), patience);
  const remote = (file: string) => `vscode-remote://127.0.0.1:${server.port}${path.resolve(file)}`;
  const { extensionDevelopmentKind: kind } = values;
  const payload = [
    ...(typeof kind === 'string' ? [['extensionDevelopmentKind', kind]] : []),
    ['extensionDevelopmentPath', remote(given('extensionDevelopmentPath'))],
    ['extensionTestsPath', remote(given('extensionTestsPath'))],
  ];
  const query = new URLSearchParams({ folder: path.resolve(folder ?? ''), payload: JSON.stringify(payload) });
  let code = 1;
  try {
    await page.goto(`${server.url}?${query}`);
    code = await ended;
  } catch (problem) {
    console.error(String(problem));
  }
  clearTimeout(alarm);
  if (code !== 0) await keepEvidence((file) => page.screenshot({ path: file }));
  return code;
}

/** What the page, its console and the server showed at the end of a run that failed. */
async function keepEvidence(screenshot: (file: string) => Promise<unknown>): Promise<void> {
  const stem = path.join(given('user-data-dir'), '..', 'evidence');
  mkdirSync(path.dirname(stem), { recursive: true });
  writeFileSync(`${stem}-browser.log`, browserLog.join('\n'));
  writeFileSync(`${stem}-server.log`, server.log());
  await screenshot(`${stem}.png`).catch(() => undefined);
  console.error(`See ${path.resolve(`${stem}.png`)} and the logs beside it.`);
}

function given(name: keyof typeof values): string {
  const value = values[name];
  if (typeof value !== 'string') throw new Error(`--${name} must be given.`);
  return value;
}
