import { harmless } from '../harmless.ts';
import { outlineDepths } from '../outline.ts';

/**
 * An author's Markdown inside another text: headings set below `level`, and outside of code raw HTML as text
 * and pictures as links, so that whatever shows it fetches nothing and runs nothing.
 */
export function proseAsMarkdown(markdown: string, level: number): string {
  const lines = harmless(markdown).split(/\r\n?|\n/);
  const isCode = codeLines(lines);
  const headings = lines.flatMap((line, at) => {
    const marks = isCode[at] === true ? undefined : heading.exec(line)?.[1];
    return marks === undefined ? [] : [{ at, own: marks.length }];
  });
  const depths = outlineDepths(headings.map(({ own }) => own));
  const levels = new Map(headings.map(({ at }, i) => [at, Math.min(6, level + (depths[i] ?? 1))]));
  return lines
    .map((line, at) => {
      if (isCode[at] === true) return line;
      const own = levels.get(at);
      return tamed(own === undefined ? line : line.replace(heading, '#'.repeat(own)));
    })
    .join('\n');
}

const heading = /^ {0,3}(#{1,6})(?=\s|$)/;

/** Which lines stand in a fence of backquotes or tildes, the fence's own lines with them. */
function codeLines(lines: readonly string[]): boolean[] {
  let fence: string | undefined;
  return lines.map((line) => {
    const mark = /^ {0,3}(`{3,}|~{3,})/.exec(line)?.[1];
    if (fence === undefined) {
      fence = mark;
      return mark !== undefined;
    }
    if (mark?.startsWith(fence) === true) fence = undefined;
    return true;
  });
}

/** Code spans are left alone. */
function tamed(line: string): string {
  return line
    .split(/(`+[^`]*`+)/)
    .map((part) =>
      part.startsWith('`')
        ? part
        : part.replace(/<(?=[A-Za-z/!?])(?!https?:|mailto:)/g, '&lt;').replace(/!(?=\[)/g, '\\!'),
    )
    .join('');
}
