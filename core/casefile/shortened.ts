/** A text on one line, cut where it would make a message too long. */
export function shortened(text: string): string {
  const line = text
    .slice(0, 200)
    .replace(/\s*[\r\n]+\s*/g, ' ')
    .trim();
  return line.length <= 60 ? line : `${line.slice(0, 57)}…`;
}
