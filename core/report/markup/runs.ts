import type { Runs } from '../blocks.ts';
import { element, type Markup } from './markup.ts';

export function runsMarkup(runs: Runs): Markup[] {
  return runs.map((run) => {
    if (typeof run === 'string') return run;
    return 'code' in run ? codeMarkup(run.code) : element('strong', {}, run.strong);
  });
}

export const codeMarkup = (text: string): Markup => element('code', {}, text);

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
