import { checkCase } from '../../core/rules/checkCase.ts';
import type { Study } from '../../core/study/types.ts';
import type { Span } from '../../core/text/span.ts';

/** A case with a place in it. */
export interface AtCursor {
  readonly study: Study;
  readonly cell: number;
  readonly offset: number;
  /** The file's text without the mark. */
  readonly text: string;
}

/** The case written with `$0` where the cursor stands. A case without a header gets one, so that a test shows what it is about. */
export function atCursor(source: string): AtCursor {
  const whole = withHeader(source);
  const at = whole.indexOf('$0');
  if (at < 0) throw new Error('The case has no `$0`.');
  const text = whole.slice(0, at) + whole.slice(at + 2);
  return { ...placeIn(checkCase(text), at), text };
}

export function caseOf(source: string): Study {
  return checkCase(withHeader(source));
}

/** The cell and the offset in it of a place in the file. */
function placeIn(study: Study, at: number): Pick<AtCursor, 'study' | 'cell' | 'offset'> {
  const cell = study.file.stream.starts.findLastIndex((start) => start <= at);
  return { study, cell, offset: at - (study.file.stream.starts[cell] ?? 0) };
}

/** The text of a span of a cell. */
export function words(study: Study, cell: number, { start, end }: Span): string {
  return study.file.cells[cell]?.raw.text.slice(start, end) ?? '';
}

function withHeader(source: string): string {
  const text = source.replace(/^\n/, '');
  return /^(diag|---)/.test(text) ? text : `${header}---\n${text}`;
}

const header = `diag: 1
case: A case of its own
engine:
  displacement: 2.4 L
  cylinders: 4
site:
  altitude: 35 ft
tools:
  gauge:
    description: vacuum gauge
    accuracy: 0.2 inHg
signals:
  sump:
    meaning: oil in the sump
    unit: °C
    kind: point
`;

/** The file with a line of carets under every span, several lines under a line when spans overlap: `^^^ says`. */
export function marked(study: Study, spans: readonly { cell: number; span: Span; says?: string }[]): string {
  const places = spans.map(({ cell, span, says = '' }) => {
    const base = study.file.stream.starts[cell] ?? 0;
    return { start: span.start + base, end: span.end + base, says };
  });
  let at = 0;
  const lines = study.text.split('\n').flatMap((line) => {
    const start = at;
    at += line.length + 1;
    const here = places
      .filter((each) => each.start >= start && each.start < at)
      .map((each) => {
        const carets = '^'.repeat(Math.max(1, Math.min(each.end, start + line.length) - each.start));
        return `${' '.repeat(each.start - start)}${carets}${each.says === '' ? '' : ` ${each.says}`}`;
      });
    return here.length === 0 ? [] : [line, ...here];
  });
  return lines.join('\n');
}
