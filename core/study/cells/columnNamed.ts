import type { TextNode } from '../../casefile/tree.ts';
import { type Diagnostic, diagnose } from '../../diagnostics/diagnostic.ts';
import { nearest } from '../../text/nearest.ts';
import type { Samples } from './samples.ts';

/** The column of a heading, letter for letter; reported where there is none, or more than one. */
export function columnNamed(named: TextNode, samples: Samples, found: Diagnostic[]): number | undefined {
  const { headings, written } = samples;
  const at = headings.indexOf(named.text);
  if (at >= 0) return at;
  const fixesFor = (names: readonly string[]) =>
    names.map((name) => ({
      title: `Write \`${name}\``,
      edits: [{ span: named.span, newText: /^[\w ()/%°.]+$/.test(name) ? name : JSON.stringify(name) }],
    }));
  const alike = headings.filter((_, i) => written[i] === named.text);
  if (alike.length > 0) {
    const facts = { column: named.text, columns: alike };
    found.push(diagnose('column-stands-twice', named.span, facts, fixesFor(alike)));
    return undefined;
  }
  const close = nearest(named.text, headings);
  const facts = { column: named.text, columns: headings, nearest: close };
  found.push(diagnose('unknown-column', named.span, facts, fixesFor(close)));
  return undefined;
}
