import { type Diagnostic, diagnose, type Fix } from '../../diagnostics/diagnostic.ts';
import { isCode } from '../../engine/obd/troubleCode.ts';
import type { CellRule } from '../rule.ts';

/** A trouble code that has not the form of one: SAE J2012 and ISO 15031-6 say a letter, a digit and three hexadecimal digits. */
export const codeForm: CellRule = {
  code: 'code-form',
  in: ['diag'],
  checkCell: ({ read: { cell } }) => {
    const codes = cell?.kind === 'diag' ? (cell.codes ?? []) : [];
    return codes.flatMap(({ code }): readonly Diagnostic[] => {
      const text = code.text.trim();
      if (isSound(text)) return [];
      const offers = nearCodes(text);
      const fixes = offers.map(
        (offer): Fix => ({ title: `Write \`${offer}\``, edits: [{ span: code.span, newText: offer }] }),
      );
      return [diagnose('code-form', code.span, { code: text, offers }, fixes)];
    });
  },
};

/** With or without the failure type that newer controllers add: `P0171`, `U0100-87`. Heavy vehicles' SPN and FMI numbers are left alone. */
const isSound = (text: string): boolean =>
  (isCode(text.slice(0, 5)) && text === text.toUpperCase() && /^([-:][0-9A-F]{2})?$/.test(text.slice(5))) ||
  /^SPN\b/i.test(text);

/** What a slip of the hand makes of a code: small letters, a blank, an O for a 0, the letter left out. */
function nearCodes(text: string): readonly string[] {
  const plain = text.toUpperCase().replace(/[\s.]/g, '');
  const digits = plain.slice(1).replaceAll('O', '0').replaceAll('I', '1');
  const candidates = [plain, plain.slice(0, 1) + digits, `P${plain}`, `P${plain.replaceAll('O', '0')}`];
  return [...new Set(candidates)].filter((each) => each !== text && isSound(each)).slice(0, 1);
}
