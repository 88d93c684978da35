import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';

/** Characters that YAML allows nowhere, and a byte-order mark inside a cell; the first few of them. */
export function strayCharacters(text: string): readonly Diagnostic[] {
  if (!stray.test(text)) return [];
  const found: Diagnostic[] = [];
  for (const match of text.matchAll(everyStray)) {
    const span = { start: match.index, end: match.index + 1 };
    found.push(
      diagnose('control-character', span, { name: nameOf(match[0].charCodeAt(0)) }, [
        { title: 'Delete it', edits: [{ span, newText: '' }] },
      ]),
    );
    if (found.length === most) break;
  }
  return found;
}

const most = 20;
// YAML 1.2.2 section 5.1: no C0 controls but tab and line breaks, no DEL, no surrogates by themselves, no FFFE and FFFF.
const pattern = '[\\0-\\x08\\x0B\\x0C\\x0E-\\x1F\\x7F\\uFEFF\\uFFFE\\uFFFF]|[\\uD800-\\uDFFF]';
const stray = new RegExp(pattern, 'u');
const everyStray = new RegExp(pattern, 'gu');

function nameOf(unit: number): string {
  const hex = `U+${unit.toString(16).toUpperCase().padStart(4, '0')}`;
  if (unit === 0) return `a null character (${hex})`;
  if (unit === 0xfeff) return `a byte-order mark (${hex})`;
  if (unit >= 0xd800 && unit <= 0xdfff) return `half of a character (${hex})`;
  return `a control character (${hex})`;
}
