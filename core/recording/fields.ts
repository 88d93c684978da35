/** What stands between the columns of a file. `space`: any run of spaces and tabs. */
export type Delimiter = 'comma' | 'semicolon' | 'tab' | 'space' | 'pipe';

export const delimiterMarks: Readonly<Record<Delimiter, string>> = {
  comma: ',',
  semicolon: ';',
  tab: '\t',
  space: ' ',
  pipe: '|',
};

/** A line cut into its fields, trimmed. In quotes a delimiter is a letter, and two quotes are one (RFC 4180). */
export function fieldsOf(line: string, delimiter: Delimiter): string[] {
  const mark = delimiterMarks[delimiter];
  const spaces = delimiter === 'space';
  const fields: string[] = [];
  let at = 0;
  if (spaces) line = line.trim().replaceAll('\t', ' ');
  for (;;) {
    while (line[at] === ' ') at++;
    let field = '';
    if (line[at] === '"') {
      at++;
      for (;;) {
        const quote = line.indexOf('"', at);
        if (quote < 0) {
          field += line.slice(at);
          at = line.length;
          break;
        }
        field += line.slice(at, quote);
        at = quote + 1;
        if (line[at] !== '"') break;
        field += '"';
        at++;
      }
    }
    let end = line.indexOf(mark, at);
    if (end < 0) end = line.length;
    field += line.slice(at, end);
    fields.push(field.trim());
    if (end >= line.length) return fields;
    at = end + 1;
  }
}

/** Names in columns of fixed width, whose words stand one space apart and the names two or more: `Time    Engine speed`. */
export const namesApart = (line: string): string[] =>
  line
    .trim()
    .split(/\s{2,}|\t/)
    .map((each) => each.trim());
