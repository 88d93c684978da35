/**
 * How wide a text is about to be, in pixels: the same on every machine, since no font is asked.
 * Widths are those of a common sans-serif in thousandths of the font's size, by groups of letters (value from memory);
 * the widest of the usual fonts run an eighth wider, and a text must not be cut. It is for keeping room, not for setting letters.
 */
export function textWidth(text: string, fontSize: number): number {
  let thousandths = 0;
  for (const letter of text) thousandths += widths.get(letter) ?? usual;
  return (thousandths * fontSize * room) / 1000;
}

const usual = 556;
const room = 1.125;

const widths: ReadonlyMap<string, number> = new Map(
  (
    [
      [222, "ijl'|"],
      [278, ' .,:;!/\\ftI[]()·'],
      [333, 'r-"*`{}'],
      [500, 'ckszvxyJ'],
      [584, '−+=<>±~'],
      [667, 'ABEKPSVXY&'],
      [722, 'CDHNRUw'],
      [778, 'GOQ'],
      [833, 'mM'],
      [889, '%W'],
      [1000, '…—@'],
    ] as const
  ).flatMap(([width, letters]) => [...letters].map((letter) => [letter, width] as const)),
);

/** The text in lines of at most `most` pixels, cut between words; a word that is longer stands alone. */
export function inLines(text: string, fontSize: number, most: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer, fontSize) > most) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line];
}
