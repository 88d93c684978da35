import { chartKinds } from '../../casefile/kinds/chartKinds.ts';
import type { Key, Keys, Kind } from '../../casefile/kinds/key.ts';
import { kinds } from '../../casefile/kinds/kinds.ts';
import { everyKey } from '../../casefile/kinds/shared.ts';
import { engineStates } from '../../signals/states.ts';
import { functionNames } from '../../study/functions.ts';
import { keysWithin } from '../keysWithin.ts';
import { languageWords } from '../languageWords.ts';

/** The language of case files on one page of Markdown, from the same tables that read, complete and explain it. */
export function languagePage(): string {
  return `# The language in one page

A case is a file of cells, one under the other.
A line \`---\` stands between two cells; a cell starts with its kind, as in \`readings: Warm idle\`.
The first cell is the header, \`diag: 1\`.
\`casebook explain NAME\` tells more about every name on this page.

## Kinds of cells and their keys

${Object.entries(kinds)
  .map(([name, kind]) => kindPart(name, kind))
  .join('\n\n')}

Every cell may have ${keyList(everyKey)}: ${everyKey.for.meaning}.

## Answers of the diagnostic link

\`obd\` in a cell of readings takes what an interface printed, as it is: with and without headers (11 or 29 bits, or three bytes), with and without spaces, numbered lines, echoes, prompts and messages such as \`NO DATA\`; what follows \`#\` behind a space is a remark.
Each value of services 01 to 0A (SAE J1979) that has a signal becomes a reading of the cell, with half a step of its encoding for its ±.
Of several controllers the one with the lowest address counts, the engine's own; of several answers of it the last. Where they differ it is told.
A value that is typed under \`values\`, too, stays as it was typed and is compared.
A freeze frame (service 02) stands in a cell with \`when: freeze frame\`.
\`casebook decode FILE\` shows the same without a case.

## Expressions

Names are readings (\`before.idle.map\`) and computed names; numbers carry their unit (\`0.5 inHg\`).
\`+ - * / ^\` compute, \`< <= > >=\` compare, \`x[3]\` takes one member of several, \`name(a, b)\` calls a function.

| word | what it means | example |
| --- | --- | --- |
${languageWords
  .map(({ words, meaning, example }) => `| ${words.map(code).join(' ')} | ${meaning} | ${code(example)} |`)
  .join('\n')}

A statement ends as one of *holds*, *fails*, *too close to call*, *not measured* and *cannot compute*.

## Functions

${functionNames().toSorted().map(code).join(', ')}.

## Charts

\`chart: trims\` under readings, a capture or a check draws the cell's own values.
A \`chart\` cell lists what it draws under \`plot\` and what it marks under \`mark\`: expressions, and for a mark also a limit (\`17 .. 22 inHg\`, \`at most 3 psi\`).

| kind | what it shows | what it takes |
| --- | --- | --- |
${Object.entries(chartKinds)
  .map(([name, { shows, takes }]) => `| ${code(name)} | ${shows} | ${takes} |`)
  .join('\n')}

## Engine states

${engineStates.map(({ name }) => code(name)).join(', ')}.
`;
}

function kindPart(name: string, { meaning, keys }: Kind): string {
  const own = Object.fromEntries(Object.entries(keys).filter(([key]) => !Object.hasOwn(everyKey, key)));
  const lines = Object.entries(own).flatMap(([key, row]) => [
    `- ${code(key)}: ${row.meaning}${withinList(row)}`,
  ]);
  return [`### ${code(name)}`, `${meaning.charAt(0).toUpperCase()}${meaning.slice(1)}.`, lines.join('\n')]
    .filter((part) => part !== '')
    .join('\n\n');
}

/** "; within it `displacement`, `cylinders`" */
function withinList({ holds }: Key): string {
  const inner = keysWithin(holds);
  return inner === undefined ? '' : `; within it ${keyList(inner)}`;
}

const keyList = (keys: Keys): string => Object.keys(keys).map(code).join(', ');

const code = (text: string): string => `\`${text}\``;
