import type { FindingLine } from '../../core/report/blocks.ts';
import { countedFindings } from '../../core/report/byWeight.ts';
import { harmless } from '../../core/report/harmless.ts';
import { severityWord } from '../../core/report/severityWord.ts';
import type { Paint } from './color.ts';
import { displayWidth, withoutTabs } from './displayWidth.ts';
import { wrap } from './wrap.ts';

/** A finding as text: what is wrong, the line with carets under the place, what is offered, where it is. */
export function writeFinding(finding: FindingLine, paint: Paint, width: number): string {
  const { severity, line, column, code } = finding;
  const word = severityWord(severity);
  const painted = severity === 'error' ? paint.bad(word) : paint.doubtful(word);
  const message = wrap(harmless(finding.message), width, `  ${painted} `, 4);
  const offered = `Offered: ${harmless(finding.offers.join('; '))}.`;
  const offers = finding.offers.length === 0 ? '' : wrap(offered, width, '    ', 6);
  return `${message}${frame(finding, paint)}${offers}    ${paint.soft(`line ${line}, column ${column}, ${code}`)}\n`;
}

/** What is only for information: counted, quiet, and with the line that it is about; no more than that. */
export function writeNotes(notes: readonly FindingLine[], paint: Paint, width: number): string {
  if (notes.length === 0) return '';
  const places = notes.map(({ line }) => `line ${line}`);
  const longest = Math.max(...places.map((each) => each.length));
  const lines = notes.map(({ message, code }, at) =>
    wrap(`${harmless(message)} (${code})`, width, `    ${(places[at] ?? '').padEnd(longest)}  `, longest + 6),
  );
  return linesPainted(`  ${countedFindings(notes, ['info']).join()}\n${lines.join('')}`, paint.soft);
}

/** Each line for itself: a colour that goes over the end of a line fills the rest of it on some terminals. */
export function linesPainted(text: string, paint: (text: string) => string): string {
  return text
    .split('\n')
    .map((line) => (line === '' ? '' : paint(line)))
    .join('\n');
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
