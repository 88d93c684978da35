import * as vscode from 'vscode';
import { CaseInEditor, command, openCase, readText, resultOf } from './caseInEditor.ts';
import { holds, pause, same, test, until } from './testing.ts';

const text = `# kept by the fleet's workshop
---   # the header
diag: 1
case:   "Hunts at idle"      # quoted, spaced
---
note: |
  # What to look at

  The *needle*.
for: teacher   # not for students
---
readings: Idle
as: idle
values: {map:  13.1 inHg,  rpm: 780 rpm}   # as typed
---
check: Is it low?
expect:
  - idle.map < 15 inHg
`;

const [, header, note, readings, check] = text.split(/^---.*\n/m) as [string, string, string, string, string];

test('a file that is opened and saved is the same file', async () => {
  for (const content of [
    text,
    text.replaceAll('\n', '\r\n'),
    `\ufeff${text.trimEnd()}`,
    text.replace('\n---\nc', '\r\n---\r\nc'),
  ]) {
    const opened = await openCase(content);
    same(await readText(opened.uri), content, 'the file before');
    // Marks the notebook as changed without a change to what it says.
    await opened.edit(2, '13.1', '13.2');
    await opened.edit(2, '13.2', '13.1');
    holds(opened.notebook.isDirty, 'the notebook has unsaved changes');
    same(await opened.saved(), content, 'the file after');
  }
});

test('notes are pages, everything else is text', async () => {
  const opened = await openCase(text);
  const kinds = opened.notebook.getCells().map(({ kind, document }) => `${kind} ${document.languageId}`);
  same(kinds, ['2 diag', '1 markdown', '2 diag', '2 diag']);
  same(opened.cell(1).document.getText(), '# What to look at\n\nThe *needle*.');
});

test('an edit changes in the file what was typed and nothing else', async () => {
  const opened = await openCase(text);
  await opened.edit(2, '13.1', '13.4');
  same(await opened.saved(), text.replace('13.1', '13.4'));
  await opened.edit(1, '*needle*', '*needle*\n\nAnd the hose');
  same(await opened.saved(), text.replace('13.1', '13.4').replace('*needle*', '*needle*\n\n  And the hose'));
});

test('typing with the keyboard, undo and redo', async () => {
  const opened = await openCase(text);
  await opened.putCursor(2, 'map:');
  await command('type', { text: 'baro: 29.9 inHg, ' });
  const typed = text.replace('map:', 'baro: 29.9 inHg, map:');
  same(await opened.saved(), typed, 'typed');
  await opened.putCursor(2, 'baro');
  // The editor takes typing back word by word.
  const steps = await repeat('undo', () => !opened.cell(2).document.getText().includes('baro'));
  same(await opened.saved(), text, 'undone');
  await opened.putCursor(2, 'map:');
  same(await repeat('redo', () => opened.values()[2]?.includes('inHg, map:') === true), steps, 'the steps');
  same(await opened.saved(), typed, 'redone');
});

/** Gives a command until something is so, and tells how often. */
async function repeat(name: string, isDone: () => boolean): Promise<number> {
  for (let times = 1; times < 20; times++) {
    await command(name);
    await pause(100);
    if (isDone()) return times;
  }
  throw new Error(`${name} was given in vain.`);
}

test('moving a cell moves its lines, and back', async () => {
  const opened = await openCase(text);
  await opened.select(2);
  await command('notebook.cell.moveDown');
  await until('the move', () => opened.cell(2).document.getText().startsWith('check'));
  const moved = text.replace(`---\n${readings}---\n${check}`, `---\n${check}---\n${readings}`);
  same(await opened.saved(), moved, 'moved');
  await command('undo');
  await until('the undo', () => opened.cell(2).document.getText().startsWith('readings'));
  same(await opened.saved(), text, 'undone');
});

test('a header that is moved below another cell gets its line', async () => {
  const opened = await openCase(`${header}---\n${check}`);
  await opened.select(0);
  await command('notebook.cell.moveDown');
  await until('the move', () => opened.cell(0).document.getText().startsWith('check'));
  same(await opened.saved(), `---\n${check}---\n${header}`);
});

test('copying a cell copies its lines', async () => {
  const opened = await openCase(text);
  await opened.select(1);
  await command('notebook.cell.copyDown');
  await until('the copy', () => opened.notebook.cellCount === 5);
  await until('what the note is for', () => opened.cell(2).metadata.source !== undefined);
  same(await opened.saved(), text.replace(`---\n${note}`, `---\n${note}---\n${note}`));
});

test('cutting and pasting a note keeps whom it is for', async () => {
  const opened = await openCase(text);
  await opened.select(1);
  await command('notebook.cell.cut');
  await until('the cut', () => opened.notebook.cellCount === 3);
  await opened.select(1);
  await command('notebook.cell.paste');
  await until('the paste', () => opened.notebook.cellCount === 4);
  await until('what the note is for', () => opened.cell(2).metadata.source !== undefined);
  const without = text.replace(`---\n${note}`, '');
  same(await opened.saved(), without.replace(readings, `${readings}---\n${note}`));
});

test('cutting and pasting a cell', async () => {
  const opened = await openCase(text);
  await opened.select(3);
  await command('notebook.cell.cut');
  await until('the cut', () => opened.notebook.cellCount === 3);
  same(await opened.saved(), text.replace(`---\n${check}`, ''), 'cut');
  await opened.select(2);
  await command('notebook.cell.paste');
  await until('the paste', () => opened.notebook.cellCount === 4);
  same(await opened.saved(), text, 'pasted');
});

test('splitting a cell is typing a line `---` at the cursor, joining is taking it away', async () => {
  const opened = await openCase(text);
  await opened.putCursor(3, 'expect:');
  await command('notebook.cell.split');
  await until('the split', () => opened.notebook.cellCount === 5);
  same(await opened.saved(), text.replace('expect:', '\n---\nexpect:'), 'split');
  await command('undo');
  await until('the undo', () => opened.notebook.cellCount === 4);
  same(await opened.saved(), text, 'undone');
  await command('redo');
  await until('the split', () => opened.notebook.cellCount === 5);
  await opened.select(3);
  await command('notebook.cell.joinBelow');
  await until('the join', () => opened.notebook.cellCount === 4);
  same(await opened.saved(), text.replace('expect:', '\nexpect:'), 'joined');
});

test('deleting a cell takes its lines, undo brings them back', async () => {
  const opened = await openCase(text);
  await opened.select(1);
  await command('notebook.cell.delete');
  await until('the deletion', () => opened.notebook.cellCount === 3);
  same(await opened.saved(), text.replace(`---\n${note}`, ''), 'deleted');
  await command('undo');
  await until('the undo', () => opened.notebook.cellCount === 4);
  same(await opened.saved(), text, 'undone');
});

test('a new cell gets a line and the line break of the file', async () => {
  for (const lineBreak of ['\n', '\r\n']) {
    const opened = await openCase(text.replaceAll('\n', lineBreak));
    await opened.select(3);
    await command('notebook.cell.insertCodeCellBelow');
    await until('the cell', () => opened.notebook.cellCount === 5);
    await command('type', { text: 'repair: Hose' });
    await until('the text', () => opened.cell(4).document.getText() === 'repair: Hose');
    same(await opened.saved(), `${text}---\nrepair: Hose\n`.replaceAll('\n', lineBreak));
  }
});

test('a page that becomes text, and text that becomes a page', async () => {
  const opened = await openCase('diag: 1\n---\ncheck: A\n');
  await opened.select(1);
  await command('notebook.cell.changeToMarkdown');
  await until('the change', () => opened.cell(1).kind === vscode.NotebookCellKind.Markup);
  same(await opened.saved(), 'diag: 1\n---\nnote: |\n  check: A\n', 'a page');
  await opened.select(1);
  await command('notebook.cell.changeToCode');
  await until('the change', () => opened.cell(1).kind === vscode.NotebookCellKind.Code);
  same(await opened.saved(), 'diag: 1\n---\ncheck: A\n', 'text');
});

test('reverting brings the file back', async () => {
  const opened = await openCase(text);
  await until('a result', () => resultOf(opened.cell(3)));
  await opened.putCursor(2, '13.1');
  await command('type', { text: '99' });
  await until('the verdict', () => resultOf(opened.cell(3))?.includes('fails'));
  await command('workbench.action.files.revert');
  await until('the revert', () => opened.cell(2).document.getText() === readings.trimEnd());
  await until('the mark to go', () => !opened.notebook.isDirty);
  same(await readText(opened.uri), text);
});

test('results mark nothing as changed', async () => {
  const opened = await openCase(text);
  await until('results', () => opened.cell(3).outputs.length > 0);
  holds(!opened.notebook.isDirty, 'the notebook has no unsaved changes');
  same(await readText(opened.uri), text);
});

test('a file that is not UTF-8 or holds the marks of a merge is not opened as a notebook', async () => {
  const merged = text.replace('case:', '<<<<<<< ours\ncase: a\n=======\ncase: b\n>>>>>>> theirs\ncase:');
  const reasons: string[] = [];
  for (const content of [merged, new Uint8Array([0x64, 0xff, 0xfe])]) {
    const refused = await openCase(content).then(
      () => 'it was opened',
      (problem: Error) => problem.message,
    );
    reasons.push(refused);
  }
  holds(/merge that was not finished \(line 4\)/.test(reasons[0] ?? ''), `the merge is named: ${reasons[0]}`);
  holds(/not UTF-8/.test(reasons[1] ?? ''), `the encoding is named: ${reasons[1]}`);
});

test('a new case can be saved under a name', async () => {
  await command('diag.newCase', 'empty-case');
  const editor = await until('the case', () => vscode.window.activeNotebookEditor);
  const opened = new CaseInEditor(editor.notebook.uri, editor);
  holds(opened.notebook.isUntitled, 'it has no name yet');
  holds(opened.values()[0]?.startsWith('diag: 1') === true, 'it starts with the header');
});
