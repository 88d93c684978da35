import { type Diagnostic, diagnose, type Fix } from '../../diagnostics/diagnostic.ts';
import type { Span } from '../../text/span.ts';
import type { CellRule } from '../rule.ts';

/** A trouble code that has not the form of one: SAE J2012 and ISO 15031-6 say a letter, a digit and three hexadecimal digits. */
export const codeForm: CellRule = {
  code: 'code-form',
  in: ['diag'],
  checkCell: ({ read: { cell, raw } }) => {
    const codes = cell?.kind === 'diag' ? (cell.codes ?? []) : [];
    const found: Diagnostic[] = [];
    for (const { code } of codes) {
      const text = code.text.trim();
      if (!isSound(text)) found.push(severalAt(code.span, text, raw.text) ?? findingAt(code.span, text));
    }
    return found;
  },
};

/** `P0171, P0174`: several codes in the place of one. */
function severalAt(span: Span, text: string, source: string): Diagnostic | undefined {
  const several = text.split(/[\s,;/]+/).filter((each) => each !== '');
  if (several.length < 2 || !several.every(isSound)) return undefined;
  const before = source.slice(source.lastIndexOf('\n', span.start - 1) + 1, span.start);
  const isItem = /^ *- +$/.test(before);
  const newText = isItem ? several.join(`\n${before}`) : `[${several.join(', ')}]`;
  const title = isItem ? 'Write each on a line of its own' : `Write \`${newText}\``;
  const fix = { title, edits: [{ span, newText }] };
  return diagnose('code-form', span, { code: text, offers: [], several }, [fix]);
}

function findingAt(span: Span, code: string): Diagnostic {
  const offers = nearCodes(code);
  const fixes = offers.map(
    (offer): Fix => ({ title: `Write \`${offer}\``, edits: [{ span, newText: offer }] }),
  );
  return diagnose('code-form', span, { code, offers }, fixes);
}

/** With or without the failure type that newer controllers add: `P0171`, `U0100-87`. Heavy vehicles' SPN and FMI numbers are left alone. */
const isSound = (text: string): boolean => isPlain(text) || soundCode.test(text) || /^SPN\b/i.test(text);
/** The form that nearly all have: `P0171`. */
function isPlain(text: string): boolean {
  if (text.length !== 5 || !'PCBU'.includes(text.charAt(0)) || !'0123'.includes(text.charAt(1))) return false;
  return isHex(text.charCodeAt(2)) && isHex(text.charCodeAt(3)) && isHex(text.charCodeAt(4));
}

/** A digit, or a capital from A to F. */
const isHex = (unit: number): boolean => (unit >= 48 && unit <= 57) || (unit >= 65 && unit <= 70);

const soundCode = /^[PCBU][0-3][0-9A-F]{3}(?:[-:][0-9A-F]{2})?$/;

/** What a slip of the hand makes of a code: small letters, a blank, an O for a 0, the letter left out. */
function nearCodes(text: string): readonly string[] {
  const plain = text.toUpperCase().replace(/[\s.]/g, '');
  const digits = plain.slice(1).replaceAll('O', '0').replaceAll('I', '1');
  const candidates = [plain, plain.slice(0, 1) + digits, `P${plain}`, `P${plain.replaceAll('O', '0')}`];
  return [...new Set(candidates)].filter((each) => each !== text && isSound(each)).slice(0, 1);
}
