/**
 * Control characters (but tab and line ends) and halves of characters are not allowed in HTML and can command a
 * terminal; the marks that reverse the direction of text can make a line read as something else than it is.
 * All of them are shown as the replacement character.
 */
export function harmless(text: string): string {
  return text.replace(harmful, '\uFFFD');
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const harmful = /[\0-\x08\x0B\x0C\x0E-\x1F\x7F-\x9F\u202A-\u202E\u2066-\u2069]|[\uD800-\uDFFF]/gu;
