import type { PlacedFinding } from './openCase.ts';

/** Whether two lists of findings look the same to a reader. */
export function sameFindings(a: readonly PlacedFinding[], b: readonly PlacedFinding[]): boolean {
  return a.length === b.length && a.every((each, index) => isSame(each, b[index]));
}

function isSame(a: PlacedFinding, b: PlacedFinding | undefined): boolean {
  if (b === undefined) return false;
  const [one, other] = [a.finding.diagnostic, b.finding.diagnostic];
  return (
    a.place.start.line === b.place.start.line &&
    a.place.start.character === b.place.start.character &&
    a.place.end.line === b.place.end.line &&
    a.place.end.character === b.place.end.character &&
    (one === other ||
      (one.code === other.code &&
        one.severity === other.severity &&
        JSON.stringify(one.facts) === JSON.stringify(other.facts)))
  );
}
