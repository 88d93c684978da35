import { type Diagnostic, diagnose, type Fix } from '../../diagnostics/diagnostic.ts';
import { keyNames } from '../kinds/keyNames.ts';
import { shortened } from '../shortened.ts';
import { blockFormFix } from './blockForm.ts';
import { quoteFix } from './quoted.ts';
import type { WrittenEntry } from './writtenEntry.ts';

/** Traps of a sentence that stands without quotes: a colon inside, or a special character in front. */
export function sentenceTrap(text: string, entry: WrittenEntry): Diagnostic | undefined {
  const { value } = entry;
  const words = text.slice(value.start, value.end);
  const fixes = wordFixes(text, entry);
  if (/^\?(?=[ \t\r\n]|$)/.test(words)) {
    const span = { start: value.start, end: value.start + 1 };
    return diagnose('question-mark-alone', span, { text: shortened(words) }, fixes);
  }
  const apart = /^([-+])[ \t]+(?=[0-9.])/.exec(words);
  if (apart !== null && apart[1] === '-') {
    const instead = `-${words.slice(apart[0].length)}`;
    const closer: Fix = {
      title: `Write \`${shortened(instead)}\``,
      edits: [{ span: { start: value.start, end: value.start + apart[0].length }, newText: '-' }],
    };
    return diagnose('minus-apart', value, { text: shortened(words), instead: shortened(instead) }, [
      closer,
      ...fixes,
    ]);
  }
  const mark = startingMark(words);
  // A list or map that closes at the end was meant as one, unless its key holds free words.
  if ((mark === '[' || mark === '{') && /[\]}]$/.test(words) && !keyNames().sentences.has(entry.key)) {
    return undefined;
  }
  if (mark !== undefined) {
    const span = { start: value.start, end: value.start + mark.length };
    return diagnose('mark-starts-text', span, { mark, means: meanings[mark] ?? 'something else' }, fixes);
  }
  const colon = /:(?=[ \t\r\n]|$)/.exec(words);
  if (colon !== null) {
    const at = value.start + colon.index;
    const before = shortened(words.slice(0, colon.index));
    return diagnose('colon-in-text', { start: at, end: at + 1 }, { key: entry.key || '-', before }, fixes);
  }
  return undefined;
}

function wordFixes(text: string, entry: WrittenEntry): Fix[] {
  if (entry.below.length === 0) return [quoteFix(text, entry.value)];
  const block = blockFormFix(text, entry, entry.key === 'note' ? '|' : '>-');
  return block === undefined ? [] : [block];
}

function startingMark(words: string): string | undefined {
  if (/^-(?=[ \t\r\n]|$)/.test(words)) return '-';
  const first = words[0] ?? '';
  return Object.hasOwn(meanings, first) && first !== '-' ? first : undefined;
}

/** What YAML takes a character at the start of a value for. */
export const meanings: Readonly<Record<string, string>> = {
  '"': 'a text in quotes that ends at the next quote',
  "'": 'a text in quotes that ends at the next quote',
  '[': 'a list',
  '{': 'entries between braces',
  ']': 'the end of a list',
  '}': 'the end of entries between braces',
  ',': 'a separator',
  '-': 'an item of a list',
  '*': 'a reference to another value',
  '&': 'a name for a value',
  '!': 'a type for a value',
  '|': 'the start of a text on the lines below',
  '>': 'the start of a text on the lines below',
  '%': 'an instruction to the reader',
  '@': 'a reserved character',
  '`': 'a reserved character',
  '#': 'a remark',
};
