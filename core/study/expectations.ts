import { type Diagnostic, diagnose } from '../diagnostics/diagnostic.ts';
import { truthOf } from '../expression/absent.ts';
import type { Expression } from '../expression/tree.ts';
import type { Value } from '../expression/value.ts';
import type { CellFacts, Statement } from './cellFacts.ts';
import { placedIn } from './placed.ts';
import type { Evaluated } from './surroundings.ts';
import type { Expectation } from './types.ts';

/** The verdict of a statement. What is no statement at all is reported and cannot be computed. */
export function expectationOf(
  statement: Statement,
  evaluated: Evaluated,
): { readonly expectation: Expectation; readonly diagnostics: readonly Diagnostic[] } {
  const { node, expression, diagnostics: ofReading } = statement.source;
  const { type } = evaluated.typed;
  const diagnostics: Diagnostic[] = [];
  // Of a text that was read only to a slip, what it gives as a whole is not known.
  const readToTheEnd = ofReading.every((each) => each.code !== 'unexpected-text');
  if (readToTheEnd && type.kind !== 'truth' && type.kind !== 'unknown') {
    const { span } = expression;
    const written = node.text.slice(span.start, span.end);
    const isOutcome = type.kind === 'words' && isResult(expression, evaluated.value);
    const offer = type.kind === 'words' ? `${written} is ${isOutcome ? 'yes' : '"…"'}` : '… between … and …';
    const at = { start: span.end, end: span.end };
    const fixes = isOutcome
      ? [{ title: `Write \`${offer}\``, edits: [{ span: at, newText: ' is yes' }] }]
      : [];
    const found = diagnose('not-a-statement', span, { got: typeWords(type.kind), offer }, fixes);
    diagnostics.push(...placedIn(node, [found]));
  }
  const { cell, part, title, ifFails, because, showsFault, suspect } = statement;
  return {
    expectation: {
      cell,
      part,
      title,
      text: statement.source.text,
      truth: truthOf(evaluated.value),
      from: evaluated.from,
      span: node.span,
      ifFails,
      because,
      showsFault,
      suspect,
    },
    diagnostics,
  };
}

/** The outcome of a test: what its name says, or its value. */
function isResult(expression: Expression, value: Value): boolean {
  if (expression.kind === 'member' && expression.name === 'result') return true;
  return value.kind === 'words' && ['yes', 'no', 'unclear'].includes(value.text);
}

function typeWords(kind: string): string {
  switch (kind) {
    case 'one':
      return 'one quantity';
    case 'members':
      return 'several quantities';
    case 'fields':
      return 'several values by name';
    case 'series':
      return 'a series of samples';
    case 'curve':
      return 'a curve';
    case 'range':
      return 'a range';
    default:
      return 'a word';
  }
}

/** A check that says `shows: fault` and in which everything holds says something else than its author means. */
export function faultsNotShown(cell: CellFacts, expectations: readonly Expectation[]): readonly Diagnostic[] {
  const all = expectations.length > 0 && expectations.every((each) => each.truth.verdict === 'holds');
  if (cell.meantToFail !== undefined) {
    const title = expectations[0]?.title ?? '';
    return all ? [diagnose('fault-not-shown', cell.meantToFail, { title })] : [];
  }
  return expectations
    .filter((each) => each.showsFault && each.truth.verdict === 'holds')
    .map((each) => diagnose('fault-not-shown', each.span, { title: each.text }));
}
