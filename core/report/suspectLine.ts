import type { Expectation, Standing, Suspect } from '../study/types.ts';
import type { Runs, Sign, SuspectLine } from './blocks.ts';
import { measuredWords, reasonOf } from './verdictLine.ts';

const signs: Readonly<Record<Standing, Sign>> = {
  'still possible': '≈',
  'ruled out': '✗',
  'not tested': '–',
};

/** A suspect as sentences: where it stands, what speaks for it, what against, what is missing. */
export function suspectLine(suspect: Suspect): SuspectLine {
  return {
    kind: 'suspect',
    name: suspect.name,
    standing: suspect.standing,
    sign: signs[suspect.standing],
    for: suspect.speaksFor.map(reason),
    against: suspect.against.map(reason),
    missing: suspect.missing.map(reason),
  };
}

/** "it predicts `a > b`, which fails (25 %, 15 above the limit)" */
function reason({ part, text, truth }: Expectation): Runs {
  const measured = measuredWords(truth);
  const detail = [measured, reasonOf(truth) ?? ''].filter((each) => each !== '').join('; ');
  const verdict =
    truth.verdict === 'holds' || truth.verdict === 'fails' ? `which ${truth.verdict}` : truth.verdict;
  return [
    part === 'predicts' ? 'it predicts ' : 'it is ruled out if ',
    { code: text },
    `, ${verdict}${detail === '' ? '' : ` (${detail})`}`,
  ];
}
