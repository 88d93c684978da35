import type { SuspectsCell } from '../../casefile/cell.ts';
import type { Suspect } from '../../study/types.ts';
import { suspectLine } from '../suspectLine.ts';
import { type CellContent, type CellContext, said, words } from './cellContext.ts';

/** Each suspect as sentences: what speaks for it, what against, what is missing; then what to measure next. */
export function suspectsContent(cell: SuspectsCell, { suspects, study }: CellContext): CellContent {
  const reasons = new Map((cell.consider ?? []).map((each) => [words(each.name), each.because]));
  return {
    title: words(cell.title),
    margin: ['Suspects'],
    blocks: [
      ...suspects.flatMap((each) => [suspectLine(each), ...said(reasons.get(each.name), 'Because')]),
      ...(study.next === undefined || !isLast(study.suspects, suspects)
        ? []
        : [
            {
              kind: 'paragraph' as const,
              lead: 'Next',
              runs: ['Measure ', { code: study.next }, ': it separates the most suspects that are left.'],
            },
          ]),
    ],
  };
}

const isLast = (all: readonly Suspect[], own: readonly Suspect[]): boolean =>
  all[all.length - 1] === own[own.length - 1];
