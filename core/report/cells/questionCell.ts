import type { QuestionCell } from '../../casefile/cell.ts';
import type { Value } from '../../expression/value.ts';
import type { Answer, Block } from '../blocks.ts';
import { inWords } from '../figure.ts';
import { typeOf, unitWords, valueFigure } from '../readingTable.ts';
import { type CellContent, said, words } from './cellContext.ts';

/** A question with its choices; the answer stands at the end of the case. */
export function questionContent(cell: QuestionCell): CellContent {
  const points = words(cell.points);
  const choices = (cell.choices ?? []).map((each) => [words(each.choice)]);
  return {
    title: words(cell.title),
    margin: ['Question', ...(points === '' ? [] : [`${points} ${points === '1' ? 'point' : 'points'}`])],
    blocks: [
      ...said(cell.ask),
      ...(choices.length === 0
        ? []
        : [{ kind: 'bullets' as const, style: 'letter' as const, items: choices }]),
    ],
  };
}

/** The answer with its number, hints and reasons; undefined when the question has none. */
export function answerOf(
  cell: QuestionCell,
  number: number,
  computed: Value | undefined,
): Answer | undefined {
  const blocks: Block[] = [
    ...hints(cell),
    ...(cell.answer === undefined
      ? []
      : [
          {
            kind: 'paragraph' as const,
            lead: 'Answer',
            runs: [...figureWords(computed), { code: words(cell.answer) }, ...accepted(cell)],
          },
        ]),
    ...rightChoices(cell),
    ...said(cell.because, 'Because'),
  ];
  return blocks.length === 0 ? undefined : { number, title: words(cell.title), blocks };
}

/** "29.7 ± 0.2 inHg absolute, from ": what the expression behind it comes to. */
function figureWords(computed: Value | undefined): string[] {
  const figure = computed === undefined ? undefined : valueFigure(computed);
  if (computed === undefined || figure === undefined) return [];
  const type = typeOf(computed);
  return [`${inWords(figure, type === undefined ? '' : unitWords(type))}, from `];
}

function accepted(cell: QuestionCell): string[] {
  const ways = (cell.accept ?? []).map(words);
  return ways.length === 0 ? [] : [`; accepted: ${ways.join(', ')}`];
}

function hints(cell: QuestionCell): Block[] {
  const items = (cell.hints ?? []).map((hint) => [words(hint)]);
  return items.length === 0 ? [] : [{ kind: 'bullets', lead: 'Hints', style: 'bullet', items }];
}

function rightChoices(cell: QuestionCell): Block[] {
  return (cell.choices ?? []).flatMap((each, at): Block[] => {
    const because = words(each.because);
    const right = words(each.right) === 'yes';
    if (!right && because === '') return [];
    const letter = String.fromCharCode(97 + (at % 26));
    return [
      {
        kind: 'paragraph',
        lead: right ? 'Right' : 'Not right',
        runs: [{ strong: letter }, `, ${words(each.choice)}${because === '' ? '' : `. ${because}`}`],
      },
    ];
  });
}
