import type { FunctionRow, Parameter } from '../expression/functionRow.ts';
import { sayLimits } from '../expression/sayLimits.ts';

/** One thing that stands in for a parameter that is left out: a name of the case, a value as written, or words. */
interface Substitute {
  readonly words: string;
  readonly is: 'name' | 'value' | 'words';
}

/** What stands in for a parameter that is left out, in the order in which it is looked for. */
export function substitutesFor({
  header,
  barometer,
  otherwise,
  otherwiseBy,
}: Parameter): readonly Substitute[] {
  const found: Substitute[] = [];
  if (header !== undefined) found.push({ words: header, is: 'name' });
  if (barometer === true) found.push({ words: 'the case’s barometer', is: 'words' });
  if (otherwiseBy !== undefined)
    found.push({ words: `the standard atmosphere’s at the header’s ${otherwiseBy.header}`, is: 'words' });
  if (otherwise !== undefined) found.push({ words: otherwise, is: 'value' });
  return found;
}

/** Whether a call may leave it out. */
export function canBeLeftOut(parameter: Parameter): boolean {
  return parameter.optional === true || substitutesFor(parameter).length > 0;
}

/** The limits of a result, and what else is to be known of where a function holds. */
export function rangeWords({ answers, range, fourStroke }: FunctionRow): string {
  const parts = [
    fourStroke ? 'four-stroke engines' : '',
    answers === undefined ? '' : `result ${sayLimits(answers)}${beyond(answers.caution)}`,
    range,
  ];
  return parts.filter((part) => part !== '').join('; ');
}

const beyond = (caution: string | undefined): string =>
  caution === undefined ? '' : ', computed beyond it with a caution';
