import { expect } from 'vitest';
import { joinStream } from '../../core/casefile/stream.ts';
import { checkCharts } from '../../core/chart/checkCharts.ts';
import type { Diagnostic } from '../../core/diagnostics/diagnostic.ts';
import { message } from '../../core/diagnostics/words.ts';
import type { CaseFiles } from '../../core/recording/files.ts';
import { writeReport } from '../../core/report/html/report.ts';
import { writeMarkdown } from '../../core/report/markdown/report.ts';
import { checkCase } from '../../core/rules/checkCase.ts';
import { caseResult } from '../../core/study/results.ts';
import type { Study } from '../../core/study/types.ts';
import type { Span } from '../../core/text/span.ts';

/** Words that only a mistake of the program puts before a reader. */
const leaked = /\bundefined\b|\bNaN\b|\[object |\bInfinity\b/;

/**
 * What holds of any text whatever, checked, worded and shown: nothing throws, the text is kept, every place lies in
 * it, every finding is a sentence that is said once, every number of the results is one.
 */
export function expectSound(text: string, files?: CaseFiles): Study {
  const study = checkCharts(checkCase(text, undefined, files));
  expect(joinStream(study.file.stream)).toBe(text);
  const said = new Set<string>();
  for (const { cell, diagnostic } of study.findings) {
    const within = cell === undefined ? text : study.file.cells[cell]?.raw.text;
    const words = soundFinding(diagnostic, within ?? '', text);
    const place = `${cell} ${diagnostic.span.start} ${diagnostic.span.end} ${words}`;
    if (said.has(place)) expect.fail(`told twice: ${words}\n${text}`);
    said.add(place);
  }
  expectNumbers(caseResult(study, 'case.diag'), '', text);
  return study;
}

/** What a report says of it, as HTML and as Markdown. */
export function expectSoundReport(study: Study): void {
  const shown = { study, file: 'case.diag', pictures: () => undefined };
  const html = writeReport([shown]);
  const words = html.replace(/<style>[\s\S]*?<\/style>/, '').replace(/<[^>]*>/g, ' ');
  for (const each of [words, writeMarkdown(shown)]) expectNothingLeaked(each, study.text);
}

function soundFinding(diagnostic: Diagnostic, within: string, text: string): string {
  const { code, span, fixes } = diagnostic;
  const words = message(diagnostic);
  expectNothingLeaked(words, text);
  if (!/[.?)]$/.test(words)) expect.fail(`${code} is no sentence: ${words}`);
  expectInside(span, within, code);
  for (const fix of fixes) {
    expectNothingLeaked(fix.title, text);
    let last = 0;
    for (const edit of fix.edits.toSorted((a, b) => a.span.start - b.span.start)) {
      expectInside(edit.span, within, `a fix of ${code}`);
      if (edit.span.start < last) expect.fail(`a fix of ${code} writes twice at one place\n${text}`);
      last = edit.span.end;
    }
    if (fix.edits.every((each) => within.slice(each.span.start, each.span.end) === each.newText))
      expect.fail(`a fix of ${code} changes nothing: ${fix.title}\n${text}`);
  }
  return words;
}

function expectInside({ start, end }: Span, within: string, what: string): void {
  if (start < 0 || start > end || end > within.length)
    expect.fail(`${what} stands at ${start} to ${end} of ${within.length} characters:\n${within}`);
}

/** The text itself may hold such words. */
function expectNothingLeaked(words: string, text: string): void {
  const found = leaked.exec(words);
  if (found === null || text.includes(found[0].trim())) return;
  expect.fail(`${found[0]} in: ${words.slice(Math.max(0, found.index - 200), found.index + 100)}\n${text}`);
}

function expectNumbers(value: unknown, path: string, text: string): void {
  if (typeof value === 'number' && !Number.isFinite(value)) expect.fail(`${path} is ${value}\n${text}`);
  if (typeof value === 'string') expectNothingLeaked(value, text);
  if (typeof value !== 'object' || value === null) return;
  for (const [key, each] of Object.entries(value)) expectNumbers(each, `${path}.${key}`, text);
}
