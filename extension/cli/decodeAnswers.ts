import type { Decoded } from '../../core/engine/obd/decodeObd.ts';
import { decodeObd, longestRecording } from '../../core/engine/obd/decodeObd.ts';
import { structureOf } from '../../core/engine/obd/troubleCode.ts';
import { answerCells } from '../../core/report/answerCell.ts';
import { answerTables, type ControllerTable } from '../../core/report/answerTable.ts';
import { byWeight } from '../../core/report/byWeight.ts';
import { findingIn } from '../../core/report/findingLine.ts';
import { harmless } from '../../core/report/harmless.ts';
import { lineIndex } from '../../core/text/lines.ts';
import { Misunderstood, readArguments } from './arguments.ts';
import { type Paint, paintFor } from './color.ts';
import { displayWidth } from './displayWidth.ts';
import { writeFinding, writeNotes } from './frame.ts';
import { isTerminal, pageWidth, print, tell } from './print.ts';
import { readAtMost } from './readAtMost.ts';
import { reasonOf } from './reasonOf.ts';

/** `casebook decode [FILE|-]`: what recorded answers of the diagnostic link say. 1 when a line could not be read. */
export async function decodeAnswers(words: readonly string[]): Promise<number> {
  const { paths, options } = readArguments(words, { cell: { type: 'boolean' } });
  const [file = '-', more] = paths;
  if (more !== undefined)
    throw new Misunderstood(
      'One recording at a time: `casebook decode answers.txt`, or - for what is typed or piped.',
    );
  if (/\.diag$/i.test(file))
    throw new Misunderstood(`\`${file}\` is a case, whose \`obd\` is decoded by \`casebook check ${file}\`.`);
  const text = textOf(file === '-' ? 0 : file);
  const decoded = decodeObd(text);
  const output = options.cell === true ? 2 : 1;
  const paint = await paintFor(isTerminal(output));
  const failed =
    decoded.diagnostics.some(({ severity }) => severity === 'error') || decoded.answers.length === 0;
  const findings = findingsText(text, decoded, paint, pageWidth(output));
  if (options.cell === true) {
    print(harmless(answerCells(text, decoded)));
    tell(findings);
  } else {
    print(
      [
        ...answerTables(decoded).map((each) => tableText(each, paint)),
        codesText(decoded),
        findings,
        summary(decoded),
      ]
        .filter((part) => part !== '')
        .join('\n'),
    );
  }
  return failed ? 1 : 0;
}

/** What was piped in (0), or a file. Some shells write files in UTF-16, which says so at its start. */
function textOf(from: string | 0): string {
  try {
    // Of what is too long enough is read that it is told to be: in UTF-8 a UTF-16 unit takes three bytes at most.
    const bytes = readAtMost(from, longestRecording * 3 + 4);
    return bytes.toString(bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf16le' : 'utf8');
  } catch (error) {
    const what = from === 0 ? 'What is piped in' : `\`${from}\``;
    throw new Misunderstood(`${what} cannot be read: ${reasonOf(error)}.`);
  }
}

/** One controller: names, values, units and bytes in columns. */
function tableText({ id, rows }: ControllerTable, paint: Paint): string {
  if (rows.length === 0) return '';
  const cells = rows.map(({ name, value, unit, bytes, times, service, frame }) => [
    `${service === 2 ? frameWords(frame) : ''}${harmless(name)}`,
    harmless(value),
    unit,
    `${bytes}${times > 1 ? `  (the last of ${times})` : ''}`,
  ]);
  // A recording may have more rows than a call takes arguments.
  const widths = [0, 1, 2].map((column) =>
    cells.reduce((widest, row) => Math.max(widest, displayWidth(row[column] ?? '')), 0),
  );
  const lines = cells.map((row) =>
    row
      .map((cell, i) => cell + ' '.repeat(Math.max(0, (widths[i] ?? 0) - displayWidth(cell))))
      .join('  ')
      .trimEnd(),
  );
  return `${paint.title(id === '' ? 'Answers' : `Answers of ${id}`)}\n${lines.map((line) => `  ${line}\n`).join('')}`;
}

/** Frame 0 is the one that every controller has; makers may keep more. */
const frameWords = (frame = 0): string => `freeze frame${frame === 0 ? '' : ` ${frame}`}: `;

/** Each code once, with what its structure says. */
function codesText({ codes, answers }: Decoded): string {
  const lines = new Set(
    codes.map(({ id, code, status }) => {
      const structure = structureOf(code);
      const says = [structure?.system, structure?.area].filter((part) => part !== undefined && part !== '');
      const by = structure?.definedBy === 'the maker' ? '; defined by the maker' : '';
      return `  ${code}  ${status}${id === '' ? '' : `, ${id}`}  ${says.join('; ')}${by}\n`;
    }),
  );
  const none = (service: number, status: string): string =>
    answers.some((each) => each.service === service) && codes.every((each) => each.status !== status)
      ? `  none ${status}\n`
      : '';
  const all = [...lines, none(3, 'stored'), none(7, 'pending'), none(10, 'permanent')].join('');
  return all === '' ? '' : `Trouble codes\n${all}`;
}

function findingsText(text: string, { diagnostics }: Decoded, paint: Paint, width: number): string {
  const lines = lineIndex(text);
  const { serious, notes } = byWeight(diagnostics.map((each) => findingIn(text, lines, each.span, each)));
  return [...serious.map((each) => writeFinding(each, paint, width)), writeNotes(notes, paint, width)].join(
    '',
  );
}

function summary({ answers, requests, noise }: Decoded): string {
  const count = (many: number, one: string, several: string): string =>
    `${many} ${many === 1 ? one : several}`;
  return `${[
    count(answers.length, 'answer', 'answers'),
    count(requests, 'request', 'requests'),
    count(noise, 'line without data', 'lines without data'),
  ].join(', ')}.\n`;
}
