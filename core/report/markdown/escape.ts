import type { Runs } from '../blocks.ts';
import { harmless } from '../harmless.ts';

/** Text that Markdown takes as it stands, on one line. */
export function escapeMarkdown(text: string): string {
  return harmless(text)
    .replace(/\s+/g, ' ')
    .replace(/[\\`*_[\]<>|#~&!]/g, '\\$&')
    .replace(/^(\s*)([-+=]|\d+[.)])(?=\s|$)/, (_, space: string, mark: string) =>
      `${space}\\${mark}`.replace(/\\(\d+)([.)])/, '$1\\$2'),
    );
}

/** The same for a sentence that sets names between backquotes itself: those stay code. */
export function sentenceAsMarkdown(text: string): string {
  return text
    .split(/(`[^`]+`)/)
    .map((part) => (/^`[^`]+`$/.test(part) ? codeSpan(part.slice(1, -1)) : escapeMarkdown(part)))
    .join('');
}

/** A paragraph of such sentences, each on a line of its own. */
export function sentencesAsMarkdown(text: string): string {
  return text
    .split(/(?<=[.!?]) (?=[A-Z])|\n/)
    .map(sentenceAsMarkdown)
    .join('\n');
}

/** A code span: fenced by more backquotes than stand in it. A `|` would end a table's cell. */
export function codeSpan(text: string): string {
  const line = harmless(text).replace(/\s+/g, ' ').replaceAll('|', '\\|');
  const longest = Math.max(0, ...(line.match(/`+/g) ?? []).map((run) => run.length));
  const fence = '`'.repeat(longest + 1);
  const room = line.startsWith('`') || line.endsWith('`') ? ' ' : '';
  return `${fence}${room}${line}${room}${fence}`;
}

export function runsAsMarkdown(runs: Runs): string {
  return runs
    .map((run) => {
      if (typeof run === 'string') return escapeMarkdown(run);
      if ('code' in run) return codeSpan(run.code);
      return `**${escapeMarkdown(run.strong)}**`;
    })
    .join('');
}
