import { openCase } from './caseInEditor.ts';
import { holds, same, test, until } from './testing.ts';

const text = `diag: 1
case: Trim
---
readings: Idle
as: idle
values:
  map: 13.1 inHg
  rpm: 780 rpm
---
check: Is it low?
as: low
expect:
  - idle.map < 15 inHg
`;

test('results stand under the cells without being asked, and follow an edit', async () => {
  const opened = await openCase(text);
  const first = await until('a result', () => resultOf(opened.cell(2)));
  holds(/holds/.test(first), `the check holds: ${first}`);
  await opened.edit(1, '13.1', '15.2');
  const second = await until('the other verdict', () => {
    const result = resultOf(opened.cell(2));
    return result !== undefined && result !== first && result;
  });
  holds(/fails/.test(second), `the check fails: ${second}`);
  same(opened.cell(2).outputs.length, 1, 'the number of outputs');
});

function resultOf(cell: import('vscode').NotebookCell): string | undefined {
  const item = cell.outputs[0]?.items.find(({ mime }) => mime === 'text/markdown');
  return item === undefined ? undefined : new TextDecoder().decode(item.data);
}
