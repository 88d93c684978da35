import { describe, expect, it } from 'vitest';
import { service } from '../../core/service/service.ts';
import {
  type CheckFileResult,
  checkFileRequest,
  forgetFilesNotification,
} from '../../extension/shared/protocol.ts';
import { Editor } from './editor.ts';

const uri = 'file:///cases/other.diag';
const wrong = 'diag: 1\ncase: Other\n---\nreadings: Idle\nvalues:\n  map: 13,1 inHg\n';
const right = wrong.replace('13,1', '13.1');

const check = (editor: Editor, text: string) => editor.ask<CheckFileResult>(checkFileRequest, { uri, text });

describe('a file that is not open', () => {
  it('is checked on demand: its findings are shown and counted', async () => {
    const editor = await Editor.start({ service });
    const { errors } = await check(editor, wrong);
    expect(errors).toBe(1);
    expect(editor.findings.get(uri)?.map((each) => [each.code, each.range.start])).toContainEqual([
      'decimal-comma',
      { line: 5, character: 7 },
    ]);
    expect((await check(editor, right)).errors).toBe(0);
  });

  it('is counted as the settings weigh its findings', async () => {
    const editor = await Editor.start({ service, settings: { severity: { 'decimal-comma': 'off' } } });
    expect((await check(editor, wrong)).errors).toBe(0);
  });

  it('loses its findings when they are taken back', async () => {
    const editor = await Editor.start({ service });
    await check(editor, wrong);
    await editor.connection.sendNotification(forgetFilesNotification);
    await editor.settled();
    expect(editor.findings.size).toBe(0);
  });

  it('is shown by its cells once it is opened', async () => {
    const editor = await Editor.start({ service });
    await check(editor, wrong);
    const notebook = await editor.openNotebook(uri, wrong);
    await editor.settled();
    expect([...editor.findings.keys()]).toEqual([notebook.uriOf(1)]);
    const counted = await check(editor, right);
    expect(counted.errors).toBe(1);
    expect(editor.findings.has(uri)).toBe(false);
  });
});
