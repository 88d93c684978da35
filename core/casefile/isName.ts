/** Letters of any alphabet, digits and `_`, no digit first: what expressions can use. */
export function isName(text: string): boolean {
  // Nearly all are plain letters, and a pattern of all letters takes a millisecond to build.
  return /^[A-Za-z_][A-Za-z0-9_]*$/.test(text) || /^[\p{L}\p{M}_][\p{L}\p{M}0-9_]*$/u.test(text);
}
