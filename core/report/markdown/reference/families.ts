import { codeSpan } from '../escape.ts';

/** Rows under the heading of their family, after a list of what each family has. */
export function byFamily<Row extends { readonly family: string; readonly name: string }>(
  rows: readonly Row[],
  part: (row: Row) => string,
): string {
  const families = [...new Set(rows.map(({ family }) => family))].map((family) => ({
    family,
    heading: `${family.charAt(0).toUpperCase()}${family.slice(1)}`,
    members: rows.filter((row) => row.family === family),
  }));
  const list = families.map(
    ({ family, heading, members }) =>
      `- [${heading}](#${family.replaceAll(' ', '-')}): ${members.map(({ name }) => codeSpan(name)).join(', ')}`,
  );
  const parts = families.map(({ heading, members }) => `## ${heading}\n\n${members.map(part).join('\n\n')}`);
  return `${list.join('\n')}\n\n${parts.join('\n\n')}`;
}
