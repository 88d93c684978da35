/**
 * How many columns of a terminal a text takes: none for marks that combine, two for wide characters
 * (Unicode Standard Annex 11: East Asian wide and full width; pictures).
 */
export function displayWidth(text: string): number {
  let width = 0;
  for (const character of text) width += columnsOf(character);
  return width;
}

/** Tabs as the spaces that a terminal would make of them, every eighth column, counted from `column`. */
export function withoutTabs(text: string, column: number): string {
  if (!text.includes('\t')) return text;
  let out = '';
  let at = column;
  for (const character of text) {
    const made = character === '\t' ? ' '.repeat(8 - (at % 8)) : character;
    out += made;
    at += displayWidth(made);
  }
  return out;
}

function columnsOf(character: string): number {
  // Patterns of whole alphabets take long to build: not before one is needed.
  if (character < '\u0300' || isPlainlyNarrow(character)) return 1;
  if (/^[\p{Mn}\p{Me}\p{Cf}]$/u.test(character)) return 0;
  const wide =
    /^[\p{Script=Han}\p{Script=Hangul}\p{Script=Hiragana}\p{Script=Katakana}\p{Emoji_Presentation}\u3000-\u303E\uFF01-\uFF60\uFFE0-\uFFE6]$/u;
  return wide.test(character) ? 2 : 1;
}

/** Greek and Cyrillic letters, dashes and dots, arrows, the marks of mathematics, and our own signs for a verdict. */
function isPlainlyNarrow(character: string): boolean {
  return (
    (character >= '\u0370' && character <= '\u0482') ||
    (character >= '\u2010' && character <= '\u2027') ||
    (character >= '\u2190' && character <= '\u2319') ||
    (character >= '\u2713' && character <= '\u2718')
  );
}
