import type { WindowTest } from './runInWindow.ts';

const text = 'diag: 1   # one\n---   # two\nnote: Words\nfor: teacher\n---\nreadings:  Idle\n';

/**
 * A case with unsaved changes, a window that is closed in the middle of it, and a new window: the changes must still
 * be there, and saving them must write what a text editor would have written.
 */
export const hotExit: WindowTest = {
  name: 'unsaved changes survive the end of a window',
  files: { 'case.diag': text },
  run: async (window) => {
    const { page } = window;
    await window.openNotebook('case.diag');
    await window.cellLine('readings').click();
    await window.press('End');
    await page.keyboard.type(' warm');
    await window.sees('the mark of unsaved changes', page.locator('.tab.dirty'));
    // The editor writes its backup of a remote file ten seconds after the last change.
    await page.waitForTimeout(13_000);
    await window.comesTo('the file that nobody saved', () => window.read('case.diag'), text);
    await page.reload();
    await window.sees('the unsaved words', window.cellLine('warm'), 60_000);
    await window.sees('the mark of unsaved changes', page.locator('.tab.dirty'));
    await window.cellLine('warm').click();
    await window.press('ControlOrMeta+s');
    await window.comesTo('the file', () => window.read('case.diag'), text.replace('Idle', 'Idle warm'));
  },
};
