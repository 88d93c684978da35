import { commands, type Disposable, window } from 'vscode';
import type { InsertedKind } from './cellTemplates.ts';

/** The commands of the manifest, without their prefix. */
export type CommandName =
  | 'newCase'
  | 'insertCell'
  | `insertCell.${InsertedKind}`
  | 'insertCapture'
  | 'openAsText'
  | 'openAsNotebook'
  | 'showFirstFailure'
  | 'splitCellAtSeparators'
  | 'checkWorkspace';

/** Registers a command; what it cannot do is told to the user in its own words. */
export function command(name: CommandName, run: (argument: unknown) => unknown): Disposable {
  return commands.registerCommand(`diag.${name}`, async (argument: unknown) => {
    try {
      return await run(argument);
    } catch (problem) {
      const words = problem instanceof Error ? problem.message : String(problem);
      void window.showErrorMessage(words);
      return undefined;
    }
  });
}
