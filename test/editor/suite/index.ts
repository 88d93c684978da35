import * as vscode from 'vscode';
import './activation.ts';
import './bytes.ts';
import './captures.ts';
import './commands.ts';
import './firstChart.ts';
import './results.ts';
import { closeEverything, folder } from './caseInEditor.ts';
import { cases, isProcess, type Outcome, runCase } from './testing.ts';

/** What the editor calls: runs every test and leaves the outcomes in the folder that is open. */
export async function run(): Promise<void> {
  const outcomes: Outcome[] = [];
  for (const each of cases.filter(({ name }) => name.includes(only))) {
    const outcome = await runCase(each);
    outcomes.push(outcome);
    const sign = outcome.problem === null ? '✓' : '✗';
    const words = outcome.problem === null ? '' : `\n${outcome.problem}`;
    console.log(`[casebook] ${sign} ${each.name} (${outcome.milliseconds} ms)${words}`);
    await closeEverything();
  }
  const host = isProcess ? 'process' : 'web worker';
  const text = JSON.stringify({ host, version: vscode.version, outcomes });
  await vscode.workspace.fs.writeFile(
    vscode.Uri.joinPath(folder(), 'outcomes.json'),
    new TextEncoder().encode(text),
  );
  const failed = outcomes.filter(({ problem }) => problem !== null).length;
  if (failed > 0) throw new Error(`${failed} of ${outcomes.length} editor tests failed.`);
}

/** Put in by the build: a piece of the names of the tests that are wanted. */
declare const only: string;
