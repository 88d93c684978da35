import type { Runs } from '../blocks.ts';
import { element, joined, type Markup } from './markup.ts';

export function runsMarkup(runs: Runs): Markup[] {
  return runs.map((run) => {
    if (typeof run === 'string') return run;
    return 'code' in run ? codeMarkup(run.code) : element('strong', {}, run.strong);
  });
}

export const codeMarkup = (text: string): Markup => element('code', {}, text);

/** The same where there is little room: long code may go on in the next line behind a point, a comma or an opening bracket. */
export function narrowRunsMarkup(runs: Runs): Markup[] {
  return runs.map((run) =>
    typeof run !== 'string' && 'code' in run
      ? element('code', {}, ...breakable(run.code, /(?<=[.,(])(?=[^\s\d)])/))
      : (runsMarkup([run])[0] ?? ''),
  );
}

/** A name that may go on in the next line behind each of its parts. */
export const narrowNameMarkup = (name: string): Markup[] => breakable(name, /(?<=[._])(?=\S)/);

/** A text with places where a line may end; copied, it is the text alone. */
function breakable(text: string, places: RegExp): Markup[] {
  return joined(
    text.split(places).map((part) => [part]),
    element('wbr', {}),
  );
}

/** Messages set names and texts of the case between backquotes. */
export function messageMarkup(message: string): Markup[] {
  return message
    .split(/(`[^`]*`)/)
    .filter((part) => part !== '')
    .map((part) => (part.length > 1 && part.startsWith('`') ? codeMarkup(part.slice(1, -1)) : part));
}

/** The words in small capitals before a text; nothing without words. */
export function leadMarkup(words: string | undefined): Markup[] {
  return words === undefined ? [] : [element('span', { class: 'lead' }, words), ' '];
}
