import { describe, expect, it } from 'vitest';
import { chooseEditor, editorKind, type Ways } from './harness/chooseEditor.ts';
import { version } from './harness/desktopEditor.ts';

const minute = 60_000;
const works: Ways = {
  download: async () => '/editor/code',
  findDisplay: async () => {},
  start: async () => {},
};
const refused: Ways = { ...works, download: () => Promise.reject('getaddrinfo ENOTFOUND') };

describe('the editor of the suite', () => {
  it('is a desktop build where one can be had', async () => {
    const started: string[] = [];
    const ways: Ways = { ...works, start: async (executable) => void started.push(executable) };
    expect(await chooseEditor(ways, undefined, minute)).toEqual({
      kind: 'desktop',
      executable: '/editor/code',
    });
    expect(started).toEqual(['/editor/code']);
  });

  it('is the launcher where the download is refused, and says why', async () => {
    expect(await chooseEditor(refused, undefined, minute)).toEqual({
      kind: 'launcher',
      because: 'no desktop build can be had: getaddrinfo ENOTFOUND',
    });
  });

  it.each(['findDisplay', 'start'] as const)(
    'is the launcher where the desktop build fails in `%s`',
    async (way) => {
      const ways: Ways = { ...works, [way]: () => Promise.reject(new Error('there is no display')) };
      expect(await chooseEditor(ways, undefined, minute)).toEqual({
        kind: 'launcher',
        because: 'no desktop build can be had: there is no display',
      });
    },
  );

  it('does not wait for a download that says neither yes nor no', async () => {
    const ways: Ways = { ...works, download: () => new Promise(() => {}) };
    expect(await chooseEditor(ways, undefined, 20)).toEqual({
      kind: 'launcher',
      because: 'no desktop build can be had: it did not come within 0.02 s',
    });
  });

  it('is none when the desktop build was asked for and cannot be had', async () => {
    await expect(chooseEditor(refused, 'desktop', minute)).rejects.toThrow(
      'The desktop editor was asked for, and no desktop build can be had: getaddrinfo ENOTFOUND',
    );
  });

  it('downloads nothing when the launcher is asked for', async () => {
    const ways: Ways = { ...works, download: () => expect.fail('It was downloaded.') };
    expect(await chooseEditor(ways, 'launcher', minute)).toEqual({
      kind: 'launcher',
      because: 'it was asked for',
    });
  });

  it('is asked for by its name', () => {
    expect([undefined, '', 'desktop', 'launcher'].map(editorKind)).toEqual([
      undefined,
      undefined,
      'desktop',
      'launcher',
    ]);
    expect(() => editorKind('browser')).toThrow('There is no editor "browser": it is desktop or launcher.');
  });

  it('is of the same version either way', () => {
    expect(version()).toMatch(/^1\.\d+\.\d+$/);
  });
});
