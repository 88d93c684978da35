import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

export interface Profile {
  /** Where extensions are installed. */
  readonly extensions: string;
  /** Where the editor keeps its own data. */
  readonly data: string;
}

export const profileIn = (folder: string): Profile => ({
  extensions: join(folder, 'extensions'),
  data: join(folder, 'data'),
});

/**
 * A user's settings that show nothing but the case: no welcome, no chat, no offers of other products, and no saving
 * that nobody asked for. The settings of a folder come too late for some of them.
 */
export function writePlainSettings({ data }: Profile): void {
  const folder = join(data, 'data', 'User');
  mkdirSync(folder, { recursive: true });
  const settings = {
    'workbench.startupEditor': 'none',
    'workbench.secondarySideBar.defaultVisibility': 'hidden',
    'chat.disableAIFeatures': true,
    'files.autoSave': 'off',
    'git.enabled': false,
  };
  writeFileSync(join(folder, 'settings.json'), JSON.stringify(settings));
}

/** What an editor that this was started from would hand on: an editor that is started from here must not talk to it. */
const handedOn = /^(VSCODE|ELECTRON|NODE_OPTIONS)/;

export function withoutEditor(): NodeJS.ProcessEnv {
  return Object.fromEntries(Object.entries(process.env).filter(([name]) => !handedOn.test(name)));
}

/** The same as changes to an environment: what is undefined is taken out. */
export function editorTakenOut(): { readonly [name: string]: undefined } {
  const names = Object.keys(process.env).filter((name) => handedOn.test(name));
  return Object.fromEntries(names.map((name) => [name, undefined]));
}
