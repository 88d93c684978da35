import { joinStream } from '../../core/casefile/stream.ts';
import type { Value } from '../../core/expression/value.ts';
import type { Runs } from '../../core/report/blocks.ts';
import { findingLine } from '../../core/report/findingLine.ts';
import { harmless } from '../../core/report/harmless.ts';
import { inLine } from '../../core/report/readingTable.ts';
import { verdictCount } from '../../core/report/summary.ts';
import { suspectLine } from '../../core/report/suspectLine.ts';
import { verdictLine } from '../../core/report/verdictLine.ts';
import type { Computed, Expectation, Study, Suspect } from '../../core/study/types.ts';
import { lineIndex } from '../../core/text/lines.ts';
import type { Paint } from './color.ts';
import { writeFinding } from './frame.ts';

/** A case as the terminal shows it: what was computed and decided, cell by cell, then what was found. */
export function caseText(study: Study, name: string, paint: Paint): string {
  const title = study.title === '' ? name : study.title;
  const parts = [`${paint.title(plain(title))}\n${paint.soft(plain(name))}\n`];
  study.file.cells.forEach((_, cell) => {
    const text = cellText(study, cell, paint);
    if (text !== '') parts.push(text);
  });
  if (study.findings.length > 0) {
    const text = joinStream(study.file.stream);
    const lines = lineIndex(text);
    parts.push(...study.findings.map((each) => writeFinding(findingLine(study, text, lines, each), paint)));
  }
  const count = verdictCount(study);
  if (count !== '') parts.push(`  ${count}\n`);
  return `${parts.join('\n')}\n`;
}

function cellText(study: Study, cell: number, paint: Paint): string {
  const computed = study.computed.filter((each) => each.cell === cell);
  const suspects = study.suspects.filter((each) => each.cell === cell);
  const expectations = study.expectations.filter((each) => each.cell === cell && each.suspect === undefined);
  if (computed.length + suspects.length + expectations.length === 0) return '';
  const read = study.file.cells[cell]?.cell;
  const title = read === undefined ? `Cell ${cell + 1}` : plain(read.title.text);
  const plainly = computed.filter(({ value }) => value.kind !== 'fields');
  const longest = Math.max(0, ...plainly.map((each) => each.name.length));
  return [
    `  ${title}\n`,
    ...computed.map((each) => computedText(each, longest)),
    ...expectations.map((each) => expectationText(each, paint)),
    ...suspects.map((each) => suspectText(each, paint)),
    ...(suspects.length > 0 && study.next !== undefined
      ? [`    Next: measure ${plain(study.next)}; it separates the most suspects that are left.\n`]
      : []),
  ].join('');
}

/** A name and its value; of a value with several fields, each has a line of its own. */
function computedText({ name, value }: Computed, longest: number): string {
  if (value.kind !== 'fields') return `    ${plain(name).padEnd(longest)}  ${figureText(value)}\n`;
  const widest = Math.max(0, ...[...value.fields.keys()].map((each) => each.length));
  const lines = [...value.fields].map(
    ([field, each]) => `      ${plain(field).padEnd(widest)}  ${figureText(each)}\n`,
  );
  return `    ${plain(name)}\n${lines.join('')}`;
}

function figureText(value: Value): string {
  return plain(inLine(value));
}

function expectationText(expectation: Expectation, paint: Paint): string {
  const line = verdictLine(expectation);
  const stress = line.word === 'holds' ? paint.good : line.word === 'fails' ? paint.bad : paint.doubtful;
  const measured = line.measured === '' ? '' : `${plain(line.measured)}: `;
  const remark = line.remark === undefined ? '' : `, ${line.remark}`;
  const why = line.why === undefined || line.why === '' ? '' : ` (${plain(line.why)})`;
  const ifFails = line.ifFails === undefined ? '' : `      If it fails: ${plain(line.ifFails)}\n`;
  return `    ${stress(line.sign)} ${plain(line.text)}\n      ${measured}${stress(line.word)}${remark}${why}.\n${ifFails}`;
}

/** A suspect with what decides where it stands. */
function suspectText(suspect: Suspect, paint: Paint): string {
  const line = suspectLine(suspect);
  const reasons = (lead: string, items: readonly Runs[]): string =>
    items.length === 0 ? '' : paint.soft(`      ${lead}: ${items.map(runsText).join('; ')}.\n`);
  const decisive =
    suspect.standing === 'ruled out'
      ? reasons('against it', line.against)
      : reasons('for it', line.for) + reasons('missing', line.missing);
  return `    ${line.sign} ${plain(line.name)}: ${line.standing}\n${decisive}`;
}

const runsText = (runs: Runs): string =>
  plain(runs.map((run) => (typeof run === 'string' ? run : 'code' in run ? run.code : run.strong)).join(''));

/** A text of the case on one line, with nothing in it that commands a terminal. */
function plain(text: string): string {
  return harmless(text.replace(/\s+/g, ' ').trim());
}
