import { joinStream } from '../../core/casefile/stream.ts';
import type { Value } from '../../core/expression/value.ts';
import type { Runs } from '../../core/report/blocks.ts';
import { byWeight } from '../../core/report/byWeight.ts';
import { findingLine } from '../../core/report/findingLine.ts';
import { harmless } from '../../core/report/harmless.ts';
import { inLine } from '../../core/report/readingTable.ts';
import { verdictCount } from '../../core/report/summary.ts';
import { suspectLine } from '../../core/report/suspectLine.ts';
import { usualMeaning } from '../../core/report/usualMeaning.ts';
import { verdictLine } from '../../core/report/verdictLine.ts';
import type { Computed, Expectation, Study, Suspect } from '../../core/study/types.ts';
import { lineIndex } from '../../core/text/lines.ts';
import type { Paint } from './color.ts';
import { linesPainted, writeFinding, writeNotes } from './frame.ts';
import { wrap } from './wrap.ts';

/**
 * A case as the terminal shows it: what was computed and decided, cell by cell, then what is wrong, then what is noted.
 * `width`: columns of the page.
 */
export function caseText(study: Study, name: string, paint: Paint, width: number): string {
  const title = study.title === '' ? name : study.title;
  const parts = [`${paint.title(plain(title))}\n${paint.soft(plain(name))}\n`];
  study.file.cells.forEach((_, cell) => {
    const text = cellText(study, cell, paint, width);
    if (text !== '') parts.push(text);
  });
  if (study.findings.length > 0) {
    const text = joinStream(study.file.stream);
    const lines = lineIndex(text);
    const { serious, notes } = byWeight(study.findings.map((each) => findingLine(study, text, lines, each)));
    parts.push(...serious.map((each) => writeFinding(each, paint, width)));
    if (notes.length > 0) parts.push(writeNotes(notes, paint, width));
  }
  const count = verdictCount(study);
  if (count !== '') parts.push(`  ${count}\n`);
  return `${parts.join('\n')}\n`;
}

function cellText(study: Study, cell: number, paint: Paint, width: number): string {
  const computed = study.computed.filter((each) => each.cell === cell);
  const suspects = study.suspects.filter((each) => each.cell === cell);
  const expectations = study.expectations.filter((each) => each.cell === cell && each.suspect === undefined);
  if (computed.length + suspects.length + expectations.length === 0) return '';
  const read = study.file.cells[cell]?.cell;
  const title = read === undefined ? `Cell ${cell + 1}` : plain(read.title.text);
  const plainly = computed.filter(({ value }) => value.kind !== 'fields');
  const longest = Math.max(0, ...plainly.map((each) => each.name.length));
  const next = `Next: measure ${plain(study.next ?? '')}; it separates the most suspects that are left.`;
  return [
    `  ${title}\n`,
    ...computed.map((each) => computedText(each, longest, width)),
    ...expectations.map((each) => expectationText(each, paint, width)),
    ...suspects.map((each) => suspectText(each, paint, width)),
    ...(suspects.length > 0 && study.next !== undefined ? [wrap(next, width, '    ', 6)] : []),
  ].join('');
}

/** A name and its value, of words also what they usually mean; of a value with several fields, each has a line of its own. */
function computedText(computed: Computed, longest: number, width: number): string {
  const { name, value } = computed;
  if (value.kind !== 'fields') {
    const meaning = usualMeaning(computed);
    const indent = longest + 6;
    const explained = meaning === undefined ? '' : wrap(meaning, width, ' '.repeat(indent), indent);
    return valueLine(name, value, longest, 4, width) + explained;
  }
  const widest = Math.max(0, ...[...value.fields.keys()].map((each) => each.length));
  const lines = [...value.fields].map(([field, each]) => valueLine(field, each, widest, 6, width));
  return `    ${plain(name)}\n${lines.join('')}`;
}

function valueLine(name: string, value: Value, longest: number, indent: number, width: number): string {
  const first = `${' '.repeat(indent)}${plain(name).padEnd(longest)}  `;
  return wrap(plain(inLine(value)), width, first, indent + longest + 2);
}

function expectationText(expectation: Expectation, paint: Paint, width: number): string {
  const line = verdictLine(expectation);
  const stress = line.word === 'holds' ? paint.good : line.word === 'fails' ? paint.bad : paint.doubtful;
  const measured = line.measured === '' ? '' : `${plain(line.measured)}: `;
  const remark = line.remark === undefined ? '' : `, ${line.remark}`;
  const why = line.why === undefined || line.why === '' ? '' : ` (${plain(line.why)})`;
  return [
    wrap(plain(line.text), width, `    ${stress(line.sign)} `, 8),
    wrap(`${measured}${stress(line.word)}${remark}${why}.`, width, '      ', 8),
    ...(line.ifFails === undefined ? [] : [wrap(plain(line.ifFails), width, '      If it fails: ', 8)]),
  ].join('');
}

/** A suspect with what decides where it stands, a line each. */
function suspectText(suspect: Suspect, paint: Paint, width: number): string {
  const line = suspectLine(suspect);
  const reasons = (lead: string, items: readonly Runs[]): string => {
    const first = `      ${lead}: `;
    const lines = items.map((item, at) =>
      wrap(
        `${runsText(item)}${at + 1 < items.length ? ';' : '.'}`,
        width,
        at === 0 ? first : ' '.repeat(first.length),
        first.length + 2,
      ),
    );
    return linesPainted(lines.join(''), paint.soft);
  };
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
