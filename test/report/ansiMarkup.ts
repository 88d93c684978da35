import { escapeHtml } from '../../core/report/html/escape.ts';

/** SGR codes (ECMA-48) that the command line uses, as CSS that reads well on a light ground; the others end one of these. */
const styles: ReadonlyMap<number, string> = new Map([
  [1, 'font-weight:700'],
  [2, 'color:#6b675c'],
  [31, 'color:#a11d16'],
  [32, 'color:#1f6b33'],
  [33, 'color:#7a5a00'],
]);

const ends: ReadonlyMap<number, readonly number[]> = new Map([
  [0, [1, 2, 31, 32, 33]],
  [22, [1, 2]],
  [39, [31, 32, 33]],
]);

// biome-ignore lint/suspicious/noControlCharactersInRegex: escape sequences start with the control character.
const sequence = /\u001b\[(\d+)m/;

/** A terminal's text as HTML. */
export function ansiMarkup(text: string): string {
  const on = new Set<number>();
  return text
    .split(sequence)
    .map((part, at) => {
      if (at % 2 === 0) {
        const css = [...on].map((code) => styles.get(code) ?? '').join(';');
        return css === '' || part === ''
          ? escapeHtml(part)
          : `<span style="${css}">${escapeHtml(part)}</span>`;
      }
      const code = Number(part);
      for (const ended of ends.get(code) ?? []) on.delete(ended);
      if (styles.has(code)) on.add(code);
      return '';
    })
    .join('');
}

/** A terminal's text without its colours. */
export function plainText(text: string): string {
  return text
    .split(sequence)
    .filter((_, at) => at % 2 === 0)
    .join('');
}
