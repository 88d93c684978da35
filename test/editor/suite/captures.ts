import { command, openCase, resultOf, writeFile } from './caseInEditor.ts';
import { holds, test, until } from './testing.ts';

const text = `diag: 1
case: A log beside the case
---
capture: Log
as: log
file: log.csv
---
check: Does it swing?
expect:
  - max(log.front) > 0.5 V
`;

test('a capture is read from its file beside the case, and again when the case is run', async () => {
  await writeFile('log.csv', 'Time (s),front (V)\n0,0.1\n1,0.4\n');
  const opened = await openCase(text);
  const first = await until('a verdict', () => verdictIn(resultOf(opened.cell(2))));
  holds(first === 'fails', `the sensor does not swing: ${first}`);
  const capture = resultOf(opened.cell(1)) ?? '';
  holds(/columns parted by commas/.test(capture), `how it was read is shown: ${capture}`);
  await writeFile('log.csv', 'Time (s),front (V)\n0,0.1\n1,0.8\n2,0.2\n');
  await command('notebook.execute');
  await until('the verdict of the new log', () => verdictIn(resultOf(opened.cell(2))) === 'holds');
});

const verdictIn = (result: string | undefined): string | undefined =>
  /\*\*(holds|fails)\*\*|(holds|fails)\b/
    .exec(result ?? '')
    ?.slice(1)
    .find((each) => each !== undefined);
