import type { ReadingsCell, ReferenceCell, StateNode } from '../../casefile/cell.ts';
import { readingTables } from '../readingTable.ts';
import type { CellContent, CellContext } from './cellContext.ts';
import { said, words } from './cellContext.ts';

/** Values at one engine state, or at several side by side. */
export function readingsContent(cell: ReadingsCell, context: CellContext): CellContent {
  const states = (cell.states ?? []).map((each) => each.key.text);
  return {
    title: words(cell.title),
    margin: [
      'Readings',
      ...(cell.when === undefined ? [] : [words(cell.when)]),
      ...stateWords(cell.state),
      ...(cell.tool === undefined ? [] : [`with ${words(cell.tool)}`]),
      ...(cell.taken === undefined ? [] : [words(cell.taken)]),
      ...(cell.odometer === undefined ? [] : [`at ${words(cell.odometer)}`]),
    ],
    blocks: [
      ...statesLine(cell.states),
      ...readingTables(context.study, context.readings, states, words(cell.tool)),
      ...answerLines(context),
    ],
  };
}

/** Of a recording: which codes it gave, and that its values are decoded. */
function answerLines({ study, index, readings }: CellContext): CellContent['blocks'] {
  const given = study.memo.names.cells[index]?.givenCodes;
  const decoded = readings.filter(({ bytes }) => bytes !== undefined).length;
  const codes = (given?.codes ?? []).map(
    ({ code, status, id }) => `${code} (${status}${id === '' ? '' : `, ${id}`})`,
  );
  const asked = given === undefined ? '' : codes.length === 0 ? 'none' : codes.join(', ');
  return [
    ...(asked === '' ? [] : [{ kind: 'paragraph' as const, lead: 'Codes', runs: [`${asked}.`] }]),
    ...(decoded === 0
      ? []
      : [
          {
            kind: 'paragraph' as const,
            lead: 'Decoded',
            runs: [
              `${decoded === 1 ? 'One value was' : `${decoded} values were`} decoded from recorded bytes (SAE J1979); each ± is half a step of its encoding.`,
            ],
          },
        ]),
  ];
}

/** What is known beforehand, with where it is known from. */
export function referenceContent(cell: ReferenceCell, context: CellContext): CellContent {
  const states = (cell.states ?? []).map((each) => each.key.text);
  return {
    title: words(cell.title),
    margin: ['Reference', ...stateWords(cell.state)],
    blocks: [
      ...statesLine(cell.states),
      ...readingTables(context.study, context.readings, states),
      ...said(cell.source, 'Source'),
    ],
  };
}

export function stateWords(state: StateNode | undefined): string[] {
  if (state === undefined) return [];
  const more = state.more.map((each) => `${each.key.text} ${words(each.value)}`);
  return [[words(state.name), ...more].join(', ')];
}

/** What the columns' short names stand for, where they are not the state itself. */
function statesLine(states: ReadingsCell['states']): CellContent['blocks'] {
  const other = (states ?? []).filter((each) => each.key.text !== words(each.value.name));
  if (other.length === 0) return [];
  const text = other.map((each) => `${each.key.text}: ${stateWords(each.value).join('')}`).join('; ');
  return [{ kind: 'paragraph', runs: [`${text}.`] }];
}
