import type { FindingLine } from '../../core/report/blocks.ts';
import { harmless } from '../../core/report/harmless.ts';
import { severityWord } from '../../core/report/severityWord.ts';
import type { Paint } from './color.ts';
import { displayWidth, withoutTabs } from './displayWidth.ts';

/**
 * A finding as text: what is wrong, the line with carets under the place, what is offered, where it is.
 * What is only for information takes one line.
 */
export function writeFinding(finding: FindingLine, paint: Paint): string {
  const { severity, line, column, code } = finding;
  const words = severityWord(severity);
  const message = harmless(finding.message);
  const place = paint.soft(`line ${line}, column ${column}, ${code}`);
  if (severity === 'info') return `  ${words} ${message} ${place}\n`;
  const painted = severity === 'error' ? paint.bad(words) : paint.doubtful(words);
  const offers = finding.offers.length === 0 ? '' : `    Offered: ${harmless(finding.offers.join('; '))}.\n`;
  return `  ${painted} ${message}\n${frame(finding, paint)}${offers}    ${place}\n`;
}

function frame({ line, frame: { before, marked, after } }: FindingLine, paint: Paint): string {
  // About a file that could not be read, or an empty line, there is nothing to show.
  if (before + marked + after === '') return '';
  const number = String(line).padStart(5);
  const left = withoutTabs(harmless(before), 0);
  const start = displayWidth(left);
  const middle = withoutTabs(harmless(marked), start);
  const right = withoutTabs(harmless(after), start + displayWidth(middle));
  const carets = '^'.repeat(Math.max(1, displayWidth(middle)));
  return `${paint.soft(`${number} | `)}${left}${middle}${right}\n${paint.soft('      | ')}${' '.repeat(start)}${paint.bad(carets)}\n`;
}
