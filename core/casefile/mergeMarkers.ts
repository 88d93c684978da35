import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';

/**
 * The marker lines that version control leaves where two versions of a file met.
 * They start at the first column, where a cell holds keys only; nothing is repaired.
 */
export function mergeMarkers(text: string): readonly Diagnostic[] {
  if (!hints.some((hint) => text.includes(hint))) return [];
  const found: Diagnostic[] = [];
  for (const match of text.matchAll(/(?<=^|[\r\n])(?:<{7}|>{7}|\|{7}|={7})(?=[ \t\r\n]|$)[^\r\n]*/g)) {
    const marker = match[0].trimEnd();
    const span = { start: match.index, end: match.index + marker.length };
    found.push(diagnose('merge-conflict', span, { marker }));
    if (found.length === most) break;
  }
  return found;
}

const most = 50;
const hints = ['<<<<<<<', '>>>>>>>', '=======', '|||||||'];
